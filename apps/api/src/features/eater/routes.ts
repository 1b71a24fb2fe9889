import { Hono } from 'hono';
import { z } from 'zod';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { pageOf, pageQuery } from '../../platform/paging.ts';
import { todayOf } from '../../platform/today.ts';
import { mayHaveEaters } from './policy.ts';
import { presentEater, presentEaterCells } from './present.ts';
import { eaterEdit, eaterVersion, newEater } from './schema.ts';
import { addEater, editEater, readEaters, removeEater } from './use-cases.ts';

const TAG = 'Eaters and plans';
const REFUSALS = ['household-needed', 'thing-not-found', 'not-your-household'] as const;
const isOfHousehold = may(mayHaveEaters, 'household-needed');

export const eaterRoutes = new Hono<AppEnv>()
  .get(
    '/households/:household/eaters',
    describe(TAG, 'Who eats in one’s own household', REFUSALS),
    isOfHousehold,
    queryOf(pageQuery.extend({ after: z.uuid().optional() })),
    async (c) => {
      const [query, context] = [c.req.valid('query'), contextOf(c)];
      const today = todayOf(context);
      const found = await readEaters(context, idParam(c, 'household'), query);
      const { rows, next } = pageOf(found, query.limit, (row) => row.eaterId);
      if (query.format === 'csv')
        return answerCsv(
          c,
          'eaters',
          rows.map((eater) => presentEaterCells(eater, today)),
        );
      return c.json({ eaters: rows.map((eater) => presentEater(eater, today)), next });
    },
  )
  .post(
    '/households/:household/eaters',
    describe(TAG, 'Add an eater to one’s own household', REFUSALS),
    isOfHousehold,
    jsonBody(newEater),
    async (c) => {
      const context = contextOf(c);
      const eater = await addEater(context, idParam(c, 'household'), c.req.valid('json'));
      return c.json(presentEater(eater, todayOf(context)), 201);
    },
  )
  .put(
    '/households/:household/eaters/:eater',
    describe(TAG, 'Change an eater; every field is sent, so that none is forgotten', [
      ...REFUSALS,
      'stale-version',
    ]),
    isOfHousehold,
    jsonBody(eaterEdit),
    async (c) => {
      const context = contextOf(c);
      const path = { householdId: idParam(c, 'household'), eaterId: idParam(c, 'eater') };
      const eater = await editEater(context, path, c.req.valid('json'));
      return c.json(presentEater(eater, todayOf(context)));
    },
  )
  .delete(
    '/households/:household/eaters/:eater',
    describe(TAG, 'Remove an eater; nothing of them is kept', [...REFUSALS, 'stale-version']),
    isOfHousehold,
    queryOf(eaterVersion),
    async (c) => {
      const path = { householdId: idParam(c, 'household'), eaterId: idParam(c, 'eater') };
      await removeEater(contextOf(c), path, c.req.valid('query').version);
      return c.body(null, 204);
    },
  );
