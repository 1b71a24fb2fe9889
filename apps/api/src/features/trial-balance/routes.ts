import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { contextOf, describe, idParam, may, queryOf } from '../../platform/http.ts';
import { mayReadBooks, mayReadClearing } from './policy.ts';
import {
  heldDepositSheet,
  openClaimRows,
  presentClearing,
  presentHeldDeposits,
  presentOpenClaims,
  presentSupplierStandings,
  presentTrialBalance,
  supplierRows,
  trialBalanceRows,
} from './present.ts';
import { listFormat, trialBalanceQuery } from './schema.ts';
import {
  readClearing,
  readHeldDeposits,
  readOpenClaims,
  readSupplierStandings,
  readTrialBalance,
} from './use-cases.ts';

export const trialBalanceRoutes = new Hono<AppEnv>()
  .get(
    '/trial-balance',
    describe('Books', 'The trial balance by chart number'),
    may(mayReadBooks),
    queryOf(trialBalanceQuery),
    async (c) => {
      const { throughOn, format } = c.req.valid('query');
      const reading = await readTrialBalance(contextOf(c), throughOn);
      return format === 'csv'
        ? answerCsv(c, 'trial-balance', trialBalanceRows(reading))
        : c.json(presentTrialBalance(reading));
    },
  )
  .get(
    '/clearing/:buy',
    describe('Books', 'A buy’s clearing account, step by step down to 0.00'),
    may(mayReadClearing),
    async (c) => c.json(presentClearing(await readClearing(contextOf(c), idParam(c, 'buy')))),
  )
  .get(
    '/deposits-held',
    describe('Books', 'Deposits held, by buy or loan and household'),
    may(mayReadBooks),
    queryOf(listFormat),
    async (c) => {
      const reading = await readHeldDeposits(contextOf(c));
      return c.req.valid('query').format === 'csv'
        ? answerCsv(c, 'deposits-held', heldDepositSheet(reading))
        : c.json(presentHeldDeposits(reading));
    },
  )
  .get(
    '/claims-outstanding',
    describe('Books', 'Claims that suppliers have not settled, with their age'),
    may(mayReadClearing),
    queryOf(listFormat),
    async (c) => {
      const reading = await readOpenClaims(contextOf(c));
      return c.req.valid('query').format === 'csv'
        ? answerCsv(c, 'claims-outstanding', openClaimRows(reading))
        : c.json(presentOpenClaims(reading));
    },
  )
  .get(
    '/suppliers-owed',
    describe('Books', 'What each supplier billed, credited and was paid, and what we owe it'),
    may(mayReadClearing),
    queryOf(listFormat),
    async (c) => {
      const reading = await readSupplierStandings(contextOf(c));
      return c.req.valid('query').format === 'csv'
        ? answerCsv(c, 'suppliers-owed', supplierRows(reading))
        : c.json(presentSupplierStandings(reading));
    },
  );
