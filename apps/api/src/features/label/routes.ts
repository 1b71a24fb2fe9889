import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { contextOf, describe, may, queryOf } from '../../platform/http.ts';
import { hasLabels } from './policy.ts';
import { presentLabels } from './present.ts';
import { labelQuery } from './schema.ts';
import { readLabels } from './use-cases.ts';

export const labelRoutes = new Hono<AppEnv>().get(
  '/labels',
  describe('Containers', 'What the labels of my containers say', ['thing-not-found']),
  may(hasLabels, 'household-needed'),
  queryOf(labelQuery),
  async (c) => c.json(presentLabels(await readLabels(contextOf(c), c.req.valid('query')))),
);
