import { parse } from 'csv-parse/sync';
import { fieldProblem } from '../../platform/problem.ts';
import { MOST_LINES } from './schema.ts';

const SEPARATORS = [',', ';', '\t', '|'] as const;

/**
 * Reads a bank's file as rows of cells. Which sign parts the cells is told by the file itself: the one that makes most
 * rows equally wide.
 */
export function readCsv(text: string): string[][] {
  const readings = SEPARATORS.flatMap((separator) => {
    const rows = readWith(text, separator);
    return rows === undefined ? [] : [{ rows, score: evenness(rows) }];
  });
  const [best] = readings.toSorted((a, b) => b.score - a.score);
  if (!best || best.score === 0)
    throw fieldProblem(
      'invalid-input',
      'text',
      'This file is no table of a bank’s lines. Ask the bank for a CSV file.',
    );
  if (best.rows.length > MOST_LINES + 100)
    throw fieldProblem(
      'invalid-input',
      'text',
      `A file has ${MOST_LINES} lines at most. Take a shorter span.`,
    );
  return best.rows;
}

function readWith(text: string, delimiter: string): string[][] | undefined {
  try {
    return parse(text, {
      delimiter,
      bom: true,
      relax_column_count: true,
      relax_quotes: true,
      skip_empty_lines: false,
    });
  } catch {
    return undefined; // an unclosed quote under this sign: another one may read it
  }
}

/** How many rows have the commonest width, times that width beyond one cell; 0 where no row is parted at all. */
function evenness(rows: readonly (readonly string[])[]): number {
  const widths = new Map<number, number>();
  for (const { length } of rows) if (length > 1) widths.set(length, (widths.get(length) ?? 0) + 1);
  return Math.max(0, ...[...widths].map(([width, count]) => count * Math.log2(width)));
}
