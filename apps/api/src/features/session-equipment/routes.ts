import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may } from '../../platform/http.ts';
import { mayEquipSessions } from './policy.ts';
import { presentSessionEquipment } from './present.ts';
import { sessionEquipmentWish } from './schema.ts';
import { bookForDay, giveBackOfDay, readSessionEquipment } from './use-cases.ts';

const TAG = 'Packing sessions';
const ONE = '/packing-sessions/:session/equipment';
const planner = may(mayEquipSessions);

export const sessionEquipmentRoutes = new Hono<AppEnv>()
  .get(ONE, describe(TAG, 'Equipment that a day has booked, and what it could book'), planner, async (c) =>
    c.json(presentSessionEquipment(await readSessionEquipment(contextOf(c), idParam(c, 'session')))),
  )
  .post(
    ONE,
    describe(TAG, 'Book a piece for the whole day; more than 14 days ahead it outranks private loans', [
      ...(['equipment-taken', 'equipment-unfit', 'session-stage-wrong'] as const),
    ]),
    planner,
    jsonBody(sessionEquipmentWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => bookForDay(context, idParam(c, 'session'), c.req.valid('json').itemId),
        present: presentSessionEquipment,
      }),
  )
  .delete(`${ONE}/:booking`, describe(TAG, 'Give a piece of the day back'), planner, async (c) =>
    c.json(
      presentSessionEquipment(
        await giveBackOfDay(contextOf(c), idParam(c, 'session'), idParam(c, 'booking')),
      ),
    ),
  );
