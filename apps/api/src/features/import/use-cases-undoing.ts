import type { Tx } from '@sheafbook/db';
import type { Context } from '../../platform/context.ts';
import { lockBook } from '../../platform/lock-book.ts';
import { reverseEntries } from '../../platform/post-entry.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { Problem } from '../../platform/problem.ts';
import { refusing } from '../../platform/to-problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { refuseClosedDay } from '../period/queries.ts';
import { inParts } from './in-parts.ts';
import { mayImportKind } from './policy.ts';
import type { UndoingWish } from './schema.ts';
import { SHEET_KINDS } from './sheet/kinds.ts';
import {
  countThings,
  deleteUnused,
  insertUndoing,
  isUndone,
  listEntries,
  listFiles,
  listHouseholdsOf,
  listLeaningRows,
  listOtherEntries,
  loadImport,
  type Of,
  updateSeatsLeft,
  updateSetAside,
} from './undo/queries.ts';

/** Something that stands on what an import made: rows of a table, or entries of the book. */
export type Leaning = { readonly code: string; readonly name: string; readonly count: number };

/** What taking an import back would do, and what is in its way. Changes nothing. */
export function previewUndoing(context: Context, importId: string) {
  return withTx(context, (tx) => lookAt(tx, context, importId), { task: 'import' });
}

/**
 * Takes an import back as one while nothing leans on it: its entries by reversing entries; what was never used goes;
 * what the book's lines still name stays under a name that says so. A household that it brought leaves its seat alone.
 */
export function undoImport(context: Context, importId: string, { reason }: UndoingWish) {
  const { actor } = context;
  const of = { storehouseId: actor.storehouseId, importId };
  const work = async (tx: Tx) => {
    await lockBook(tx);
    const today = todayOf(context);
    await refuseClosedDay(tx, actor.storehouseId, { field: 'reason', on: today });
    const seen = await lookAt(tx, context, importId);
    if (seen.leaning.length > 0)
      throw new Problem('import-leaned-on', {
        detail: `Something leans on this import: ${seen.leaning.map(sayLeaning).join(', ')}. Take that back first, or mend single rows by hand.`,
        leaning: seen.leaning,
      });
    await notePrivateRead(tx, context, {
      householdIds: await listHouseholdsOf(tx, of),
      ...{ what: 'eaters and shelf', purpose: 'taking back an import' },
    });
    const entries = await listEntries(tx, of);
    const { importNo } = seen;
    const note = `Import ${importNo} taken back: ${reason}`.slice(0, 500);
    const back = entries.map(({ entry_id: reversesId }) => ({
      ...{ what: 'reversal', onDay: today, reversesId, subjectId: importId, note },
    }));
    await inParts(back, (part) => reverseEntries(tx, context, part));
    await deleteUnused(tx, of);
    await updateSetAside(tx, of, { importNo, retiredAt: context.now() });
    await updateSeatsLeft(tx, of, today);
    await insertUndoing(tx, { ...of, undoneBy: actor.personId, undoneAt: context.now(), reason });
    return seen;
  };
  return withTx(context, work, { task: 'import' }).catch(
    refusing(GUARDS, (cause) => {
      const detail = 'Money or grams that this import brought were spent since.';
      return new Problem('import-leaned-on', {
        detail,
        leaning: [{ code: 'spent', name: '', count: 1 }],
        cause,
      });
    }),
  );
}

/** The balance of a till or a shelf that was there before may have been spent from; the book's guards know. */
const GUARDS = new Set(['account_never_below_zero', 'account_never_above_zero', 'entry_not_at_the_bank']);

async function lookAt(tx: Tx, context: Context, importId: string) {
  const of: Of = { storehouseId: context.actor.storehouseId, importId };
  const row = await loadImport(tx, of);
  const files = await listFiles(tx, of);
  const kinds = SHEET_KINDS.filter((kind) => files.some((file) => file.kind === kind));
  if (!kinds.every((kind) => mayImportKind(context.actor, kind))) throw new Problem('duty-missing');
  if (await isUndone(tx, of)) throw new Problem('import-taken-back');
  const things = await countThings(tx, of);
  const entries = await listEntries(tx, of);
  const isOfOld = things.size === 0 && entries.length === 0 && files.some(({ newRows }) => newRows > 0);
  const others = await listOtherEntries(tx, of);
  const rows = await listLeaningRows(tx, of);
  const leaning: Leaning[] = [
    ...(isOfOld ? [{ code: 'no-record', name: '', count: 1 }] : []),
    ...others.slice(0, 20).map((entryNo) => ({ code: 'entry', name: String(entryNo), count: 1 })),
    ...entries
      .filter((entry) => entry.is_at_bank)
      .map((entry) => ({ code: 'bank_match', name: entry.entry_no, count: 1 })),
    ...rows.map((one) => ({ code: one.leaning, name: one.name, count: Number(one.row_count) })),
  ];
  return { importId, importNo: row.importNo, entryCount: entries.length, things, leaning };
}

const sayLeaning = ({ code, name }: Leaning): string => (name === '' ? code : `${name} (${code})`);
