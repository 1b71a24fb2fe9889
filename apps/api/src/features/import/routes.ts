import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { answerOnce, contextOf, describe, jsonBody, may, queryOf } from '../../platform/http.ts';
import { Problem } from '../../platform/problem.ts';
import { mayImport, mayReadImports } from './policy.ts';
import { importCells, presentImports, presentItem, presentOutcome, presentPosted } from './present.ts';
import { dryRunWish, equipmentQuery, importQuery, importWish, templateQuery } from './schema.ts';
import { SHEET_KINDS, templateOf } from './sheet/kinds.ts';
import { postImport, readEquipment, readImports, tryImport } from './use-cases.ts';

const TAG = 'Imports';

export const importRoutes = new Hono<AppEnv>()
  .post(
    '/import-trials',
    describe(TAG, 'Try spreadsheets without writing anything: each row’s effect, each error at its cell', [
      'period-closed',
    ]),
    may(mayImport),
    jsonBody(dryRunWish),
    async (c) => c.json(presentOutcome(await tryImport(contextOf(c), c.req.valid('json')))),
  )
  .post(
    '/imports',
    describe(TAG, 'Bring over what a trial showed, whole or not at all', [
      'import-has-errors',
      'import-not-as-seen',
    ]),
    may(mayImport),
    jsonBody(importWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => postImport(context, c.req.valid('json')),
        present: presentPosted,
      }),
  )
  .get(
    '/imports',
    describe(TAG, 'What was brought over, by whom and from which files'),
    may(mayReadImports),
    queryOf(importQuery),
    async (c) => {
      const query = c.req.valid('query');
      const page = await readImports(contextOf(c), query);
      return query.format === 'csv'
        ? answerCsv(c, 'imports', page.rows.flatMap(importCells))
        : c.json(presentImports(page));
    },
  )
  .get(
    '/import-templates/:kind',
    describe(TAG, 'A CSV file to start a sheet from: its headings and one invented row'),
    may(mayImport),
    queryOf(templateQuery),
    (c) => {
      const kind = SHEET_KINDS.find((known) => known === c.req.param('kind'));
      if (!kind) throw new Problem('thing-not-found', { thing: 'template' });
      return answerCsv(c, kind, [templateOf(kind, c.req.valid('query').language)]);
    },
  )
  .get(
    '/equipment',
    describe('Equipment', 'The group’s own things by name'),
    queryOf(equipmentQuery),
    async (c) => {
      const query = c.req.valid('query');
      const page = await readEquipment(contextOf(c), query);
      const items = page.rows.map(presentItem);
      return query.format === 'csv' ? answerCsv(c, 'equipment', items) : c.json({ items, next: page.next });
    },
  );
