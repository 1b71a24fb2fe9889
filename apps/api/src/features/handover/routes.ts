import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { contextOf, describe, may } from '../../platform/http.ts';
import { mayHandOverDuties } from './policy.ts';
import { presentHandover } from './present.ts';
import { readHandover } from './use-cases.ts';

export const handoverRoutes = new Hono<AppEnv>().get(
  '/handover',
  describe(
    'Storehouse',
    'All that a new coordinator or treasurer needs to run the group; amounts for the treasurer',
  ),
  may(mayHandOverDuties),
  async (c) => c.json(presentHandover(await readHandover(contextOf(c)))),
);
