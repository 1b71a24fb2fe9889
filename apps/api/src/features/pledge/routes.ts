import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayPledge, maySeePledges } from './policy.ts';
import {
  presentHouseholdPledge,
  presentHouseholdPledges,
  presentOwnPledge,
  presentPledges,
} from './present.ts';
import { householdPledgeQuery, pledgeEdit, pledgeWish, pledgeWithdrawal } from './schema.ts';
import { changePledge, pledgeMass, readHouseholdPledges, readPledges, withdrawPledge } from './use-cases.ts';

const TAG = 'Pledges';

export const pledgeRoutes = new Hono<AppEnv>()
  .get(
    '/buys/:buy/pledges',
    describe(TAG, 'The own pledges whole; of all pledges, sums over five households or more'),
    async (c) => c.json(presentPledges(await readPledges(contextOf(c), idParam(c, 'buy')))),
  )
  .post(
    '/buys/:buy/pledges',
    describe(TAG, 'Pledge for a food, for the own household or the one that is helped', [
      'already-pledged',
      'deadline-passed',
      'pledge-not-in-order',
      'pledge-off-step',
      'buy-stage-wrong',
    ]),
    may(mayPledge, 'household-needed'),
    jsonBody(pledgeWish),
    async (c) => {
      const buyId = idParam(c, 'buy');
      const wish = c.req.valid('json');
      return answerOnce(c, {
        status: 201,
        run: (context) => pledgeMass(context, buyId, wish),
        present: presentOwnPledge,
      });
    },
  )
  .put(
    '/buys/:buy/pledges/:pledge',
    describe(TAG, 'Change a pledge until the buy is fixed; after the deadline it can only shrink', [
      'not-your-household',
      'stale-version',
      'deadline-passed',
      'pledge-off-step',
    ]),
    may(mayPledge, 'household-needed'),
    jsonBody(pledgeEdit),
    async (c) => {
      const named = { buyId: idParam(c, 'buy'), pledgeId: idParam(c, 'pledge') };
      return c.json(presentOwnPledge(await changePledge(contextOf(c), named, c.req.valid('json'))));
    },
  )
  .post(
    '/buys/:buy/pledges/:pledge/withdrawal',
    describe(TAG, 'Withdraw a pledge until the buy is fixed', [
      'not-your-household',
      'stale-version',
      'buy-stage-wrong',
    ]),
    may(mayPledge, 'household-needed'),
    jsonBody(pledgeWithdrawal),
    async (c) => {
      const named = { buyId: idParam(c, 'buy'), pledgeId: idParam(c, 'pledge') };
      const { version } = c.req.valid('json');
      return answerOnce(c, {
        status: 200,
        run: (context) => withdrawPledge(context, named, version),
        present: presentOwnPledge,
      });
    },
  )
  .get(
    '/buys/:buy/household-pledges',
    describe(TAG, 'What each household pledged, without ceilings; each look is recorded'),
    may(maySeePledges),
    queryOf(householdPledgeQuery),
    async (c) => {
      const query = c.req.valid('query');
      const page = await readHouseholdPledges(contextOf(c), idParam(c, 'buy'), query);
      if (query.format === 'csv') return answerCsv(c, 'pledges', page.rows.map(presentHouseholdPledge));
      return c.json(presentHouseholdPledges(page));
    },
  );
