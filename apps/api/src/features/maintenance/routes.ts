import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may } from '../../platform/http.ts';
import { mayMaintain } from './policy.ts';
import { presentMaintenance } from './present.ts';
import { maintenanceWish } from './schema.ts';
import { readMaintenance, recordMaintenance } from './use-cases.ts';

export const maintenanceRoutes = new Hono<AppEnv>()
  .get(
    '/equipment/:item/maintenance',
    describe('Equipment', 'What was done to the pieces of a thing'),
    async (c) => c.json(presentMaintenance(await readMaintenance(contextOf(c), idParam(c, 'item')))),
  )
  .post(
    '/equipment-units/:unit/maintenance',
    describe('Equipment', 'Write down a service or a repair'),
    may(mayMaintain),
    jsonBody(maintenanceWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => recordMaintenance(context, idParam(c, 'unit'), c.req.valid('json')),
        present: presentMaintenance,
      }),
  );
