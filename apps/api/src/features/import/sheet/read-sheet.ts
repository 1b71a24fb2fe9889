import { decode, type Encoding, listUnreadable, showUnreadable } from './decode.ts';
import { COLUMNS, columnOf, kindOf, type SheetKind } from './kinds.ts';
import { readTable, type Table } from './read-table.ts';

export const MOST_ROWS = 5000;

/** A row as it stands in the sheet, numbered as the person's spreadsheet numbers it: the headings are row 1. */
export type SheetRow = {
  readonly row: number;
  readonly cells: readonly string[];
  /** By the place of the cell: its bytes that stand for no letter. */
  readonly unreadable: ReadonlyMap<number, readonly string[]>;
};
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
  /** Null when it is no text. */
  readonly encoding: Encoding | null;
  readonly headings: readonly string[];
  readonly problems: readonly SheetProblem[];
  readonly sheet: Sheet | null;
};

const refused = (code: string, message: string, encoding: Encoding | null): ReadSheet => ({
  ...{ kind: null, encoding },
  headings: [],
  problems: [{ code, message }],
  sheet: null,
});

/**
 * Reads the bytes of a CSV file as a sheet of one kind. What can't be read is told whole: every unknown heading, every
 * missing column, and in the rows every byte that stands for no letter.
 */
export function readSheet(
  bytes: Uint8Array,
  wish: {
    kind?: SheetKind | undefined;
    encoding?: Encoding | undefined;
    leftOut: readonly string[];
  },
): ReadSheet {
  const decoded = decode(bytes, wish.encoding);
  if (decoded === undefined)
    return refused('not-text', 'This is no text. Save each sheet of a workbook as CSV of its own.', null);
  const { encoding } = decoded;
  const table = readTable(decoded.text);
  if (typeof table === 'string') return refused('broken-quotes', table, encoding);
  const headings = (table[0] ?? []).map(showUnreadable);
  if (headings.every((heading) => heading === ''))
    return refused('empty-file', 'This file is empty.', encoding);
  const kind = wish.kind ?? kindOf(headings.filter((heading) => !wish.leftOut.includes(heading)));
  if (kind === undefined)
    return {
      ...refused(
        'unknown-kind',
        'Nobody can tell from its headings what this sheet is about. Say what it is.',
        encoding,
      ),
      headings,
    };
  const rows = rowsOf(table);
  const problems = [...headingProblems(kind, headings, wish.leftOut), ...rowProblems(rows)];
  const placeOf = new Map(
    headings.flatMap((heading, at) => {
      const key = wish.leftOut.includes(heading) ? undefined : columnOf(kind, heading);
      return key === undefined ? [] : [[key, at] as const];
    }),
  );
  const sheet = problems.length > 0 ? null : { kind, headings, placeOf, rows };
  return { kind, encoding, headings, problems, sheet };
}

/** The rows under the headings that have anything in them. */
const rowsOf = ([, ...body]: Table): SheetRow[] =>
  body
    .map((cells, at) => ({
      row: at + 2,
      cells: cells.map(showUnreadable),
      unreadable: new Map(
        cells.flatMap((cell, place) => {
          const bytes = listUnreadable(cell);
          return bytes.length > 0 ? [[place, bytes] as const] : [];
        }),
      ),
    }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''));

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
