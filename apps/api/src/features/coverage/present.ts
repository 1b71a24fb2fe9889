import type { GroupTotal } from '@sheafbook/coverage';
import { type Fraction, fractionToNumber, roundFraction } from '@sheafbook/units';
import { groupCostPerDay } from './landed.ts';
import type { closeGapInBuy, readCoverage, readTotals, WhoMayNotEat } from './use-cases.ts';

type Read = Awaited<ReturnType<typeof readCoverage>>;
type Gap = Awaited<ReturnType<typeof closeGapInBuy>>;

/** Hundredths are what people read of adult-equivalents; the exact figure stays inside. */
const toHundredths = (value: Fraction) => Math.round(fractionToNumber(value) * 100) / 100;
const toWhole = (value: Fraction) => Number(roundFraction(value));

export function presentCoverage({ facts, landed, coverage, byFood }: Read) {
  const nameOf = new Map(facts.eaters.map((eater) => [eater.eaterId, eater.name]));
  const named = (eaterIds: readonly string[]) => eaterIds.map((id) => ({ id, name: nameOf.get(id) ?? '' }));
  return {
    state: coverage.state,
    wholeDays: coverage.wholeDays,
    runsOutFirst: coverage.runsOutFirst,
    shorterMeasure: coverage.shorterMeasure,
    adultEquivalents: toHundredths(coverage.adultEquivalents),
    byMass: {
      wholeDays: coverage.byMass.wholeDays,
      limitingGroup: coverage.byMass.limitingGroup,
      secondGroup: coverage.byMass.secondGroup,
    },
    byEnergy: {
      wholeDays: coverage.byEnergy.wholeDays,
      kilocaloriesPerDay: toWhole(coverage.byEnergy.kilocaloriesPerDay),
      kilocalories: toWhole(coverage.byEnergy.kilocalories),
      limitingEaters: named(coverage.byEnergy.limitingEaterIds),
      foodsWithoutEnergy: facts.stock.withoutEnergy.map((food) => food.foodCode),
    },
    groups: coverage.groups.map((group) => ({
      group: group.group,
      isTargeted: group.isTargeted,
      needGramsPerDay: toHundredths(group.needGramsPerDay),
      stockGrams: group.stockGrams,
      nobodyMayEatGrams: group.nobodyMayEatGrams,
      wholeDays: group.wholeDays,
      gapGrams: group.gapGrams,
      limitingEaters: named(group.limitingEaterIds),
      costPerDayMinorUnits: roundedOrNull(groupCostPerDay(group.group, group.needGramsPerDay, landed)),
      endsByEater: group.endsByEater.map(({ eaterId, days }) => ({
        id: eaterId,
        name: nameOf.get(eaterId) ?? '',
        wholeDays: days === 'no-end' ? null : Math.floor(fractionToNumber(days)),
      })),
    })),
    byFood: byFood.map((food) => ({
      foodCode: food.foodCode,
      group: food.group,
      grams: food.grams,
      wholeDays: food.wholeDays,
      mayEat: named(food.mayEatIds),
      mayNotEat: named(food.mayNotEatIds),
    })),
    eaters: coverage.eaters.map((need) => ({
      id: need.eaterId,
      name: nameOf.get(need.eaterId) ?? '',
      adultEquivalents: toHundredths(need.adultEquivalents),
      kilocaloriesPerDay: toWhole(need.kilocaloriesPerDay),
      basis: need.basis,
      note: need.note,
      source: need.source,
    })),
    coming: facts.stock.coming.map(({ food, grams }) => ({ foodCode: food.foodCode, grams })),
    onHold: facts.stock.held.map(({ food, grams }) => ({ foodCode: food.foodCode, grams })),
    foods: landed.map(({ food, cost, perServing, perLoaf }) => ({
      foodCode: food.foodCode,
      landedMinorUnits: cost.minorUnits,
      landedGrams: cost.grams,
      perServingMinorUnits: toHundredths(perServing),
      perLoafMinorUnits: perLoaf === null ? null : toHundredths(perLoaf),
    })),
  };
}

export function presentGap({ closing, offers, edible, targetDays, daysNow }: Gap) {
  const packOf = new Map(offers.map(({ pack, food }) => [pack.packId, { pack, food }]));
  return {
    targetDays,
    wholeDaysNow: daysNow.wholeDays,
    wholeDays: closing.wholeDays,
    reachesTarget: closing.reachesTarget,
    limitingGroup: closing.limitingGroup,
    minorUnits: closing.minorUnits,
    pledges: closing.packs.map(({ packId, count }) => ({
      buyLineId: packId,
      foodCode: packOf.get(packId)?.food.foodCode ?? '',
      grams: count * (packOf.get(packId)?.pack.grams ?? 0),
      minorUnits: count * (packOf.get(packId)?.pack.minorUnits ?? 0),
    })),
    leftOut: offers
      .filter((offer) => !edible.includes(offer))
      .map(({ food }) => ({ foodCode: food.foodCode, because: 'not-for-every-eater' as const })),
  };
}

export function presentTotals({
  days,
  eaters,
  milliAdultEquivalents,
}: Awaited<ReturnType<typeof readTotals>>) {
  return {
    wholeDays: presentTotal(days),
    eaters: presentTotal(eaters),
    adultEquivalents: milliAdultEquivalents.isShown
      ? { isShown: true as const, total: milliAdultEquivalents.total / 1000 }
      : { isShown: false as const },
  };
}

const presentTotal = (figure: GroupTotal) =>
  figure.isShown
    ? { isShown: true as const, households: figure.households, mean: toHundredths(figure.mean) }
    : { isShown: false as const };

const roundedOrNull = (value: Fraction | null) => (value === null ? null : toHundredths(value));

export const presentWhoMayNotEat = ({ mayNotEat, mayHaveMet }: WhoMayNotEat) => ({
  mayNotEat: mayNotEat.map(({ eater, whyNot }) => ({ name: eater.name, ...whyNot })),
  mayHaveMet: mayHaveMet.map(({ eater, met }) => ({
    name: eater.name,
    foods: met.map(({ foodId, nameEn, nameEs }) => ({ id: foodId, nameEn, nameEs })),
  })),
});
