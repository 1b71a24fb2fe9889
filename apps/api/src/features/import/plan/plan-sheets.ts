import type { Context } from '../../../platform/context.ts';
import { newId } from '../../../platform/new-id.ts';
import type { Encoding } from '../sheet/decode.ts';
import { foldText, SHEET_KINDS, type SheetKind } from '../sheet/kinds.ts';
import type { ReadSheet, Sheet, SheetProblem } from '../sheet/read-sheet.ts';
import { type CellProblem, openRow, type Reading, type RowReader } from '../sheet/row-reader.ts';
import { type NewBalance, planBalance } from './balances.ts';
import { type Known, keyOf } from './book.ts';
import { type NewEater, type NewHousehold, planEater, planHousehold } from './people.ts';
import type { Effect, Planned } from './planned.ts';
import { type NewStock, planStock } from './stock.ts';
import { type NewFood, type NewItem, planFood, planItem } from './things.ts';

export type SentFile = { readonly name: string; readonly sha256: string; readonly read: ReadSheet };
export type PlannedRow = {
  readonly row: number;
  readonly cells: readonly string[];
  readonly effect: Effect | null;
  readonly problems: readonly CellProblem[];
};
export type PlannedFile = {
  readonly name: string;
  readonly sha256: string;
  readonly kind: SheetKind | null;
  readonly encoding: Encoding | null;
  readonly headings: readonly string[];
  readonly problems: readonly SheetProblem[];
  readonly rows: readonly PlannedRow[];
};

/** Everything that the sheets make, by kind. */
export type Made = {
  households: NewHousehold[];
  eaters: NewEater[];
  foods: NewFood[];
  equipment: NewItem[];
  balances: NewBalance[];
  stock: NewStock[];
};

/**
 * Plans every row of every sheet against what is known, in the order of kinds: a household before its eaters, whatever
 * the order of the files. Nothing is written here, and no error stops the others from being found.
 */
export function planSheets(
  context: Context,
  files: readonly SentFile[],
  { known, reading, nextSeat }: { known: Known; reading: Reading; nextSeat: number },
): { files: PlannedFile[]; made: Made } {
  const made: Made = { households: [], eaters: [], foods: [], equipment: [], balances: [], stock: [] };
  const rowsOf = new Map<SentFile, PlannedRow[]>();
  for (const kind of SHEET_KINDS)
    for (const file of files.filter(({ read }) => read.sheet?.kind === kind)) {
      const plan = plannerOf(kind, {
        context,
        known,
        made,
        nextSeat,
        source: file.name,
        currency: reading.currency,
      });
      if (file.read.sheet) rowsOf.set(file, planRows(file.read.sheet, reading, plan));
    }
  const planned = files.map((file) => {
    const { kind, encoding, headings, problems } = file.read;
    const { name, sha256 } = file;
    return { name, sha256, kind, encoding, headings, problems, rows: rowsOf.get(file) ?? [] };
  });
  return { files: planned, made };
}

function planRows(
  sheet: Sheet,
  reading: Reading,
  plan: (row: RowReader) => Effect | undefined,
): PlannedRow[] {
  const firstRowOf = new Map<string, number>();
  return sheet.rows.map((sheetRow) => {
    const row = openRow(sheet, sheetRow, reading);
    const effect = plan(row);
    refuseTwin(row, { sheet, firstRowOf, rowNo: sheetRow.row });
    const isRight = row.problems.length === 0 && effect !== undefined;
    const { row: rowNo, cells } = sheetRow;
    return { row: rowNo, cells, effect: isRight ? effect : null, problems: row.problems };
  });
}

/** One sheet names each thing once: of two rows of one name, one would quietly be passed over. */
function refuseTwin(
  row: RowReader,
  { sheet, firstRowOf, rowNo }: { sheet: Sheet; firstRowOf: Map<string, number>; rowNo: number },
): void {
  if (sheet.kind === 'stock') return;
  const column = sheet.kind === 'balances' ? 'account' : 'name';
  const whose = sheet.kind === 'eaters' ? foldText(row.raw('household')) : '';
  const key = keyOf(
    whose,
    foldText(row.raw(column)),
    sheet.kind === 'balances' ? foldText(row.raw('what')) : '',
  );
  const first = firstRowOf.get(key);
  if (first !== undefined && row.raw(column) !== '') row.refuse(column, 'twice-in-file', { row: first });
  else firstRowOf.set(key, rowNo);
}

type Planning = {
  context: Context;
  known: Known;
  made: Made;
  nextSeat: number;
  source: string;
  currency: string;
};

function plannerOf(kind: SheetKind, planning: Planning): (row: RowReader) => Effect | undefined {
  const { context, known, made, source, currency } = planning;
  const keep = <Thing>(list: Thing[], planned: Planned<Thing>) => {
    if (planned.made !== undefined) list.push(planned.made);
    return planned.effect;
  };
  const plans: Record<SheetKind, (row: RowReader) => Effect | undefined> = {
    households: (row) => {
      const seat = planning.nextSeat + made.households.length;
      return keep(made.households, planHousehold(row, known, { id: newId(context), seat }));
    },
    eaters: (row) => keep(made.eaters, planEater(row, known, newId(context))),
    foods: (row) => keep(made.foods, planFood(row, known, newId(context))),
    equipment: (row) => keep(made.equipment, planItem(row, known)),
    balances: (row) =>
      keep(made.balances, planBalance(row, known, { supplierId: newId(context), currency, source })),
    stock: (row) => keep(made.stock, planStock(row, known, source)),
  };
  return plans[kind];
}
