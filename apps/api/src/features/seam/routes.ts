import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may } from '../../platform/http.ts';
import { hasContainers, mayCheckSeals } from './policy.ts';
import {
  presentCheck,
  presentHold,
  presentMachine,
  presentMade,
  presentMoved,
  presentOwnDoubt,
  presentSeals,
  presentWatch,
} from './present.ts';
import { checkWish, limitWish, machineWish, reCanning, settling, undoing } from './schema.ts';
import { addMachine, checkSeal, readChecks, readSeals, readWatch, setLimits } from './use-cases.ts';
import { readOwnDoubts } from './use-cases-own.ts';
import { reCan, undoReCan } from './use-cases-re-can.ts';
import { settleSuspects } from './use-cases-settling.ts';

const TAG = 'Seams and seals';
const whoChecks = may(mayCheckSeals);

export const seamRoutes = new Hono<AppEnv>()
  .get(
    '/seals',
    describe(TAG, 'Machines, the makers’ limits, and containers in doubt'),
    whoChecks,
    async (c) => c.json(presentSeals(await readSeals(contextOf(c)))),
  )
  .get(
    '/own-doubts',
    describe(TAG, 'My containers whose seal is in doubt, and what to do with each'),
    may(hasContainers, 'household-needed'),
    async (c) => c.json({ doubts: (await readOwnDoubts(contextOf(c))).map(presentOwnDoubt) }),
  )
  .post(
    '/seal-machines',
    describe(TAG, 'Add a machine that closes containers', ['already-there']),
    whoChecks,
    jsonBody(machineWish),
    async (c) => c.json(presentMachine(await addMachine(contextOf(c), c.req.valid('json'))), 201),
  )
  .put(
    '/seam-limits/:kind',
    describe(TAG, 'Write down what the maker of a can allows', ['thing-not-found']),
    whoChecks,
    jsonBody(limitWish),
    async (c) => c.json(await setLimits(contextOf(c), idParam(c, 'kind'), c.req.valid('json'))),
  )
  .get(
    '/packing-sessions/:session/seal-checks',
    describe(TAG, 'The checks of a session in their order', ['thing-not-found']),
    whoChecks,
    async (c) => {
      const checks = await readChecks(contextOf(c), idParam(c, 'session'));
      return c.json({ checks: checks.map(presentCheck) });
    },
  )
  .get(
    '/packing-sessions/:session/seals',
    describe(TAG, 'When each line’s machine is to be checked, and what failed checks left in doubt', [
      'thing-not-found',
    ]),
    whoChecks,
    async (c) => c.json(presentWatch(await readWatch(contextOf(c), idParam(c, 'session')))),
  )
  .post(
    '/seal-checks',
    describe(TAG, 'Write down a check; one that fails stops the machine and holds what is in doubt', [
      'seam-limits-missing',
      'too-young-for-machine',
    ]),
    whoChecks,
    jsonBody(checkWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => checkSeal(context, c.req.valid('json')),
        present: presentMade,
      }),
  )
  .post(
    '/seal-holds/settling',
    describe(TAG, 'Answer for containers in doubt', ['thing-not-found', 'machine-is-out', 'still-in-doubt']),
    whoChecks,
    jsonBody(settling),
    async (c) => {
      const { settled, holds } = await settleSuspects(contextOf(c), c.req.valid('json'));
      return c.json({ settled, holds: holds.map(presentHold) });
    },
  )
  .post(
    '/re-cannings',
    describe(TAG, 'Move what did not pass into new containers, under the same owner', [
      'thing-not-found',
      'already-there',
      'container-in-doubt',
      'machine-is-out',
      'not-enough-left',
    ]),
    whoChecks,
    jsonBody(reCanning),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => reCan(context, c.req.valid('json')),
        present: presentMoved,
      }),
  )
  .post(
    '/re-cannings/:reCanning/undoing',
    describe(TAG, 'Take it back: the grams are in the old container again', [
      'thing-not-found',
      'already-reversed',
      'cannot-reverse',
    ]),
    whoChecks,
    jsonBody(undoing),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => undoReCan(context, idParam(c, 'reCanning'), c.req.valid('json')),
        present: (entry) => entry,
      }),
  );
