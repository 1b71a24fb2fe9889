import { createHash } from 'node:crypto';
import type { Tx } from '@sheafbook/db';
import type { Context } from '../../platform/context.ts';
import { digestOf } from '../../platform/digest.ts';
import { lockBook } from '../../platform/lock-book.ts';
import { newId } from '../../platform/new-id.ts';
import { pageOf } from '../../platform/paging.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { Problem } from '../../platform/problem.ts';
import { refuseFutureDay, todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { lockLastNumber } from '../household/queries.ts';
import { refuseClosedDay } from '../period/queries.ts';
import { loadHouseOwners } from '../storehouse/queries.ts';
import { findHousehold, type Known, keyOf } from './plan/book.ts';
import { countsOf, type Outcome } from './plan/outcome.ts';
import { type Made, planSheets, type SentFile } from './plan/plan-sheets.ts';
import { mayImportKind } from './policy.ts';
import {
  insertImport,
  listEaterNames,
  listImports,
  listPostedFiles,
  loadKnown,
  nextImportNo,
} from './queries.ts';
import type { DryRunWish, ImportWish } from './schema.ts';
import { foldText } from './sheet/kinds.ts';
import { readSheet, type SheetProblem } from './sheet/read-sheet.ts';
import { insertThings } from './undo/queries.ts';
import { writeMade } from './write.ts';

/** Not a failure: carries what a dry run found out of its transaction, which is rolled back. */
class RolledBack extends Error {
  override readonly name = 'RolledBack';
  readonly outcome: Outcome;
  constructor(outcome: Outcome) {
    super('a dry run writes nothing');
    this.outcome = outcome;
  }
}

/** Does everything that posting would do, in one transaction, and takes it back: the two can't differ. */
export async function tryImport(context: Context, wish: DryRunWish): Promise<Outcome> {
  const outcome = await withTx(
    context,
    async (tx) => {
      const { outcome } = await carryOut(tx, context, { wish, importId: newId(context) });
      throw new RolledBack(outcome);
    },
    { task: 'import' },
  ).catch((error: unknown) => {
    if (error instanceof RolledBack) return error.outcome;
    throw error;
  });
  // Names were compared with those in the book: the households see that, though nothing else was written.
  await withTx(context, (tx) => noteLooks(tx, context, outcome, 'trying an import'));
  return outcome;
}

/** Brings everything over, or nothing: only what a dry run showed, and only as long as it would do the same. */
export function postImport(context: Context, wish: ImportWish) {
  const importId = newId(context);
  const { actor } = context;
  return withTx(
    context,
    async (tx) => {
      const { outcome, importNo, things } = await carryOut(tx, context, { wish, importId });
      if (outcome.seen === null)
        throw new Problem('import-has-errors', {
          detail:
            'Something in these sheets is in the way, so nothing was brought over. Try them again to see it.',
        });
      if (outcome.seen !== wish.seen) throw new Problem('import-not-as-seen');
      const row = { importId, importNo, storehouseId: actor.storehouseId, openingOn: outcome.openingOn };
      const files = outcome.files.map((file, position) => ({
        ...{ storehouseId: actor.storehouseId, importId, position, sha256: file.sha256, fileName: file.name },
        ...{ kind: file.kind ?? '', ...countsOf(file) },
      }));
      await insertImport(tx, { ...row, importedBy: actor.personId, importedAt: context.now() }, files);
      await insertThings(
        tx,
        things.map((thing) => ({ storehouseId: actor.storehouseId, importId, ...thing })),
      );
      await noteLooks(tx, context, outcome, 'import');
      return { ...row, files };
    },
    { task: 'import' },
  );
}

async function carryOut(
  tx: Tx,
  context: Context,
  { wish, importId }: { wish: DryRunWish; importId: string },
) {
  const { storehouseId } = context.actor;
  const openingOn = wish.openingOn ?? todayOf(context);
  refuseFutureDay(context, { field: 'openingOn', on: openingOn });
  await lockBook(tx);
  await refuseClosedDay(tx, storehouseId, { field: 'openingOn', on: openingOn });
  const files = await readFiles(tx, context, wish);
  const lastSeat = await lockLastNumber(tx, storehouseId, 'seat'); // nobody joins meanwhile
  const { commonId } = await loadHouseOwners(tx, storehouseId);
  const known = await loadKnown(tx, storehouseId, {
    commonId,
    withStock: files.some(({ read }) => read.sheet?.kind === 'stock'),
  });
  const lookedAt = householdsOf(files, known);
  for (const { householdId, name } of await listEaterNames(tx, storehouseId, lookedAt))
    known.eaters.add(keyOf(householdId, foldText(name)));
  const reading = { ...wish, currency: context.actor.currency, today: todayOf(context) };
  const planned = planSheets(context, files, { known, reading, nextSeat: lastSeat + 1 });
  const isPossible = planned.files.every(
    (file) => file.problems.length === 0 && file.rows.every(({ problems }) => problems.length === 0),
  );
  const things = isPossible
    ? await writeMade(tx, context, { importId, openingOn, made: planned.made satisfies Made })
    : [];
  const seen = isPossible ? digestOf([openingOn, planned.files]) : null;
  const importNo = await nextImportNo(tx, storehouseId);
  return { outcome: { openingOn, files: planned.files, isPossible, seen, lookedAt }, importNo, things };
}

async function readFiles(tx: Tx, context: Context, wish: DryRunWish): Promise<SentFile[]> {
  const sent = wish.files.map(({ name, kind, leftOut, base64 }) => {
    const bytes = Buffer.from(base64, 'base64');
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    return { name, sha256, read: readSheet(bytes, { kind, leftOut, encoding: wish.encoding }) };
  });
  const digests = sent.map(({ sha256 }) => sha256);
  const posted = await listPostedFiles(tx, context.actor.storehouseId, digests);
  return sent.map((file, at) => {
    const { sha256, read } = file;
    const before = posted.find((known) => known.sha256 === sha256);
    const more: SheetProblem[] = [];
    if (before)
      more.push({
        code: 'posted-before',
        message: `This very file was brought over as import ${before.importNo} on ${before.importedAt.toISOString().slice(0, 10)}. Take it out.`,
      });
    if (digests.indexOf(sha256) !== at)
      more.push({ code: 'file-twice', message: 'This file was chosen twice. Take one of them out.' });
    if (read.kind !== null && !mayImportKind(context.actor, read.kind))
      more.push({
        code: 'kind-needs-duty',
        message: `Bringing over ${read.kind} needs the duty of ${read.kind === 'balances' ? 'treasurer' : 'coordinator'}.`,
      });
    if (more.length === 0) return file;
    return { ...file, read: { ...read, problems: [...more, ...read.problems], sheet: null } };
  });
}

/** The households in the book whose eaters or stock the sheets name. */
function householdsOf(files: readonly SentFile[], known: Known): string[] {
  const named = files.flatMap(({ read: { sheet } }) => {
    const at = sheet?.placeOf.get(sheet.kind === 'eaters' ? 'household' : 'owner');
    if (!sheet || at === undefined || (sheet.kind !== 'eaters' && sheet.kind !== 'stock')) return [];
    return sheet.rows.map(({ cells }) => findHousehold(known, cells[at] ?? '')?.id);
  });
  return [...new Set(named)].filter((id) => id !== undefined);
}

const noteLooks = (tx: Tx, context: Context, { lookedAt }: Outcome, purpose: string) =>
  notePrivateRead(tx, context, { householdIds: lookedAt, what: 'eaters and shelf', purpose });

export function readImports(context: Context, page: { after?: number | undefined; limit: number }) {
  return withTx(context, async (tx) =>
    pageOf(await listImports(tx, context.actor.storehouseId, page), page.limit, (row) =>
      String(row.import.importNo),
    ),
  );
}
