import { z } from 'zod';

/** More rows than any list has: what is written into a spreadsheet is whole, or it would be wrong without saying so. */
export const WHOLE_LIST = 1_000_000;

/** `all` for lists that a reader adds up, such as who owes. */
const limit = z.union([
  z.coerce.number().int().min(1).max(200),
  z.literal('all').transform(() => WHOLE_LIST),
]);

/** A page of a list is asked for by the last key of the page before, never by a count of rows to pass over. */
export const pageQuery = z.strictObject({
  after: z.string().max(200).optional(),
  limit: limit.default(50),
  format: z.enum(['json', 'csv']).default('json'),
});
export type PageQuery = z.infer<typeof pageQuery>;

/** Cuts a page out of `limit + 1` rows that a query returned, and names the key to ask the next one with. */
export function pageOf<Row>(rows: readonly Row[], limit: number, keyOf: (row: Row) => string) {
  const page = rows.slice(0, limit);
  const last = page.at(-1);
  return { rows: page, next: rows.length > limit && last ? keyOf(last) : null };
}
