import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may } from '../../platform/http.ts';
import { mayCheckScale } from './policy.ts';
import {
  presentScaleChecks,
  presentScales,
  presentThermometerChecks,
  presentThermometers,
} from './present.ts';
import { scaleCheckWish, thermometerCheckWish } from './schema.ts';
import {
  checkScale,
  checkThermometer,
  readScaleChecks,
  readScales,
  readThermometerChecks,
  readThermometers,
} from './use-cases.ts';

const TAG = 'Equipment';

export const scaleCheckRoutes = new Hono<AppEnv>()
  .get('/scales', describe(TAG, 'Whether each scale is true by its last check'), async (c) =>
    c.json(presentScales(await readScales(contextOf(c)))),
  )
  .get('/equipment/:item/scale-checks', describe(TAG, 'Every check of a scale'), async (c) =>
    c.json(presentScaleChecks(await readScaleChecks(contextOf(c), idParam(c, 'item')))),
  )
  .post(
    '/equipment-units/:unit/scale-checks',
    describe(TAG, 'Write down what a scale shows of a known weight'),
    may(mayCheckScale),
    jsonBody(scaleCheckWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => checkScale(context, idParam(c, 'unit'), c.req.valid('json')),
        present: presentScales,
      }),
  )
  .get('/thermometers', describe(TAG, 'Whether each thermometer is true by its last check'), async (c) =>
    c.json(presentThermometers(await readThermometers(contextOf(c)))),
  )
  .get('/equipment/:item/thermometer-checks', describe(TAG, 'Every check of a thermometer'), async (c) =>
    c.json(presentThermometerChecks(await readThermometerChecks(contextOf(c), idParam(c, 'item')))),
  )
  .post(
    '/equipment-units/:unit/thermometer-checks',
    describe(TAG, 'Write down what a thermometer shows in a known temperature'),
    may(mayCheckScale),
    jsonBody(thermometerCheckWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => checkThermometer(context, idParam(c, 'unit'), c.req.valid('json')),
        present: presentThermometers,
      }),
  );
