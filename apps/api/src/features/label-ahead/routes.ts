import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may } from '../../platform/http.ts';
import { mayLabelAhead } from './policy.ts';
import { presentLabels, presentMade } from './present.ts';
import { labelsAhead } from './schema.ts';
import { makeLabels, readLabels } from './use-cases.ts';

const TAG = 'Packing sessions';
const LABELS = '/packing-sessions/:session/labels';
const lead = may(mayLabelAhead);

export const labelAheadRoutes = new Hono<AppEnv>()
  .get(
    LABELS,
    describe(
      TAG,
      'The labels of a session that are on no can: not filled yet, or spent by a pour taken back',
    ),
    lead,
    async (c) => c.json(presentLabels(await readLabels(contextOf(c), idParam(c, 'session')))),
  )
  .post(
    LABELS,
    describe(TAG, 'Make labels for containers that are still to be filled', [
      'not-enough-left',
      'bag-on-hold',
      'session-stage-wrong',
    ]),
    lead,
    jsonBody(labelsAhead),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => makeLabels(context, idParam(c, 'session'), c.req.valid('json')),
        present: presentMade,
      }),
  );
