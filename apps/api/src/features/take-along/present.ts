import type { StorehouseRow } from '@sheafbook/db/tables';
import { TABLES, type TableName } from './schema.ts';

type Cell = string | number | boolean | null | Date | readonly string[];
/** A row as its query spelled it. */
export type TakenRow = Readonly<Record<string, Cell>>;
export type Taken = {
  readonly storehouse: StorehouseRow;
  readonly madeAt: Date;
  readonly tables: Readonly<Record<TableName, readonly TakenRow[]>>;
};

/** Everything in one document, described well enough to be read without the program that wrote it. */
export function presentTaken({ storehouse, madeAt, tables }: Taken) {
  return {
    format: 'sheafbook-take-along',
    formatVersion: 1,
    madeAt: madeAt.toISOString(),
    units:
      'Masses are whole grams, money whole minor units of the currency, days ISO 8601 dates, instants UTC. ' +
      'An amount of money above zero was charged to the household.',
    storehouse: { name: storehouse.name, currency: storehouse.currency, timeZone: storehouse.timeZone },
    tables: Object.fromEntries(TABLES.map((name) => [name, tables[name].map(presentRow)] as const)),
  };
}

/** A row of JSON: instants as UTC text, lists as lists. */
const presentRow = (row: TakenRow) =>
  Object.fromEntries(
    Object.entries(row).map(
      ([key, cell]) => [key, cell instanceof Date ? cell.toISOString() : cell] as const,
    ),
  );

/** A row of CSV: lists are joined by blanks. */
export const presentCells = (row: TakenRow) =>
  Object.fromEntries(
    Object.entries(row).map(([key, cell]) => {
      if (cell instanceof Date) return [key, cell.toISOString()] as const;
      return [key, typeof cell === 'object' && cell !== null ? cell.join(' ') : cell] as const;
    }),
  );
