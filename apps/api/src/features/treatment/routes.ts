import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { contextOf, describe } from '../../platform/http.ts';
import { presentTreatments } from './present.ts';
import { findTreatments } from './use-cases.ts';

export const treatmentRoutes = new Hono<AppEnv>().get(
  '/treatments',
  describe(
    'Keeping',
    'What can be done to food as it is packed: what it fits, its steps and cautions, and what not to do',
  ),
  async (c) => c.json(presentTreatments(await findTreatments(contextOf(c)))),
);
