import { assert, compareFractions, type Fraction, fraction } from '@sheafbook/units';
import type { Pile } from './larder.ts';
import { pour } from './pouring.ts';
import { smaller } from './sums.ts';

/** A diet that eats until a fixed day, or until the day in question when `until` is null. */
export type Mouth = { readonly perDay: bigint; readonly until: bigint | null };

/** Piles and the mouths before them; the diets of a pile are places in `mouths`. */
export type Table = { readonly mouths: readonly Mouth[]; readonly piles: readonly Pile[] };

/**
 * The largest of the tightest sets of mouths for a day, or for the moment after it when all are fed until then:
 * `isShort` says who is in it, `fedUntil` until which day each of them eats of what is spare anyway, `isSpare` which
 * piles that set does not need.
 */
export type Cut = {
  readonly isShort: readonly boolean[];
  readonly fedUntil: readonly bigint[];
  readonly isSpare: readonly boolean[];
};

/** What a day's feeding lacks, and the cut that shows it. `lacking` is in the table's amounts. */
export type Feeding = { readonly lacking: Fraction; readonly cut: Cut };

/** The most that can be eaten until a day, against what should be. */
export function feedUntil(table: Table, days: Fraction): Feeding {
  const { denominator: scale } = days; // everything is counted in `scale`-th parts, so that all stays whole
  const levels = levelsOf(table.piles);
  const horizons = table.mouths.map(({ until }) => (until === null ? days.numerator : until * scale));
  const limits = table.mouths.map(({ perDay }, mouth) =>
    levels.map((day) => perDay * earlier(day, scale, horizons[mouth] ?? 0n)),
  );
  const levelAt = new Map(levels.map((day, level) => [day, level]));
  const piles = table.piles.map((pile) => ({
    amount: pile.amount * scale,
    level: levelAt.get(pile.day) ?? 0,
    diets: pile.diets,
  }));
  const poured = pour(piles, limits);
  const wanted = sum(table.mouths.map(({ perDay }, mouth) => perDay * (horizons[mouth] ?? 0n)));
  const eaten = sum(piles.map(({ amount }, pile) => amount - (poured.leftovers[pile] ?? 0n)));
  const fedUntil = poured.closedAt.map((level) => (level < 0 ? 0 : (levels[level] ?? 0)));
  // Food that ends on the very day feeds nobody after it, so a mouth fed just until then is short of the next moment.
  const isShort = fedUntil.map((day, mouth) => !isAfter(day, scale, horizons[mouth] ?? 0n));
  return {
    lacking: fraction(wanted - eaten, scale),
    cut: {
      isShort,
      fedUntil: fedUntil.map((day, mouth) => (isShort[mouth] ? BigInt(day) : 0n)),
      isSpare: poured.isReached,
    },
  };
}

/**
 * The longest that all mouths without a fixed day can be fed. Starts at a day that is certainly too late and lets
 * every cut that is found name the next one: no cut comes twice, so it ends, and it ends at the exact day.
 */
export function feedLongest(table: Table): { readonly days: Fraction; readonly cut: Cut } {
  let days = soonestLoneEnd(table);
  for (;;) {
    const { lacking, cut } = feedUntil(table, days);
    if (lacking.numerator === 0n) return { days, cut };
    const sooner = dayOfCut(table, cut);
    assert(compareFractions(sooner, days) < 0, 'a cut that lacks food ends sooner');
    days = sooner;
  }
}

/** The rate at which a cut's mouths go short with each further day, and the food they have. */
export function linesOfCut(table: Table, cut: Cut): { readonly perDay: bigint; readonly covered: bigint } {
  const short = table.mouths.flatMap((mouth, index) =>
    cut.isShort[index] ? { ...mouth, fedUntil: cut.fedUntil[index] ?? 0n } : [],
  );
  const needed = table.piles.filter((_, pile) => !cut.isSpare[pile]);
  return {
    perDay: sum(short.map(({ perDay, until }) => (until === null ? perDay : 0n))),
    covered:
      sum(needed.map(({ amount }) => amount)) +
      sum(short.map(({ perDay, until, fedUntil }) => perDay * (fedUntil - (until ?? 0n)))),
  };
}

function dayOfCut(table: Table, cut: Cut): Fraction {
  const { perDay, covered } = linesOfCut(table, cut);
  assert(perDay > 0n, 'a mouth with a fixed day is always fed until that day');
  return fraction(covered, perDay);
}

/** No one outlasts all the food being theirs alone, and together they do not outlast all of it. */
function soonestLoneEnd(table: Table): Fraction {
  const everyone: Cut = {
    isShort: table.mouths.map(() => true),
    fedUntil: table.mouths.map(() => 0n),
    isSpare: table.piles.map(() => false),
  };
  return table.mouths.reduce(
    (soonest, { perDay, until }, mouth) => {
      if (until !== null) return soonest;
      const alone = loneEnd(
        perDay,
        table.piles.filter((pile) => pile.diets.includes(mouth)),
      );
      return compareFractions(alone, soonest) < 0 ? alone : soonest;
    },
    dayOfCut(table, everyone),
  );
}

/** Eats what ends first; every last day that comes before it is eaten wastes the rest. */
function loneEnd(perDay: bigint, piles: readonly Pile[]): Fraction {
  let later = sum(piles.map(({ amount }) => amount));
  let least = later;
  for (const { amount, day } of piles) {
    if (!Number.isFinite(day)) break;
    later -= amount;
    const eaten = later + perDay * BigInt(day);
    if (eaten < least) least = eaten;
  }
  return fraction(least, perDay);
}

function levelsOf(piles: readonly Pile[]): number[] {
  const days = new Set(piles.map(({ day }) => day));
  return [...days.add(Number.POSITIVE_INFINITY)].toSorted((a, b) => (a < b ? -1 : 1));
}

function earlier(day: number, scale: bigint, horizon: bigint): bigint {
  if (!Number.isFinite(day)) return horizon;
  return smaller(BigInt(day) * scale, horizon);
}

function isAfter(day: number, scale: bigint, horizon: bigint): boolean {
  return !Number.isFinite(day) || BigInt(day) * scale > horizon;
}

function sum(values: readonly bigint[]): bigint {
  return values.reduce((total, value) => total + value, 0n);
}
