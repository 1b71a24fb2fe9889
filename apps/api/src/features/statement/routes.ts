import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { contextOf, describe, idParam, may, queryOf } from '../../platform/http.ts';
import { mayReadBalances } from './policy.ts';
import {
  presentBalance,
  presentBalanceRow,
  presentBalances,
  presentStatement,
  statementRows,
} from './present.ts';
import { balancesQuery, statementQuery } from './schema.ts';
import { readBalance, readBalances, readStatement } from './use-cases.ts';

export const statementRoutes = new Hono<AppEnv>()
  .get(
    '/households/:household/statement',
    describe('Books', 'A household’s statement, as known now or at an earlier instant', [
      'not-your-household',
    ]),
    queryOf(statementQuery),
    async (c) => {
      const query = c.req.valid('query');
      const reading = await readStatement(contextOf(c), idParam(c, 'household'), query);
      return query.format === 'csv'
        ? answerCsv(c, 'statement', statementRows(reading))
        : c.json(presentStatement(reading));
    },
  )
  .get(
    '/households/:household/balance',
    describe('Books', 'What a household owes or is owed, and its deposits', ['not-your-household']),
    async (c) => c.json(presentBalance(await readBalance(contextOf(c), idParam(c, 'household')))),
  )
  .get(
    '/balances',
    describe('Books', 'Who owes and who is owed, by the age of what is unpaid'),
    may(mayReadBalances),
    queryOf(balancesQuery),
    async (c) => {
      const query = c.req.valid('query');
      const reading = await readBalances(contextOf(c), query);
      return query.format === 'csv'
        ? answerCsv(c, 'balances', reading.balances.map(presentBalanceRow))
        : c.json(presentBalances(reading));
    },
  );
