import { z } from 'zod';
import { yearQuery } from '../gift/schema.ts';
import { codeList } from '../label/schema.ts';
import { bookDay } from '../money/schema.ts';
import { LABEL_SHEET_NAMES, LABEL_SHEETS, labelsOnSheet } from './layout/label-sheets.ts';

/** How a paper is wanted. Language and first unit are the storehouse's own unless said otherwise. */
export const paperQuery = z.strictObject({
  language: z.enum(['en', 'es']).optional(),
  unit: z.enum(['lb', 'kg']).optional(),
  size: z.enum(['a4', 'letter']).default('a4'),
  large: z.stringbool('Large is true or false.').default(false),
});
export type PaperQuery = z.infer<typeof paperQuery>;

/** Without a household it is one's own; blank leaves everything to the pen. */
export const slipQuery = paperQuery.extend({
  household: z.uuid().optional(),
  blank: z.stringbool('Blank is true or false.').default(false),
});
export type SlipQuery = z.infer<typeof slipQuery>;

/** Where a buy has several orders, the number of the one that is meant. */
export const orderPaperQuery = paperQuery.extend({ order: z.coerce.number().int().positive().optional() });
export type OrderPaperQuery = z.infer<typeof orderPaperQuery>;

/** One's own shelf, or the common stock's. */
export const shelfPaperQuery = paperQuery.extend({
  of: z.enum(['household', 'common']).default('household'),
});
export type ShelfPaperQuery = z.infer<typeof shelfPaperQuery>;

/** For one's own household, or for the one, or the pantry, that is named. */
export const recallPaperQuery = paperQuery
  .extend({ household: z.uuid().optional(), pantry: z.uuid().optional() })
  .refine(({ household, pantry }) => household === undefined || pantry === undefined, {
    path: ['pantry'],
    message: 'A notice is for one household or for one pantry.',
  });
export type RecallPaperQuery = z.infer<typeof recallPaperQuery>;

export const statementPaperQuery = paperQuery.extend({ from: bookDay.optional(), to: bookDay.optional() });
export type StatementPaperQuery = z.infer<typeof statementPaperQuery>;

/** Without a year it is the running one. */
export const giftYearPaperQuery = paperQuery.extend(yearQuery.shape);
export type GiftYearPaperQuery = z.infer<typeof giftYearPaperQuery>;

/** The last day of the year to review: of a close, or any day of a year that runs; today unless it is said. */
export const yearReviewPaperQuery = paperQuery.extend({ through: bookDay.optional() });
export type YearReviewPaperQuery = z.infer<typeof yearReviewPaperQuery>;

/** Where an offer was taken more than once, the entry of the time that is meant. */
export const transferSlipQuery = paperQuery.extend({ entry: z.uuid().optional() });
export type TransferSlipQuery = z.infer<typeof transferSlipQuery>;

/** Which containers, on which stickers, and the first sticker that is still there. */
export const labelSheetQuery = z
  .strictObject({
    language: z.enum(['en', 'es']).optional(),
    unit: z.enum(['lb', 'kg']).optional(),
    sheet: z.enum(LABEL_SHEET_NAMES),
    start: z.coerce.number().int().min(1, 'Labels count from 1.').default(1),
    codes: codeList.default([]),
  })
  .refine(({ sheet, start }) => start <= labelsOnSheet(LABEL_SHEETS[sheet]), {
    path: ['start'],
    message: 'The sheet has fewer labels than that.',
  });
export type LabelSheetQuery = z.infer<typeof labelSheetQuery>;
