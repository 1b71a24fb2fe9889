import { compareText, daysBetween } from '@sheafbook/units';

/**
 * A line of the bank or an entry of the bank's account, as far as pairing looks at it; `partyId` is the household or the
 * supplier that it is of, where that is known.
 * Units: minor units. Errors: none.
 */
export type Pairable = {
  readonly id: string;
  readonly onDay: string;
  readonly minorUnits: number;
  readonly partyId?: string | null;
};

/** A line that is taken for an entry, and how far apart their days are. Units: days, ≥ 0. Errors: none. */
export type LinePair = { readonly lineId: string; readonly entryId: string; readonly days: number };

/**
 * How far a line of the bank may lie from its entry: a transfer over a long weekend, a cheque that is banked late.
 * Units: days. Errors: none. Source: common practice, no source.
 */
export const PAIRED_WITHIN_DAYS = 10;

/**
 * Pairs lines of the bank with entries of the book: the same amount, days near, and not of two different parties. Pairs
 * of one party come first, then the nearest days, the earlier line, the earlier entry, and the ids. A line and an entry
 * are in one pair at most, and no line is left that an entry
 * left over would fit. The order of the rows makes no difference.
 * Units: minor units, days. Errors: AssertionError for a text that is no day.
 */
export function pairLines(input: {
  readonly lines: readonly Pairable[];
  readonly entries: readonly Pairable[];
  readonly withinDays?: number;
}): LinePair[] {
  const withinDays = input.withinDays ?? PAIRED_WITHIN_DAYS;
  const byAmount = new Map<number, Pairable[]>();
  for (const entry of input.entries) {
    const same = byAmount.get(entry.minorUnits);
    if (same) same.push(entry);
    else byAmount.set(entry.minorUnits, [entry]);
  }
  const candidates = input.lines.flatMap((line) =>
    (byAmount.get(line.minorUnits) ?? [])
      .filter((entry) => !line.partyId || !entry.partyId || line.partyId === entry.partyId)
      .map((entry) => ({ line, entry, days: Math.abs(daysBetween(line.onDay, entry.onDay)) }))
      .filter(({ days }) => days <= withinDays),
  );
  candidates.sort(
    (a, b) =>
      isOneParty(b) - isOneParty(a) ||
      a.days - b.days ||
      compareRows(a.line, b.line) ||
      compareRows(a.entry, b.entry),
  );
  const taken = new Set<string>();
  const pairs: LinePair[] = [];
  for (const { line, entry, days } of candidates) {
    const [lineKey, entryKey] = [`line ${line.id}`, `entry ${entry.id}`];
    if (taken.has(lineKey) || taken.has(entryKey)) continue;
    taken.add(lineKey).add(entryKey);
    pairs.push({ lineId: line.id, entryId: entry.id, days });
  }
  return pairs;
}

const compareRows = (a: Pairable, b: Pairable): number =>
  compareText(a.onDay, b.onDay) || compareText(a.id, b.id);

const isOneParty = ({ line, entry }: { line: Pairable; entry: Pairable }): number =>
  line.partyId && line.partyId === entry.partyId ? 1 : 0;
