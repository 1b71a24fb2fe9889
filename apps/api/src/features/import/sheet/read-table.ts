import { CsvError, parse } from 'csv-parse/sync';
import { COLUMNS, columnOf, type SheetKind } from './kinds.ts';

export type Table = readonly (readonly string[])[];

const SEPARATORS = [',', ';', '\t'] as const;

/**
 * The cells of every record, without blanks around them, or what is wrong with the quotes. The separator is the one of
 * comma, semicolon and tab by which most headings are known; of those that tie, the one that makes no row too wide.
 */
export function readTable(text: string): Table | string {
  const [line, named] = /^sep=(.)\r?\n/.exec(text) ?? [];
  if (line !== undefined) return readBy(text.slice(line.length), named ?? ','); // a spreadsheet hides this line
  const tried = SEPARATORS.map((separator) => readBy(text, separator)).map((table) => ({
    table,
    fit: fitOf(table),
  }));
  return tried.toSorted((a, b) => b.fit.known - a.fit.known || a.fit.tooWide - b.fit.tooWide)[0]?.table ?? '';
}

function fitOf(table: Table | string): { known: number; tooWide: number } {
  if (typeof table === 'string') return { known: -1, tooWide: 0 };
  const [headings = [], ...rows] = table;
  return {
    known: mostKnown(headings) * 100 + headings.length,
    tooWide: rows.filter((cells) => cells.length > headings.length).length,
  };
}

const mostKnown = (headings: readonly string[]): number =>
  Math.max(
    ...(Object.keys(COLUMNS) as SheetKind[]).map(
      (kind) => headings.filter((heading) => columnOf(kind, heading) !== undefined).length,
    ),
  );

function readBy(text: string, delimiter: string): Table | string {
  try {
    const options = { delimiter, relax_column_count: true, trim: true, skip_empty_lines: false };
    const table = parse(text, { ...options, record_delimiter: ['\r\n', '\n', '\r'] }) as string[][];
    return table.map((cells) => cells.map((cell) => cell.trim()));
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return `A quotation mark in or before line ${error.lines} of this file is not closed, or stands inside a word.`;
  }
}
