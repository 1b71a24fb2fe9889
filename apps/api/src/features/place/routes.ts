import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import {
  answerOnce,
  contextOf,
  describe,
  idParam,
  jsonBody,
  may,
  queryOf,
  requireKey,
} from '../../platform/http.ts';
import { mayKeepSomePlace } from './policy.ts';
import { presentPlace, presentPlaceRecord, presentPlaces, presentPreview } from './present.ts';
import { logPreviewQuery, logQuery, monthsWish, newPlace, placeEdit } from './schema.ts';
import { addPlace, editPlace, readPlace, readPlaces, removeLog, sayMonths } from './use-cases.ts';
import { previewLog, receiveLog, takeLog } from './use-cases-log.ts';

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
    describe(
      TAG,
      'What a logger’s file would bring, sent as the body, with each line that can’t be; nothing is changed',
    ),
    keeps,
    queryOf(logPreviewQuery),
    async (c) => {
      const [context, placeId] = [contextOf(c), idParam(c, 'place')];
      const received = await receiveLog(context, placeId, {
        how: c.req.valid('query'),
        body: c.req.raw.body,
      });
      const { file, takenDays } = await previewLog(context, placeId, received);
      return c.json(presentPreview(file, takenDays));
    },
  )
  .post(
    '/places/:place/logs',
    describe(TAG, 'Take in the good readings of a logger’s file, sent as the body', ['readings-overlap']),
    keeps,
    queryOf(logQuery),
    async (c) => {
      const placeId = idParam(c, 'place');
      const { fileName, ...how } = c.req.valid('query');
      requireKey(c);
      const received = await receiveLog(contextOf(c), placeId, { how, body: c.req.raw.body });
      return answerOnce(c, {
        status: 201,
        body: JSON.stringify([fileName, how, received.sha256]),
        run: (context) => takeLog(context, placeId, { ...received, fileName }),
        present: presentPlaceRecord,
      });
    },
  )
  .delete(
    '/places/:place/logs/:log',
    describe(TAG, 'Take a logger’s file back with all its readings'),
    keeps,
    async (c) =>
      c.json(presentPlaceRecord(await removeLog(contextOf(c), idParam(c, 'place'), idParam(c, 'log')))),
  );
