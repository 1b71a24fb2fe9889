import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayInspect } from './policy.ts';
import {
  presentContainer,
  presentInspected,
  presentInspections,
  presentRules,
  presentTests,
  presentToInspect,
} from './present.ts';
import { inspectionQuery, inspectionWish, smallTestWish, undoing } from './schema.ts';
import {
  inspectContainer,
  readInspections,
  readToInspect,
  testContainer,
  undoMovingOut,
} from './use-cases.ts';

const TAG = 'Keeping';
const whoLooks = may(mayInspect, 'household-needed');

export const inspectionRoutes = new Hono<AppEnv>()
  .get('/inspection-rules', describe(TAG, 'What can be found, what follows from it and why'), (c) =>
    c.json(presentRules()),
  )
  .get(
    '/inspections/due',
    describe(TAG, 'What is to be looked at by today, and what is on watch', ['duty-missing']),
    whoLooks,
    queryOf(inspectionQuery),
    async (c) => c.json(presentToInspect(await readToInspect(contextOf(c), c.req.valid('query')))),
  )
  .get(
    '/containers/:container/inspections',
    describe(TAG, 'Every look at a container, the newest first', ['thing-not-found']),
    whoLooks,
    async (c) => c.json(presentInspections(await readInspections(contextOf(c), idParam(c, 'container')))),
  )
  .post(
    '/containers/:container/inspections',
    describe(TAG, 'Write down what was found on a container and what becomes of the food', [
      'outcome-contradicts',
      'not-enough-left',
    ]),
    whoLooks,
    jsonBody(inspectionWish),
    async (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => inspectContainer(context, idParam(c, 'container'), c.req.valid('json')),
        present: presentInspected,
      }),
  )
  .post(
    '/containers/:container/small-tests',
    describe(TAG, 'Write down seeds laid to sprout, a loaf baked or beans cooked from a container', [
      'thing-not-found',
    ]),
    whoLooks,
    jsonBody(smallTestWish),
    async (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => testContainer(context, idParam(c, 'container'), c.req.valid('json')),
        present: presentTests,
      }),
  )
  .post(
    '/inspections/:inspection/undoing',
    describe(TAG, 'Put back the grams that an inspection booked out', ['cannot-reverse', 'already-reversed']),
    whoLooks,
    jsonBody(undoing),
    async (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => undoMovingOut(context, idParam(c, 'inspection'), c.req.valid('json').reason),
        present: presentContainer,
      }),
  );
