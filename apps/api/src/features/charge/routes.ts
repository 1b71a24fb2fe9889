import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayGiveLateCredits, mayRecharge, mayShareOut } from './policy.ts';
import { presentCharges, presentComparison } from './present.ts';
import { lateCredit, wholeList } from './schema.ts';
import { compareSplits, giveLateCredit, readCharges, rechargeBuy, shareOut } from './use-cases.ts';

const TAG = 'Sharing out';

export const chargeRoutes = new Hono<AppEnv>()
  .get(
    '/buys/:buy/charges',
    describe(TAG, 'What a buy cost, line by line, and who bears it'),
    queryOf(wholeList),
    async (c) => {
      const charges = presentCharges(await readCharges(contextOf(c), idParam(c, 'buy')));
      if (c.req.valid('query').format === 'json') return c.json(charges);
      const rows = charges.lines.flatMap(({ shares, costLine, minorUnits: lineMinorUnits }) =>
        shares.map(({ ownerId, ...share }) => ({ costLine, lineMinorUnits, ...share })),
      );
      return answerCsv(c, 'charges', rows);
    },
  )
  .get(
    '/buys/:buy/lines/:line/split-comparison',
    describe(TAG, 'The six rules side by side on what has landed of a food, before one is chosen', [
      'buy-stage-wrong',
      'already-split',
      'not-enough-left',
      'buy-guard-unmet',
    ]),
    async (c) => {
      const where = { buyId: idParam(c, 'buy'), lineId: idParam(c, 'line') };
      return c.json(presentComparison(await compareSplits(contextOf(c), where)));
    },
  )
  .post(
    '/buys/:buy/sharing-out',
    describe(TAG, 'Charge every cost of a buy to the cent and settle its deposits', [
      'buy-stage-wrong',
      'buy-guard-unmet',
      'does-not-add-up',
    ]),
    may(mayShareOut),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => shareOut(context, idParam(c, 'buy')),
        present: presentCharges,
      }),
  )
  .post(
    '/buys/:buy/recharging',
    describe(TAG, 'Bring the charges of a shared-out buy up to its bills again', [
      'buy-stage-wrong',
      'nothing-to-post',
      'does-not-add-up',
    ]),
    may(mayRecharge),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => rechargeBuy(context, idParam(c, 'buy')),
        present: presentCharges,
      }),
  )
  .post(
    '/buys/:buy/late-credits',
    describe(TAG, 'Money back, or a late bill, goes to those who bore the cost', [
      'buy-stage-wrong',
      'currency-mixed',
      'period-closed',
    ]),
    may(mayGiveLateCredits),
    jsonBody(lateCredit),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => giveLateCredit(context, idParam(c, 'buy'), c.req.valid('json')),
        present: presentCharges,
      }),
  );
