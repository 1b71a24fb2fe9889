import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayMakeSplits, mayRerunSplits } from './policy.ts';
import { presentRerun, presentSplit } from './present.ts';
import { presentSimulation } from './present-simulation.ts';
import { splitWish, wholeList } from './schema.ts';
import { makeSplit, readSplit, readSplitsOfBuy, rerunSplit, undoSplit } from './use-cases.ts';
import { readFairness } from './use-cases-fairness.ts';
import { simulateRules } from './use-cases-simulate.ts';

const TAG = 'Sharing out';

export const splitRoutes = new Hono<AppEnv>()
  .get(
    '/buys/:buy/splits',
    describe(TAG, 'The splits of a buy, newest first'),
    queryOf(wholeList),
    async (c) => {
      const splits = (await readSplitsOfBuy(contextOf(c), idParam(c, 'buy'))).map(presentSplit);
      if (c.req.valid('query').format === 'json') return c.json({ splits });
      const rows = splits.flatMap(({ foodCode, roundNo, rule, undoneAt, shares }) =>
        shares.map(({ seat, name, isCommonStock, claimGrams, exactAward, awardGrams }) => ({
          ...{ foodCode, roundNo, rule, undoneAt, seat, name, isCommonStock },
          ...{ claimGrams, exactAward, awardGrams },
        })),
      );
      return answerCsv(c, 'splits', rows);
    },
  )
  .post(
    '/buys/:buy/lines/:line/splits',
    describe(TAG, 'Split what has landed of a food by a named rule', [
      'buy-stage-wrong',
      'already-split',
      'not-enough-left',
      'buy-guard-unmet',
      'rule-frozen',
    ]),
    may(mayMakeSplits),
    jsonBody(splitWish),
    (c) => {
      const where = { buyId: idParam(c, 'buy'), lineId: idParam(c, 'line') };
      return answerOnce(c, {
        status: 201,
        run: (context) => makeSplit(context, where, c.req.valid('json')),
        present: presentSplit,
      });
    },
  )
  .get(
    '/split-simulation',
    describe(
      TAG,
      'The last three splits as each of the six rules would have made them; a member sees its own line',
    ),
    async (c) => c.json(presentSimulation(await simulateRules(contextOf(c)))),
  )
  .get(
    '/split-fairness',
    describe(TAG, 'How far apart households stand in what they lost beyond their parts, by food group'),
    async (c) => c.json({ groups: await readFairness(contextOf(c)) }),
  )
  .get('/splits/:split', describe(TAG, 'The split sheet'), async (c) =>
    c.json(presentSplit(await readSplit(contextOf(c), idParam(c, 'split')))),
  )
  .get(
    '/splits/:split/re-run',
    describe(TAG, 'Does the kept split come out the same when it is run again?'),
    may(mayRerunSplits),
    async (c) => c.json(presentRerun(await rerunSplit(contextOf(c), idParam(c, 'split')))),
  )
  .post(
    '/splits/:split/undoing',
    describe(TAG, 'Take a split back before the buy is shared out', [
      'buy-stage-wrong',
      'already-reversed',
      'in-use',
      'cannot-reverse',
    ]),
    may(mayMakeSplits),
    (c) =>
      answerOnce(c, {
        status: 200,
        run: (context) => undoSplit(context, idParam(c, 'split')),
        present: presentSplit,
      }),
  );
