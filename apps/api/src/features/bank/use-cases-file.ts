import {
  type BankColumns,
  type BankLine,
  type BankRowProblem,
  closingBalanceOf,
  guessBankColumns,
  readBankRows,
} from '@sheafbook/ledger';
import { currencyExponent } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { pageOf } from '../../platform/paging.ts';
import { Problem } from '../../platform/problem.ts';
import { refuseFutureDay, todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import {
  findFileOfHeadings,
  insertBalance,
  insertFile,
  insertLines,
  keyOf,
  listFiles,
  listKnownKeys,
} from './queries.ts';
import { readCsv } from './read-csv.ts';
import { type BalanceWish, bankColumns, type FilesQuery, type FileWish, type PreviewWish } from './schema.ts';

const SHOWN_ROWS = 12;

/** A row that is no line to take in: it can't be read, or its day is still to come. */
type RowProblem = Omit<BankRowProblem, 'because'> & {
  readonly because: BankRowProblem['because'] | 'still-to-come';
};

/** Reads a bank's file and changes nothing: how its columns are understood, and what it would bring. */
export function previewFile(context: Context, wish: PreviewWish) {
  const { storehouseId } = context.actor;
  const rows = readCsv(wish.text);
  const guess = guessBankColumns(rows);
  return withTx(context, async (tx) => {
    const kept = wish.columns
      ? undefined
      : await findFileOfHeadings(tx, storehouseId, headingsOf(rows, guess));
    const remembered = bankColumns.safeParse(kept).data;
    const columns = wish.columns ?? remembered ?? guess ?? null;
    const read = columns ? readLines(context, rows, columns) : { lines: [], problems: [] };
    const known = await listKnownKeys(tx, storehouseId, read.lines);
    return {
      rows: rows.slice(0, Math.max(SHOWN_ROWS, (columns?.firstRow ?? 0) + 3)),
      columns,
      from: wish.columns
        ? ('said' as const)
        : remembered
          ? ('remembered' as const)
          : guess
            ? ('guessed' as const)
            : ('unknown' as const),
      ...read,
      knownCount: read.lines.filter((line) => known.has(keyOf(line))).length,
      closing: closingBalanceOf(read.lines) ?? null,
    };
  });
}
export type FilePreview = Awaited<ReturnType<typeof previewFile>>;

/** Keeps the lines of a bank's file that are not kept yet. Lines of an overlapping file are the same lines. */
export function takeFile(context: Context, wish: FileWish) {
  const { storehouseId, personId } = context.actor;
  const rows = readCsv(wish.text);
  const { lines, problems } = readLines(context, rows, wish.columns);
  const leftOut = new Set(wish.leaveOutRows);
  refuseUnread(problems.filter(({ rowNo }) => !leftOut.has(rowNo)));
  const wanted = lines.filter(({ rowNo }) => !leftOut.has(rowNo));
  if (wanted.length === 0)
    throw new Problem('nothing-to-post', {
      detail: 'This file has no line of a statement in it.',
      fields: [{ field: 'text', message: 'No line of a statement was found in this file.' }],
    });
  return withTx(context, async (tx) => {
    const file = await insertFile(tx, {
      ...{ storehouseId, bankFileId: newId(context), name: wish.name, columns: wish.columns },
      headings: headingsOf(rows, wish.columns),
      ...{ takenBy: personId, takenAt: context.now() },
    });
    const newCount = await insertLines(tx, file, wanted);
    const closing = closingBalanceOf(wanted);
    if (closing)
      await insertBalance(tx, {
        ...{ storehouseId, ...closing, bankFileId: file.bankFileId },
        ...{ saidBy: personId, saidAt: context.now() },
      });
    return { file, newCount, knownCount: wanted.length - newCount, closing: closing ?? null };
  });
}
export type TakenFile = Awaited<ReturnType<typeof takeFile>>;

export function readFiles(context: Context, query: FilesQuery) {
  return withTx(context, async (tx) =>
    pageOf(
      await listFiles(tx, context.actor.storehouseId, query),
      query.limit,
      ({ file }) => file.bankFileId,
    ),
  );
}

/** What the bank's statement says it held at the end of a day, where the file does not say it. */
export function sayBalance(context: Context, wish: BalanceWish) {
  const { storehouseId, personId } = context.actor;
  refuseFutureDay(context, { field: 'onDay', on: wish.onDay });
  return withTx(context, async (tx) => {
    await insertBalance(tx, { storehouseId, ...wish, saidBy: personId, saidAt: context.now() });
    return wish;
  });
}

function readLines(
  context: Context,
  rows: readonly (readonly string[])[],
  columns: BankColumns,
): { lines: BankLine[]; problems: RowProblem[] } {
  const { lines, problems } = readBankRows(rows, columns, currencyExponent(context.actor.currency));
  const todayOn = todayOf(context);
  const early = lines.filter(({ onDay }) => onDay > todayOn);
  return {
    lines: lines.filter(({ onDay }) => onDay <= todayOn),
    problems: [
      ...problems,
      ...early.map(({ rowNo, onDay }) => ({
        ...{ rowNo, column: columns.dayColumn, cell: onDay, because: 'still-to-come' as const },
      })),
    ],
  };
}

function refuseUnread(problems: readonly RowProblem[]): void {
  if (problems.length === 0) return;
  throw new Problem('invalid-input', {
    detail: `${problems.length} rows can’t be read. Mend the columns, or leave those rows out.`,
    fields: problems.slice(0, 50).map(({ rowNo, because, cell }) => ({
      field: `rows.${rowNo}`,
      message: `Row ${rowNo}: ${WHY[because]}${cell === '' ? '' : `: ${cell.slice(0, 80)}`}`,
    })),
  });
}

const WHY: Readonly<Record<RowProblem['because'], string>> = {
  'no-day': 'there is no day in the column of days',
  'no-amount': 'there is no amount in the column of amounts',
  'two-amounts': 'there is an amount that came in and one that went out',
  'still-to-come': 'its day is still to come',
};

/** The row above the first line, which every file of a bank has alike; how wide it is where there is no such row. */
function headingsOf(rows: readonly (readonly string[])[], columns: BankColumns | undefined): string {
  const at = columns?.firstRow ?? 0;
  const headings = at > 0 ? (rows[at - 1] ?? []) : [];
  return JSON.stringify(headings.length > 0 ? headings : [rows[0]?.length ?? 0]).slice(0, 2000);
}
