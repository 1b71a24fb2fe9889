import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { contextOf, describe, may } from '../../platform/http.ts';
import { seesUse } from './policy.ts';
import { presentUse } from './present.ts';
import { readUse } from './use-cases.ts';

export const equipmentUseRoutes = new Hono<AppEnv>().get(
  '/equipment-use',
  describe(
    'Equipment',
    'How much each thing was used in a year, how often late, at what cost, and wanted in vain',
  ),
  may(seesUse),
  async (c) => c.json(presentUse(await readUse(contextOf(c)))),
);
