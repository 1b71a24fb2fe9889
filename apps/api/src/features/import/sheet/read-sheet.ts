import { CsvError, parse } from 'csv-parse/sync';
import { COLUMNS, columnOf, kindOf, type SheetKind } from './kinds.ts';

export const MOST_ROWS = 5000;

/** A row as it stands in the sheet, numbered as the person's spreadsheet numbers it: the headings are row 1. */
export type SheetRow = { readonly row: number; readonly cells: readonly string[] };
export type Sheet = {
  readonly kind: SheetKind;
  readonly headings: readonly string[];
  /** Where the cell of each known column stands. */
  readonly placeOf: ReadonlyMap<string, number>;
  readonly rows: readonly SheetRow[];
};
export type SheetProblem = { readonly code: string; readonly message: string; readonly heading?: string };
export type ReadSheet = {
  readonly kind: SheetKind | null;
  readonly headings: readonly string[];
  readonly problems: readonly SheetProblem[];
  readonly sheet: Sheet | null;
};

const SEPARATORS = [',', ';', '\t'] as const;
const refused = (code: string, message: string): ReadSheet => ({
  kind: null,
  headings: [],
  problems: [{ code, message }],
  sheet: null,
});

/**
 * Reads the bytes of a CSV file as a sheet of one kind. The separator is the one of comma, semicolon and tab by which
 * most headings are known. What can't be read is told whole: every unknown heading, every missing column.
 */
export function readSheet(
  bytes: Uint8Array,
  wish: { kind?: SheetKind | undefined; leftOut: readonly string[] },
): ReadSheet {
  const text = decode(bytes);
  if (text === undefined)
    return refused('not-utf8', 'This file is not UTF-8 text. Save it from the spreadsheet as “CSV UTF-8”.');
  const table = readTable(text);
  if (typeof table === 'string') return refused('broken-quotes', table);
  const [headings = [], ...body] = table;
  if (headings.every((heading) => heading === '')) return refused('empty-file', 'This file is empty.');
  const kind = wish.kind ?? kindOf(headings.filter((heading) => !wish.leftOut.includes(heading)));
  if (kind === undefined)
    return {
      ...refused(
        'unknown-kind',
        'Nobody can tell from its headings what this sheet is about. Say what it is.',
      ),
      headings,
    };
  const rows = body
    .map((cells, at) => ({ row: at + 2, cells }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''));
  const problems = [...headingProblems(kind, headings, wish.leftOut), ...rowProblems(rows)];
  const placeOf = new Map(
    headings.flatMap((heading, at) => {
      const key = wish.leftOut.includes(heading) ? undefined : columnOf(kind, heading);
      return key === undefined ? [] : [[key, at] as const];
    }),
  );
  return { kind, headings, problems, sheet: problems.length > 0 ? null : { kind, headings, placeOf, rows } };
}

function decode(bytes: Uint8Array): string | undefined {
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes); // passes over a byte-order mark
    return text.includes('\0') ? undefined : text;
  } catch {
    return undefined;
  }
}

/** The cells of every record, or what is wrong with its quotes. */
function readTable(text: string): readonly (readonly string[])[] | string {
  const tried = SEPARATORS.map((separator) => readBy(text, separator));
  const known = (table: (typeof tried)[number]) =>
    typeof table === 'string' ? -1 : mostKnown(table[0] ?? []) * 100 + (table[0]?.length ?? 0);
  return tried.toSorted((a, b) => known(b) - known(a))[0] ?? '';
}

const mostKnown = (headings: readonly string[]): number =>
  Math.max(
    ...(Object.keys(COLUMNS) as SheetKind[]).map(
      (kind) => headings.filter((heading) => columnOf(kind, heading) !== undefined).length,
    ),
  );

function readBy(text: string, delimiter: string): string[][] | string {
  try {
    const options = { delimiter, relax_column_count: true, trim: true, skip_empty_lines: false };
    return parse(text, { ...options, record_delimiter: ['\r\n', '\n', '\r'] }) as string[][];
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return `A quotation mark in or before line ${error.lines} of this file is not closed, or stands inside a word.`;
  }
}

function headingProblems(
  kind: SheetKind,
  headings: readonly string[],
  leftOut: readonly string[],
): SheetProblem[] {
  const kept = headings.filter((heading) => heading !== '' && !leftOut.includes(heading));
  const unknown = kept.filter((heading) => columnOf(kind, heading) === undefined);
  const keys = kept.map((heading) => columnOf(kind, heading));
  const twice = kept.filter((_, at) => keys[at] !== undefined && keys.indexOf(keys[at]) !== at);
  const missing = Object.entries(COLUMNS[kind]).filter(
    ([key, { isNeeded }]) => isNeeded && !keys.includes(key),
  );
  return [
    ...unknown.map((heading) => ({
      code: 'unknown-heading',
      heading,
      message: `Nothing is known of a column “${heading}”. Rename it, or say that it is left out.`,
    })),
    ...twice.map((heading) => ({
      code: 'heading-twice',
      heading,
      message: `Two columns tell the same as “${heading}”. Leave one of them out.`,
    })),
    ...missing.map(([, { en, es }]) => ({
      code: 'column-missing',
      heading: en[0] ?? '',
      message: `A column “${en[0]}” (or “${es[0]}”) is needed.`,
    })),
  ];
}

function rowProblems(rows: readonly SheetRow[]): SheetProblem[] {
  if (rows.length === 0) return [{ code: 'no-rows', message: 'There is no row under the headings.' }];
  return rows.length > MOST_ROWS
    ? [
        {
          code: 'too-many-rows',
          message: `A sheet brings ${MOST_ROWS} rows at a time at most; this has ${rows.length}.`,
        },
      ]
    : [];
}
