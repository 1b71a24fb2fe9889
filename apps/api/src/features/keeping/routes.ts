import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayMoveSome } from './policy.ts';
import { presentHotPlaces, presentKeeping, presentMoved, presentMoves } from './present.ts';
import { hotPlacesQuery, moveWish } from './schema.ts';
import { moveContainers, readKeeping, readMoves } from './use-cases.ts';
import { readHotPlaces } from './use-cases-hot.ts';

const TAG = 'Keeping';

export const keepingRoutes = new Hono<AppEnv>()
  .post(
    '/container-moves',
    describe(TAG, 'Say where containers stand since a day: my household’s, or common stock’s', [
      'place-full',
    ]),
    may(mayMoveSome),
    jsonBody(moveWish),
    async (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => moveContainers(context, c.req.valid('json')),
        present: presentMoved,
      }),
  )
  .get(
    '/hot-places',
    describe(TAG, 'What last summer cost food in each place, and what moving it would give back', [
      'duty-missing',
    ]),
    may(mayMoveSome, 'household-needed'),
    queryOf(hotPlacesQuery),
    async (c) => c.json(presentHotPlaces(await readHotPlaces(contextOf(c), c.req.valid('query')))),
  )
  .get(
    '/containers/:container/keeping',
    describe(TAG, 'How long one of my containers keeps, why, and what would help it most'),
    async (c) => c.json(presentKeeping(await readKeeping(contextOf(c), idParam(c, 'container')))),
  )
  .get(
    '/containers/:container/moves',
    describe(TAG, 'Where one of my containers, or of common stock’s, stood'),
    async (c) => c.json(presentMoves(await readMoves(contextOf(c), idParam(c, 'container')))),
  );
