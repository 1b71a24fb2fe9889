import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { take } from '../kitchen/schema.ts';
import { hasRotation, maySeeStoreRotation } from './policy.ts';
import { presentRotation, presentTaken } from './present.ts';
import { storeQuery, whatIfQuery } from './schema.ts';
import { readRotation, readStoreRotation, takeToKitchen } from './use-cases.ts';

const ofHousehold = may(hasRotation, 'household-needed');

export const rotationRoutes = new Hono<AppEnv>()
  .get(
    '/rotation',
    describe('Keeping', 'What my household eats next, and what it would not eat in time'),
    ofHousehold,
    queryOf(whatIfQuery),
    async (c) => {
      const { queue, ...whatIf } = c.req.valid('query');
      return c.json(presentRotation(await readRotation(contextOf(c), whatIf), queue));
    },
  )
  .get(
    '/rotation/store',
    describe('Keeping', 'What of common stock is at risk, and what to give next'),
    may(maySeeStoreRotation),
    queryOf(storeQuery),
    async (c) => {
      const { queue, ...whatIf } = c.req.valid('query');
      return c.json(presentRotation(await readStoreRotation(contextOf(c), whatIf), queue));
    },
  )
  .post(
    '/containers/:container/kitchen',
    describe('Containers', 'Take one of my containers to the kitchen', [
      'not-enough-left',
      'container-in-doubt',
    ]),
    ofHousehold,
    jsonBody(take),
    async (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => takeToKitchen(context, idParam(c, 'container'), c.req.valid('json')),
        present: presentTaken,
      }),
  );
