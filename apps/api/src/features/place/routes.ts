import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may } from '../../platform/http.ts';
import { mayKeepSomePlace } from './policy.ts';
import { presentPlace, presentPlaceRecord, presentPlaces, presentPreview } from './present.ts';
import { logPreviewWish, logWish, monthsWish, newPlace, placeEdit } from './schema.ts';
import {
  addPlace,
  editPlace,
  previewLog,
  readPlace,
  readPlaces,
  removeLog,
  sayMonths,
  takeLog,
} from './use-cases.ts';

const TAG = 'Keeping';
const keeps = may(mayKeepSomePlace);

export const placeRoutes = new Hono<AppEnv>()
  .get('/places', describe(TAG, 'My household’s places and the store’s, with how warm each is'), async (c) =>
    c.json(presentPlaces(await readPlaces(contextOf(c)))),
  )
  .post(
    '/places',
    describe(TAG, 'Add a place of my household’s or of the store’s', ['already-there', 'household-needed']),
    keeps,
    jsonBody(newPlace),
    async (c) => c.json(presentPlace(await addPlace(contextOf(c), c.req.valid('json'))), 201),
  )
  .get('/places/:place', describe(TAG, 'A place with its record of warmth by the month'), async (c) =>
    c.json(presentPlaceRecord(await readPlace(contextOf(c), idParam(c, 'place')))),
  )
  .put(
    '/places/:place',
    describe(TAG, 'Change what a place is called and is like', ['already-there', 'stale-version']),
    keeps,
    jsonBody(placeEdit),
    async (c) =>
      c.json(presentPlace(await editPlace(contextOf(c), idParam(c, 'place'), c.req.valid('json')))),
  )
  .put(
    '/places/:place/months',
    describe(TAG, 'Say how warm a place was by the month; nothing said takes a month out', [
      'readings-overlap',
    ]),
    keeps,
    jsonBody(monthsWish),
    async (c) =>
      c.json(presentPlaceRecord(await sayMonths(contextOf(c), idParam(c, 'place'), c.req.valid('json')))),
  )
  .post(
    '/places/:place/log-previews',
    describe(TAG, 'What a logger’s file would bring, with each line that can’t be; nothing is changed'),
    keeps,
    jsonBody(logPreviewWish),
    async (c) => {
      const { file, takenDays } = await previewLog(contextOf(c), idParam(c, 'place'), c.req.valid('json'));
      return c.json(presentPreview(file, takenDays));
    },
  )
  .post(
    '/places/:place/logs',
    describe(TAG, 'Take in the good readings of a logger’s file', ['readings-overlap']),
    keeps,
    jsonBody(logWish),
    async (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => takeLog(context, idParam(c, 'place'), c.req.valid('json')),
        present: presentPlaceRecord,
      }),
  )
  .delete(
    '/places/:place/logs/:log',
    describe(TAG, 'Take a logger’s file back with all its readings'),
    keeps,
    async (c) =>
      c.json(presentPlaceRecord(await removeLog(contextOf(c), idParam(c, 'place'), idParam(c, 'log')))),
  );
