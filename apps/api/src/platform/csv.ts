import { stringify } from 'csv-stringify/sync';
import type { Context, TypedResponse } from 'hono';

type Cell = string | number | boolean | null | undefined;

/** Typed as text, so that the web's client reads the JSON of the same route by its own shape. */
type CsvAnswer = Response & TypedResponse<string, 200, 'text'>;

/**
 * Answers a list as CSV (RFC 4180) with a header row. A text cell that a spreadsheet would take for a formula is
 * given a leading apostrophe, so that a name can't run anything.
 */
export function answerCsv(
  c: Context,
  fileName: string,
  rows: readonly Readonly<Record<string, Cell>>[],
): CsvAnswer {
  const columns = Object.keys(rows[0] ?? {});
  const safe = rows.map((row) =>
    Object.fromEntries(columns.map((column) => [column, disarm(row[column])] as const)),
  );
  c.header('Content-Type', 'text/csv; charset=utf-8');
  c.header('Content-Disposition', `attachment; filename="${fileName}.csv"`);
  return c.body(
    stringify(safe, { header: true, columns, record_delimiter: 'windows' }),
  ) as Response as CsvAnswer;
}

const disarm = (cell: Cell) => (typeof cell === 'string' && /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell);
