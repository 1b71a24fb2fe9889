import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { pageOf } from '../../platform/paging.ts';
import { mayAddEquipmentPhotos, mayAddPhotos, mayRemovePhotos } from './policy.ts';
import { presentEquipmentPhoto, presentPhoto } from './present.ts';
import { equipmentPhotoQuery, equipmentPhotoWish, photoQuery, photoWish } from './schema.ts';
import {
  addEquipmentPhoto,
  addPhoto,
  readEquipmentPhotos,
  readPhoto,
  readPhotos,
  removePhoto,
} from './use-cases.ts';

const TAG = 'Landing';

export const photoRoutes = new Hono<AppEnv>()
  .post(
    '/buys/:buy/photos',
    describe(TAG, 'Keep a photo of a bag, a claim or a delivery: a JPEG of 2 MB at most', [
      'thing-not-found',
      'already-there',
    ]),
    may(mayAddPhotos),
    jsonBody(photoWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => addPhoto(context, idParam(c, 'buy'), c.req.valid('json')),
        present: presentPhoto,
      }),
  )
  .get(
    '/buys/:buy/photos',
    describe(TAG, 'The photos of a buy, or of one thing in it'),
    queryOf(photoQuery),
    async (c) => {
      const query = c.req.valid('query');
      const found = await readPhotos(contextOf(c), idParam(c, 'buy'), query);
      const { rows, next } = pageOf(found, query.limit, ({ photoId }) => photoId);
      const photos = rows.map(presentPhoto);
      return query.format === 'csv' ? answerCsv(c, 'photos', photos) : c.json({ photos, next });
    },
  )
  .post(
    '/equipment/:item/photos',
    describe('Equipment', 'Keep a photo of a thing, a part of it, or how it went out or came back', [
      ...(['thing-not-found', 'already-there', 'not-your-household', 'duty-missing', 'not-out'] as const),
    ]),
    may(mayAddEquipmentPhotos, 'household-needed'),
    jsonBody(equipmentPhotoWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => addEquipmentPhoto(context, idParam(c, 'item'), c.req.valid('json')),
        present: presentEquipmentPhoto,
      }),
  )
  .get(
    '/equipment/:item/photos',
    describe('Equipment', 'The photos of a thing and its parts, or of one loan of it', [
      'thing-not-found',
      'not-your-household',
    ]),
    queryOf(equipmentPhotoQuery),
    async (c) => {
      const photos = await readEquipmentPhotos(contextOf(c), idParam(c, 'item'), c.req.valid('query'));
      return c.json({ photos: photos.map(presentEquipmentPhoto) });
    },
  )
  .get('/photos/:photo', describe(TAG, 'One photo, as a JPEG', ['thing-not-found']), async (c) => {
    const { content } = await readPhoto(contextOf(c), idParam(c, 'photo'));
    return c.body(Uint8Array.from(content), 200, {
      'Content-Type': 'image/jpeg',
      'Content-Disposition': 'inline',
    });
  })
  .delete(
    '/photos/:photo',
    describe(TAG, 'Take away a photo taken by mistake', ['thing-not-found', 'buy-stage-wrong', 'not-out']),
    may(mayRemovePhotos),
    async (c) => {
      await removePhoto(contextOf(c), idParam(c, 'photo'));
      return c.body(null, 204);
    },
  );
