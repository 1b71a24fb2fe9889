import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may } from '../../platform/http.ts';
import { mayAskToLeave } from './policy.ts';
import { presentLeft, presentUnsettled } from './present.ts';
import { householdLeaving } from './schema.ts';
import { leaveHousehold, leavePerson, readUnsettled } from './use-cases.ts';

const TAG = 'Joining and leaving';
const REFUSALS = ['thing-not-found', 'not-your-household', 'household-has-left'] as const;

export const leavingRoutes = new Hono<AppEnv>()
  .get(
    '/households/:household/leaving',
    describe(TAG, 'What is still to be settled before the household can leave', REFUSALS),
    may(mayAskToLeave),
    async (c) => {
      const householdId = idParam(c, 'household');
      const { actor } = c.var;
      const money = { currency: actor.currency, isShown: actor.householdId === householdId };
      const unsettled = await readUnsettled(contextOf(c), householdId);
      return c.json({
        isSettled: unsettled.length === 0,
        unsettled: unsettled.map((item) => presentUnsettled(item, money)),
      });
    },
  )
  .post(
    '/households/:household/leaving',
    describe(TAG, 'The household leaves; its seat’s number alone stays with what moved', [
      ...REFUSALS,
      'stale-version',
      'household-not-settled',
      'period-closed',
    ]),
    may(mayAskToLeave),
    jsonBody(householdLeaving),
    (c) => {
      const [householdId, { version }] = [idParam(c, 'household'), c.req.valid('json')];
      return answerOnce(c, {
        status: 200,
        run: (context) => leaveHousehold(context, householdId, version),
        present: presentLeft,
      });
    },
  )
  .post(
    '/persons/:person/leaving',
    describe(TAG, 'A person leaves; the last one of a household takes it with them', [
      ...REFUSALS,
      'last-of-duty',
      'household-not-settled',
    ]),
    (c) => {
      const personId = idParam(c, 'person');
      return answerOnce(c, {
        status: 200,
        run: (context) => leavePerson(context, personId),
        present: (left) => ({ household: left && presentLeft(left) }),
      });
    },
  );
