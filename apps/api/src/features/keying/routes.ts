import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { contextOf, describe, idParam } from '../../platform/http.ts';
import { presentKeyings } from './present.ts';
import { readKeyings } from './use-cases.ts';

export const keyingRoutes = new Hono<AppEnv>().get(
  '/buys/:buy/keyings',
  describe('Papers', 'What was written with a pen and keyed in later: when it was written and when keyed'),
  async (c) => c.json(presentKeyings(await readKeyings(contextOf(c), idParam(c, 'buy')))),
);
