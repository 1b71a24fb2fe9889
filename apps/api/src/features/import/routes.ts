import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { Problem } from '../../platform/problem.ts';
import { mayImport, mayReadImports } from './policy.ts';
import { importCells, presentImports, presentOutcome, presentPosted, presentUndoing } from './present.ts';
import { dryRunWish, importQuery, importWish, templateQuery, undoingWish } from './schema.ts';
import { SHEET_KINDS, templateOf } from './sheet/kinds.ts';
import { postImport, readImports, tryImport } from './use-cases.ts';
import { previewUndoing, undoImport } from './use-cases-undoing.ts';

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
    '/imports/:import/undoing',
    describe(TAG, 'What taking an import back would do, and what leans on it', ['import-taken-back']),
    may(mayImport),
    async (c) => c.json(presentUndoing(await previewUndoing(contextOf(c), idParam(c, 'import')))),
  )
  .post(
    '/imports/:import/undoing',
    describe(TAG, 'Take an import back as one while nothing leans on it', [
      'import-leaned-on',
      'import-taken-back',
      'period-closed',
    ]),
    may(mayImport),
    jsonBody(undoingWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => undoImport(context, idParam(c, 'import'), c.req.valid('json')),
        present: presentUndoing,
      }),
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
  );
