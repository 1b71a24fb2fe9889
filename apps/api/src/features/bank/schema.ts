import { z } from 'zod';
import { pageQuery } from '../../platform/paging.ts';
import { bookDay, reason } from '../money/schema.ts';

/** A year of a storehouse's account is some thousand lines; more is a file of something else. */
const MOST_FILE_CHARACTERS = 1_000_000;
export const MOST_LINES = 5000;

const column = z.int().min(0).max(199);

/** Which column holds what, as the treasurer confirmed it; amounts stand in one signed column or in two. */
export const bankColumns = z
  .strictObject({
    firstRow: z.int().min(0).max(1000),
    dayColumn: column,
    dayOrder: z.enum(['ymd', 'dmy', 'mdy']),
    amountColumn: column.nullable().default(null),
    inColumn: column.nullable().default(null),
    outColumn: column.nullable().default(null),
    balanceColumn: column.nullable().default(null),
    wordColumns: z.array(column).max(20),
    decimalMark: z.enum(['.', ',']),
  })
  .refine(
    ({ amountColumn, inColumn, outColumn }) =>
      (amountColumn === null) === (inColumn !== null && outColumn !== null),
    {
      path: ['amountColumn'],
      message: 'Name one column of amounts, or one of what came in and one of what went out.',
    },
  );

const text = z
  .string()
  .min(1, 'This file is empty.')
  .max(MOST_FILE_CHARACTERS, 'This file is longer than a year of a bank’s lines.');

export const previewWish = z.strictObject({ text, columns: bankColumns.nullable().default(null) });
export type PreviewWish = z.infer<typeof previewWish>;

const balance = { onDay: bookDay, minorUnits: z.int() };

export const fileWish = z.strictObject({
  name: z.string().trim().min(1, 'A file has a name.').max(200),
  text,
  columns: bankColumns,
  /** Rows that the preview could not read and that are no lines of the statement, such as a sum at the foot. */
  leaveOutRows: z.array(z.int().positive()).max(1000).default([]),
});
export type FileWish = z.infer<typeof fileWish>;

export const balanceWish = z.strictObject(balance);
export type BalanceWish = z.infer<typeof balanceWish>;

const answer = z.string().trim().max(500, 'An answer has 500 characters at most.').default('');

export const matchWish = z.strictObject({ entryId: z.uuid() });
export type MatchWish = z.infer<typeof matchWish>;

/** What a line becomes in the book. Its amount is the line's own. */
export const postWish = z
  .strictObject({
    as: z.enum([
      ...(['payment', 'deposit', 'gift', 'cash-banked'] as const),
      ...(['refund', 'supplier-payment', 'bank-charge', 'repairs'] as const),
    ]),
    householdId: z.uuid().nullable().default(null),
    buyId: z.uuid().nullable().default(null),
    supplierId: z.uuid().nullable().default(null),
    isPrepayment: z.boolean().default(false),
    /** The line's own day unless the books are closed through it. */
    onDay: bookDay.nullable().default(null),
    /** Why it is no second receipt, where that was asked. */
    answer,
  })
  .refine(({ as, householdId }) => ['payment', 'deposit', 'refund'].includes(as) === (householdId !== null), {
    path: ['householdId'],
    message: 'Name the household of a payment, a deposit or a refund, and only of those.',
  })
  .refine(({ as, buyId }) => (as === 'deposit') === (buyId !== null), {
    path: ['buyId'],
    message: 'Name the buy of a deposit, and only of a deposit.',
  })
  .refine(({ as, supplierId }) => (as === 'supplier-payment') === (supplierId !== null), {
    path: ['supplierId'],
    message: 'Name the supplier that was paid, and only then.',
  });
export type PostWish = z.infer<typeof postWish>;

export const setAsideWish = z.strictObject({ reason });
export type SetAsideWish = z.infer<typeof setAsideWish>;

/** `takesBack` reverses the entry that the line was posted as, too. */
export const undoWish = z.strictObject({ reason, takesBack: z.boolean().default(false) });
export type UndoWish = z.infer<typeof undoWish>;

const LINE_STATES = ['open', 'done', 'set-aside', 'all'] as const;
export const linesQuery = pageQuery.extend({
  after: z.uuid().optional(),
  state: z.enum(LINE_STATES).default('open'),
  search: z.string().trim().max(100).optional(),
});
export type LinesQuery = z.infer<typeof linesQuery>;

export const filesQuery = pageQuery.extend({ after: z.uuid().optional() });
export type FilesQuery = z.infer<typeof filesQuery>;

export const reconciliationQuery = z.strictObject({ on: bookDay.optional() });

export const forecastQuery = z.strictObject({
  on: bookDay,
  /** Bills that are known to come and are not in the book yet. */
  more: z.coerce.number().int().nonnegative().max(Number.MAX_SAFE_INTEGER).default(0),
});
export type ForecastQuery = z.infer<typeof forecastQuery>;
