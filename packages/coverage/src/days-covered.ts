import { assert, divideFractions, type Fraction, sumFractions } from '@sheafbook/units';
import { type Days, wholeDaysOf } from './days.ts';
import type { DaysCoveredInput, EaterRate, EdibleLot } from './edible-stock.ts';
import { type Cut, feedLongest, type Mouth, type Table } from './feeding.ts';
import { foodAtRisk } from './food-at-risk.ts';
import { amountOf, isPast, type Larder, stockLarder } from './larder.ts';

/** What daysCovered finds; see there. Units: days, and amounts in the unit of the rates. Errors: none by itself. */
export type DaysCovered = {
  readonly days: Days;
  readonly wholeDays: number | null;
  readonly limitingEaterIds: readonly string[];
  readonly atRisk: readonly { readonly lotId: string; readonly amount: Fraction }[];
  readonly naiveDays: Days;
  readonly endsByEater: readonly { readonly eaterId: string; readonly days: Days }[];
};

/**
 * How long a stock feeds all its eaters, when each may eat only some lots and lots end.
 * Units: exact days from now; `wholeDays` is the floor, null without an end. Nobody eating anything is 'no-end'.
 * Shape: `limitingEaterIds` is the largest set that cannot be fed a moment longer even if the others left them all
 * they can; `atRisk` is what nobody can eat before its last day when what ends first is eaten first (lots that end on
 * one day in the order given), lots past their last day whole; `naiveDays` is all that is not past, over all rates.
 * `endsByEater`: the limiting eaters end at `days`; then, with those fed until exactly there, the others go on as long
 * as all of them can be fed together, and so on: no eater's end can be later without an earlier or equal end coming
 * sooner. An eater who eats nothing has no end and never limits.
 * Errors: AssertionError when an id stands twice, a lot names an unknown eater, an amount or a rate is negative, or
 * the days left are not whole.
 * Source: largest horizon of a flow from lots to eaters over time, found as a minimum cut (max-flow min-cut theorem).
 */
export function daysCovered({ rates, lots }: DaysCoveredInput): DaysCovered {
  assertStock({ rates, lots });
  const larder = stockLarder(rates, lots);
  const ends = endsByDiet(larder);
  const dietOf = new Map(larder.diets.flatMap(({ eaterIds }, diet) => eaterIds.map((id) => [id, diet])));
  const first = ends.reduce((least, { stage }) => Math.min(least, stage), Number.POSITIVE_INFINITY);
  const endOf = (eaterId: string): DietEnd | undefined => ends[dietOf.get(eaterId) ?? -1];
  const days = ends.find(({ stage }) => stage === first)?.days ?? 'no-end';
  return {
    days,
    wholeDays: wholeDaysOf(days),
    limitingEaterIds: rates.flatMap(({ eaterId }) => (endOf(eaterId)?.stage === first ? eaterId : [])),
    atRisk: foodAtRisk(larder, lots),
    naiveDays: naiveDaysOf(rates, lots),
    endsByEater: rates.map(({ eaterId }) => ({ eaterId, days: endOf(eaterId)?.days ?? 'no-end' })),
  };
}

type DietEnd = { readonly days: Fraction; readonly stage: number };

/**
 * Feeds all as long as possible, sets the limiting diets and the food that only they need aside, and goes on with
 * the rest. What the limiting diets ate of food that others could have is what they still claim, until a whole day.
 */
function endsByDiet({ diets, piles }: Larder): DietEnd[] {
  const ends: (DietEnd | undefined)[] = diets.map(() => undefined);
  let table: Table = { mouths: diets.map(({ perDay }) => ({ perDay, until: null })), piles };
  for (let stage = 0; table.mouths.some(({ until }) => until === null); stage += 1) {
    const { days, cut } = feedLongest(table);
    table.mouths.forEach(({ until }, diet) => {
      if (until === null && cut.isShort[diet]) ends[diet] = { days, stage };
    });
    table = setAside(table, cut);
  }
  return ends.flatMap((end) => end ?? []);
}

function setAside({ mouths, piles }: Table, cut: Cut): Table {
  const fixed = mouths.map((mouth, diet): Mouth => {
    return cut.isShort[diet] ? { perDay: mouth.perDay, until: cut.fedUntil[diet] ?? 0n } : mouth;
  });
  return { mouths: fixed, piles: piles.filter((_, pile) => cut.isSpare[pile]) };
}

function naiveDaysOf(rates: readonly EaterRate[], lots: readonly EdibleLot[]): Days {
  const perDay = sumFractions(rates.map((rate) => rate.perDay));
  if (perDay.numerator === 0n) return 'no-end';
  return divideFractions(sumFractions(lots.filter((lot) => !isPast(lot)).map(amountOf)), perDay);
}

function assertStock({ rates, lots }: DaysCoveredInput): void {
  const eaterIds = new Set(rates.map(({ eaterId }) => eaterId));
  assert(eaterIds.size === rates.length, 'an eater stands once among the rates');
  assert(new Set(lots.map(({ lotId }) => lotId)).size === lots.length, 'a lot stands once in a stock');
  for (const { eaterId, perDay } of rates)
    assert(perDay.numerator >= 0n, `${eaterId} eats less than nothing`);
  for (const lot of lots) {
    assert(amountOf(lot).numerator >= 0n, `lot ${lot.lotId} holds less than nothing`);
    assert(
      lot.daysLeft === null || Number.isSafeInteger(lot.daysLeft),
      `lot ${lot.lotId} needs whole days left`,
    );
    assert(
      lot.eaterIds.every((id) => eaterIds.has(id)),
      `lot ${lot.lotId} names an eater without a rate`,
    );
  }
}
