import { Hono } from 'hono';
import { z } from 'zod';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { pageOf, pageQuery } from '../../platform/paging.ts';
import { mayFoundPaperHousehold, mayRename } from './policy.ts';
import { presentHousehold } from './present.ts';
import { householdEdit, paperHousehold } from './schema.ts';
import { foundPaperHousehold, readHousehold, readHouseholds, renameHousehold } from './use-cases.ts';

const TAG = 'People';
/** The list stands in the order of seats, so a seat is its key. */
const bySeat = pageQuery.extend({ after: z.coerce.number().int().nonnegative().optional() });

export const householdRoutes = new Hono<AppEnv>()
  .get('/households', describe(TAG, 'Every household with its seat'), queryOf(bySeat), async (c) => {
    const { after, limit, format } = c.req.valid('query');
    const found = await readHouseholds(contextOf(c), { after, limit });
    const { rows, next } = pageOf(found, limit, (row) => String(row.seat));
    const households = rows.map(presentHousehold);
    return format === 'csv' ? answerCsv(c, 'households', households) : c.json({ households, next });
  })
  .post(
    '/households',
    describe(TAG, 'Enter a household that has no login, for a helper to act for', ['already-there']),
    may(mayFoundPaperHousehold),
    jsonBody(paperHousehold),
    async (c) => {
      const { household, personId } = await foundPaperHousehold(contextOf(c), c.req.valid('json'));
      return c.json({ ...presentHousehold(household), personId }, 201);
    },
  )
  .get('/households/:household', describe(TAG, 'One household', ['thing-not-found']), async (c) =>
    c.json(presentHousehold(await readHousehold(contextOf(c), idParam(c, 'household')))),
  )
  .put(
    '/households/:household',
    describe(TAG, 'Rename a household', [
      'thing-not-found',
      'not-your-household',
      'household-has-left',
      'stale-version',
      'already-there',
    ]),
    may(mayRename),
    jsonBody(householdEdit),
    async (c) => {
      const edit = c.req.valid('json');
      return c.json(presentHousehold(await renameHousehold(contextOf(c), idParam(c, 'household'), edit)));
    },
  );
