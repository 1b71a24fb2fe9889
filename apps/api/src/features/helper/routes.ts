import { Hono, type Context as HonoContext } from 'hono';
import { z } from 'zod';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { type PageQuery, pageOf, pageQuery } from '../../platform/paging.ts';
import { mayNameHelpers } from './policy.ts';
import { presentHelperGrant } from './present.ts';
import { helperWish } from './schema.ts';
import { endHelp, type NamedGrant, nameHelper, readHelpers, readMyHelping } from './use-cases.ts';

const TAG = 'Helping';
const byId = pageQuery.extend({ after: z.uuid().optional() });

export const helperRoutes = new Hono<AppEnv>()
  .get('/helping', describe(TAG, 'For whom I may act, and might before'), queryOf(byId), async (c) => {
    const query = c.req.valid('query');
    return answerGrants(c, query, await readMyHelping(contextOf(c), query));
  })
  .get(
    '/households/:household/helpers',
    describe(TAG, 'Who may act for a household, and might before', ['thing-not-found', 'not-your-household']),
    queryOf(byId),
    async (c) => {
      const query = c.req.valid('query');
      return answerGrants(c, query, await readHelpers(contextOf(c), idParam(c, 'household'), query));
    },
  )
  .post(
    '/households/:household/helpers',
    describe(TAG, 'Let somebody act for a household for some days', [
      'thing-not-found',
      'not-your-household',
      'household-has-left',
      'already-there',
    ]),
    may(mayNameHelpers),
    jsonBody(helperWish),
    async (c) => {
      const grant = await nameHelper(contextOf(c), idParam(c, 'household'), c.req.valid('json'));
      return c.json(presentHelperGrant(grant, c.var.outside.now()), 201);
    },
  )
  .delete(
    '/households/:household/helpers/:helper',
    describe(TAG, 'End a helper’s right before its day', [
      'thing-not-found',
      'not-your-household',
      'helper-grant-missing',
    ]),
    async (c) => {
      await endHelp(contextOf(c), idParam(c, 'household'), idParam(c, 'helper'));
      return c.body(null, 204);
    },
  );

function answerGrants(c: HonoContext<AppEnv>, query: PageQuery, found: readonly NamedGrant[]) {
  const { rows, next } = pageOf(found, query.limit, (row) => row.grant.helperGrantId);
  const helpers = rows.map((row) => presentHelperGrant(row, c.var.outside.now()));
  return query.format === 'csv' ? answerCsv(c, 'helpers', helpers) : c.json({ helpers, next });
}
