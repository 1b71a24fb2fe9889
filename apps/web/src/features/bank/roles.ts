import type { Columns } from './queries.ts';

export const ROLES = ['none', 'day', 'words', 'amount', 'in', 'out', 'balance'] as const;
export type Role = (typeof ROLES)[number];

/** What each column of a file is, by its place. */
export function rolesOf(columns: Columns | null, width: number): Role[] {
  return Array.from({ length: width }, (_, at): Role => {
    if (columns === null) return 'none';
    if (columns.dayColumn === at) return 'day';
    if (columns.amountColumn === at) return 'amount';
    if (columns.inColumn === at) return 'in';
    if (columns.outColumn === at) return 'out';
    if (columns.balanceColumn === at) return 'balance';
    return columns.wordColumns.includes(at) ? 'words' : 'none';
  });
}

type Rest = Pick<Columns, 'firstRow' | 'dayOrder' | 'decimalMark'>;

/** The columns that these roles name; undefined while a day or an amount is missing, or amounts are named twice. */
export function columnsOf(roles: readonly Role[], rest: Rest): Columns | undefined {
  const at = (role: Role): number | null => {
    const place = roles.indexOf(role);
    return place < 0 ? null : place;
  };
  const [dayColumn, amountColumn, inColumn, outColumn] = [at('day'), at('amount'), at('in'), at('out')];
  const isTwoSided = inColumn !== null && outColumn !== null;
  const isOneSided = amountColumn !== null && inColumn === null && outColumn === null;
  if (dayColumn === null || !(isOneSided || (isTwoSided && amountColumn === null))) return undefined;
  return {
    ...rest,
    ...{ dayColumn, amountColumn, inColumn, outColumn, balanceColumn: at('balance') },
    wordColumns: roles.flatMap((role, place) => (role === 'words' ? [place] : [])),
  };
}
