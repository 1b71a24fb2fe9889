import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { pageOf } from '../../platform/paging.ts';
import { mayKeepClaims, mayReadClaimHistory, mayWriteClaimsOff } from './policy.ts';
import { presentClaim, presentClaimHistory, presentClaimInWords } from './present.ts';
import { claimCredit, claimQuery, claimRefusal, claimWish } from './schema.ts';
import {
  creditClaim,
  raiseClaim,
  readAnsweredClaims,
  readClaim,
  readClaimHistory,
  readClaims,
  refuseClaim,
  writeClaimOff,
} from './use-cases.ts';

const TAG = 'Bills and claims';

export const claimRoutes = new Hono<AppEnv>()
  .post(
    '/buys/:buy/claims',
    describe(TAG, 'Claim money back for what came short, damaged or wrong', [
      'buy-stage-wrong',
      'does-not-add-up',
      'currency-mixed',
    ]),
    may(mayKeepClaims),
    jsonBody(claimWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => raiseClaim(context, idParam(c, 'buy'), c.req.valid('json')),
        present: presentClaim,
      }),
  )
  .get('/buys/:buy/claims', describe(TAG, 'The claims of a buy'), queryOf(claimQuery), async (c) => {
    const query = c.req.valid('query');
    const found = await readClaims(contextOf(c), idParam(c, 'buy'), query);
    const { rows, next } = pageOf(found, query.limit, (claim) => claim.claimId);
    const claims = rows.map(presentClaim);
    return query.format === 'csv' ? answerCsv(c, 'claims', claims) : c.json({ claims, next });
  })
  .get(
    '/claims-answered',
    describe(TAG, 'Claims that were granted, refused or given up, the latest first'),
    may(mayReadClaimHistory),
    queryOf(claimQuery),
    async (c) => {
      const query = c.req.valid('query');
      const found = await readAnsweredClaims(contextOf(c), query);
      const { rows, next } = pageOf(found, query.limit, (claim) => claim.claimId);
      const claims = rows.map(presentClaimInWords);
      return query.format === 'csv' ? answerCsv(c, 'claims-answered', claims) : c.json({ claims, next });
    },
  )
  .get(
    '/claims/:claim/history',
    describe(TAG, 'A claim from its first day to its answer, with its letters', ['thing-not-found']),
    may(mayReadClaimHistory),
    async (c) => c.json(presentClaimHistory(await readClaimHistory(contextOf(c), idParam(c, 'claim')))),
  )
  .post(
    '/claims/:claim/writing-off',
    describe(TAG, 'Give up a claim that the supplier never answered', ['claim-settled', 'period-closed']),
    may(mayWriteClaimsOff),
    jsonBody(claimRefusal),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => writeClaimOff(context, idParam(c, 'claim'), c.req.valid('json')),
        present: presentClaim,
      }),
  )
  .get('/claims/:claim', describe(TAG, 'One claim', ['thing-not-found']), async (c) =>
    c.json(presentClaim(await readClaim(contextOf(c), idParam(c, 'claim')))),
  )
  .post(
    '/claims/:claim/credit',
    describe(TAG, 'The supplier grants a claim, in full or in part', [
      'claim-settled',
      'does-not-add-up',
      'period-closed',
    ]),
    may(mayKeepClaims),
    jsonBody(claimCredit),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => creditClaim(context, idParam(c, 'claim'), c.req.valid('json')),
        present: presentClaim,
      }),
  )
  .post(
    '/claims/:claim/refusal',
    describe(TAG, 'The supplier refuses a claim', ['claim-settled', 'period-closed']),
    may(mayKeepClaims),
    jsonBody(claimRefusal),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => refuseClaim(context, idParam(c, 'claim'), c.req.valid('json')),
        present: presentClaim,
      }),
  );
