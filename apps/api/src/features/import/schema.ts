import { z } from 'zod';
import { pageQuery } from '../../platform/paging.ts';
import { bookDay, reason } from '../money/schema.ts';
import { ENCODINGS } from './sheet/decode.ts';
import { SHEET_KINDS } from './sheet/kinds.ts';

/** The bytes travel as they are, so that the server tells how letters are saved in them. */
const sheetFile = z.strictObject({
  name: z.string().trim().min(1, 'A file has a name.').max(200),
  /** Told from its headings when it is not said. */
  kind: z.enum(SHEET_KINDS).optional(),
  base64: z.base64('The bytes of a file are sent as base64.').max(2_000_000, 'A file has 1.5 MB at most.'),
  leftOut: z.array(z.string().max(200)).max(50).default([]),
});

const sheets = {
  files: z.array(sheetFile).min(1, 'Choose at least one file.').max(12, 'Twelve files at a time at most.'),
  /** The day that balances and stock are taken over on; today unless said. */
  openingOn: bookDay.optional(),
  decimalSign: z.enum(['point', 'comma']).optional(),
  dayOrder: z.enum(['day-first', 'month-first']).optional(),
  /** For files that don’t say it at their start; told from their bytes when it is not chosen. */
  encoding: z.enum(ENCODINGS).optional(),
};

export const dryRunWish = z.strictObject(sheets);
export type DryRunWish = z.infer<typeof dryRunWish>;

/** What was seen in the dry run is posted, and nothing else: any difference since then is refused. */
export const importWish = z.strictObject({
  ...sheets,
  seen: z.string().regex(/^[0-9a-f]{64}$/, 'Send what the dry run gave as “seen”.'),
});
export type ImportWish = z.infer<typeof importWish>;

export const undoingWish = z.strictObject({ reason });
export type UndoingWish = z.infer<typeof undoingWish>;

export const importQuery = pageQuery.extend({ after: z.coerce.number().int().positive().optional() });
export const templateQuery = z.strictObject({ language: z.enum(['en', 'es']).default('en') });
