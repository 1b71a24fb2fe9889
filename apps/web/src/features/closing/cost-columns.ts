import type { Charges } from './queries.ts';

/** One cost of a buy and who bears it, however often it was charged. Units: minor units. */
export type CostColumn = {
  readonly costLine: string;
  readonly buyLineId: string | null;
  readonly minorUnits: number;
  readonly partOf: ReadonlyMap<string, number>;
  /** Whoever got the odd cent of it. */
  readonly spareOf: ReadonlySet<string>;
};

type Line = Charges['lines'][number];

/** What was charged later of a cost stands in the column of that cost: its column comes to what it cost in the end. */
export function costColumns(lines: readonly Line[]): CostColumn[] {
  const ids = [...new Set(lines.map(costOf))];
  return ids.map((costLine) => {
    const own = lines.filter((line) => costOf(line) === costLine);
    const shares = own.flatMap((line) => line.shares);
    const partOf = new Map<string, number>();
    for (const { ownerId, minorUnits } of shares)
      partOf.set(ownerId, (partOf.get(ownerId) ?? 0) + minorUnits);
    return {
      costLine,
      buyLineId: own[0]?.buyLineId ?? null,
      minorUnits: own.reduce((sum, line) => sum + line.minorUnits, 0),
      partOf,
      spareOf: new Set(shares.filter(({ gotSpareUnit }) => gotSpareUnit).map(({ ownerId }) => ownerId)),
    };
  });
}

const costOf = ({ costLine }: Line): string => costLine.replace(/^late:/, '');

/** Everyone who bears some of it, by seat; common stock stands last. */
export function ownersOf(lines: readonly Line[]) {
  const owners = new Map(lines.flatMap(({ shares }) => shares).map((share) => [share.ownerId, share]));
  return [...owners.values()].toSorted((a, b) => a.seat - b.seat);
}
