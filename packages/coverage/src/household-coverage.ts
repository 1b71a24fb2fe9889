import {
  asFraction,
  assertWhole,
  divideFractions,
  type Fraction,
  fraction,
  multiplyFractions,
  sumFractions,
} from '@sheafbook/units';
import { adultEquivalents, adultShare, presence } from './adult-equivalents.ts';
import { dailyKilocalories, type EnergyBasis } from './daily-kilocalories.ts';
import { compareDays, type Days } from './days.ts';
import { daysCovered } from './days-covered.ts';
import type { EaterFacts } from './eater.ts';
import type { EaterRate, EdibleLot } from './edible-stock.ts';
import type { FoodGroupCode } from './food-group.ts';
import { coverGroup, type GroupCoverage } from './group-coverage.ts';
import { GUIDELINE, type GuidelineRow } from './guideline.ts';
import { mayEat } from './may-eat.ts';
import type { StockLot } from './stock-lot.ts';

/**
 * What one eater needs by both measures, weighed by the part of the year that they are present.
 * Units: adult-equivalents and kilocalories a day, exact. Errors: none by itself.
 */
export type EaterNeed = {
  readonly eaterId: string;
  readonly adultEquivalents: Fraction;
  readonly kilocaloriesPerDay: Fraction;
  readonly basis: EnergyBasis;
  readonly note: string;
  readonly source: string;
};

/** Coverage by guideline mass, all targeted groups together. Units: days. Errors: none by itself. */
export type CoverageByMass = {
  readonly days: Days;
  readonly wholeDays: number | null;
  readonly limitingGroup: FoodGroupCode | null;
  readonly secondGroup: FoodGroupCode | null;
};

/** Coverage by energy, whatever the group. Units: days and kilocalories, exact. Errors: none by itself. */
export type CoverageByEnergy = {
  readonly days: Days;
  readonly wholeDays: number | null;
  readonly limitingEaterIds: readonly string[];
  readonly kilocaloriesPerDay: Fraction;
  readonly kilocalories: Fraction;
};

/** What householdCoverage finds; see there. Units: beside each part. Errors: none by itself. */
export type HouseholdCoverage = {
  readonly state: 'counted' | 'no-eaters';
  readonly adultEquivalents: Fraction;
  readonly eaters: readonly EaterNeed[];
  readonly groups: readonly GroupCoverage[];
  readonly byMass: CoverageByMass;
  readonly byEnergy: CoverageByEnergy;
  readonly wholeDays: number | null;
  readonly shorterMeasure: 'mass' | 'energy' | null;
  readonly runsOutFirst: FoodGroupCode | null;
};

/**
 * A household, its stock and how it wants to be measured.
 * Units: `today` an ISO day, `targetDays` whole. `basis` picks the measure of `wholeDays`, the shorter of both unless
 * told; `guideline` replaces GUIDELINE, and a group without a row has no need; `targetGroups` are those that count for
 * the household's days, all with a need unless told. Errors: none by itself.
 */
export type HouseholdCoverageInput = {
  readonly eaters: readonly EaterFacts[];
  readonly stock: readonly StockLot[];
  readonly today: string;
  readonly targetDays: number;
  readonly basis?: 'mass' | 'energy' | 'both';
  readonly guideline?: readonly Pick<GuidelineRow, 'group' | 'gramsPerAdultYear'>[];
  readonly targetGroups?: readonly FoodGroupCode[];
  readonly addYear?: boolean;
};

/**
 * How long a household's stock lasts by guideline mass, group by group, and by energy, with every eater's diet kept.
 * Units: see the parts; `wholeDays` is null when nothing ends, so also without eaters (`state` then says 'no-eaters').
 * Shape: groups in the order of the guideline, then those of the stock that it does not name; `runsOutFirst` is the
 * targeted group that ends first, of equals the earlier. A year has 365 days. Stock is what the household holds now
 * and may use: what is on hold, promised or still at the storehouse is left out by the caller.
 * Errors: AssertionError when a mass or a target is not whole, an id stands twice, or a day does not exist.
 */
export function householdCoverage(input: HouseholdCoverageInput): HouseholdCoverage {
  assertWhole(input.targetDays, 'targetDays');
  const eaters = input.eaters.map((eater) => needOf(eater, input));
  const groups = groupsOf(input).map((group) => coverGroup(groupInput(input, eaters, group)));
  const byMass = shortestGroup(groups);
  const byEnergy = coverEnergy(input, eaters);
  const shorterMeasure = pickMeasure(input.basis ?? 'both', byMass.days, byEnergy.days);
  const hasEaters = eaters.length > 0;
  return {
    state: hasEaters ? 'counted' : 'no-eaters',
    adultEquivalents: adultEquivalents(input.eaters, input.today, { addYear: input.addYear ?? false }),
    eaters,
    groups,
    byMass,
    byEnergy,
    wholeDays: (shorterMeasure === 'energy' ? byEnergy : byMass).wholeDays,
    shorterMeasure: hasEaters ? shorterMeasure : null,
    runsOutFirst: byMass.limitingGroup,
  };
}

function needOf(eater: EaterFacts, { today, addYear = false }: HouseholdCoverageInput): EaterNeed {
  const { kilocalories, basis, note, source } = dailyKilocalories(eater, today);
  return {
    eaterId: eater.eaterId,
    adultEquivalents: adultShare(eater, today, { addYear }),
    kilocaloriesPerDay: multiplyFractions(kilocalories, presence(eater)),
    basis,
    note,
    source,
  };
}

function groupsOf({ guideline = GUIDELINE, stock }: HouseholdCoverageInput): FoodGroupCode[] {
  return [...new Set([...guideline.map((row) => row.group), ...stock.map((lot) => lot.group)])];
}

function groupInput(
  { eaters, stock, targetDays, guideline = GUIDELINE, targetGroups }: HouseholdCoverageInput,
  needs: readonly EaterNeed[],
  group: FoodGroupCode,
): Parameters<typeof coverGroup>[0] {
  const gramsPerAdultYear = guideline.find((row) => row.group === group)?.gramsPerAdultYear ?? fraction(0);
  const gramsPerAdultDay = divideFractions(gramsPerAdultYear, fraction(365));
  const rates = needs.map((need) => ({
    eaterId: need.eaterId,
    perDay: multiplyFractions(gramsPerAdultDay, need.adultEquivalents),
  }));
  const lots = edibleLots(
    eaters,
    stock.filter((lot) => lot.group === group),
  );
  return { group, rates, lots, targetDays, isWanted: targetGroups?.includes(group) ?? true };
}

function edibleLots(eaters: readonly EaterFacts[], stock: readonly StockLot[]): EdibleLot[] {
  return stock.map((lot) => {
    assertWhole(lot.grams, 'grams');
    const eaterIds = eaters.filter((eater) => mayEat(eater, lot)).map(({ eaterId }) => eaterId);
    return { lotId: lot.lotId, amount: BigInt(lot.grams), daysLeft: lot.daysLeft, eaterIds };
  });
}

function shortestGroup(groups: readonly GroupCoverage[]): CoverageByMass {
  const ordered = groups
    .filter((group) => group.isTargeted && group.days !== 'no-end')
    .toSorted((a, b) => compareDays(a.days, b.days)); // a stable sort keeps the order of the groups among equals
  const [first, second] = ordered;
  return {
    days: first?.days ?? 'no-end',
    wholeDays: first?.wholeDays ?? null,
    limitingGroup: first?.group ?? null,
    secondGroup: second?.group ?? null,
  };
}

function coverEnergy(input: HouseholdCoverageInput, needs: readonly EaterNeed[]): CoverageByEnergy {
  const rates: EaterRate[] = needs.map(({ eaterId, kilocaloriesPerDay }) => ({
    eaterId,
    perDay: kilocaloriesPerDay,
  }));
  const lots = edibleLots(input.eaters, input.stock).map((lot, position) => ({
    ...lot,
    amount: kilocaloriesOf(input.stock[position]),
  }));
  const { days, wholeDays, limitingEaterIds } = daysCovered({
    rates,
    lots: lots.filter(({ amount }) => amount.numerator > 0n),
  });
  const usable = lots.filter(({ daysLeft, eaterIds }) => (daysLeft ?? 1) > 0 && eaterIds.length > 0);
  return {
    days,
    wholeDays,
    limitingEaterIds,
    kilocaloriesPerDay: sumFractions(rates.map(({ perDay }) => perDay)),
    kilocalories: sumFractions(usable.map(({ amount }) => amount)),
  };
}

function kilocaloriesOf(lot: StockLot | undefined): Fraction {
  if (!lot) return fraction(0);
  return multiplyFractions(fraction(lot.grams, 100), asFraction(lot.kilocaloriesPer100Grams));
}

function pickMeasure(basis: 'mass' | 'energy' | 'both', byMass: Days, byEnergy: Days): 'mass' | 'energy' {
  if (basis !== 'both') return basis;
  return compareDays(byEnergy, byMass) < 0 ? 'energy' : 'mass';
}
