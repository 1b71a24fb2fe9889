import { householdCoverage } from '@sheafbook/coverage';
import { type FillLine, type FillRequest, fillBags, SPLIT_RULES, splitByRule } from '@sheafbook/sharing';
import { loadSolver } from '@sheafbook/solve';
import { fraction } from '@sheafbook/units';
import type { Row } from './table.ts';

const ROUNDS = 5;

/** What is computed without a database, each by the milliseconds that it takes. */
export async function timeCalculations(): Promise<Row[]> {
  const claims = someClaims(1000);
  const claimedUnits = claims.reduce((sum, claim) => sum + claim.claimUnits, 0);
  const lots = Array.from({ length: 20 }, (_, lot) => Math.floor((claimedUnits * (60 + lot)) / 100));
  const splits = SPLIT_RULES.map((rule) => ({
    what: `split 1,000 households × 20 lots, ${rule}`,
    figures: times(() => {
      for (const availableUnits of lots) splitByRule({ rule, availableUnits, claims });
    }),
    unit: 'ms' as const,
    promise: { atMost: 100 },
  }));
  const solver = await loadSolver();
  const request = fourteenHouseholdFill();
  const coverage = twelveEaters();
  return [
    ...splits,
    { what: 'fill of 14 households, 5 foods', figures: times(() => fillBags(request, solver)), unit: 'ms' },
    {
      what: 'coverage of 12 eaters × 200 lots',
      figures: times(() => householdCoverage(coverage)),
      unit: 'ms',
    },
  ];
}

function times(work: () => unknown): number[] {
  work(); // the first run compiles
  return Array.from({ length: ROUNDS }, () => {
    const startedAt = performance.now();
    work();
    return performance.now() - startedAt;
  });
}

/** Plain figures that differ from one position to the next and are the same in every run. */
const spread = (position: number, most: number): number => (position * 7919 + 13) % most;

function someClaims(count: number) {
  return Array.from({ length: count }, (_, position) => ({
    ownerId: `household ${position}`,
    seat: position + 1,
    claimUnits: 1000 + spread(position, 40_000),
    pledgeOrder: spread(position, count),
    dailyNeedUnits: fraction(200 + spread(position, 1500), 1),
    stockUnits: spread(position, 90_000),
    carryUnits: spread(position, 900) - 450,
  }));
}

function fourteenHouseholdFill(): FillRequest {
  const foods = ['wheat', 'rice', 'oats', 'beans', 'lentils'];
  const lines: FillLine[] = foods.map((lineId, food) => ({
    lineId,
    offers: [
      {
        bagOfferId: `${lineId} 50`,
        bagSize: 50,
        bagGrams: 22_680,
        breakKind: 'all-units',
        breaks: [
          { fromBags: 1, bagPriceMinorUnits: 3600 + 100 * food },
          { fromBags: 10, bagPriceMinorUnits: 3300 + 100 * food },
        ],
        mostBags: null,
      },
    ],
    pledges: Array.from({ length: 14 }, (_, household) => {
      const wanted = 5 * (4 + spread(food * 14 + household, 13));
      return {
        pledgeId: `${lineId} ${household}`,
        ownerId: `household ${household}`,
        least: wanted - 10,
        wanted,
        most: wanted + 15,
        step: 5,
        ceiling: null,
      };
    }),
    commonCap: 20,
    leastBags: 0,
    mostBags: null,
  }));
  const freight = { steps: [{ fromGrams: 0, minorUnits: 9500 }], freeFromGoodsMinorUnits: null };
  return { lines, freight, minimumGoodsMinorUnits: 0, minimumGrams: 0 };
}

/** Each eater goes without something else, and each lot lasts another time. */
function twelveEaters(): Parameters<typeof householdCoverage>[0] {
  const allergens = ['wheat', 'milk', 'soy', 'peanuts'];
  const groups = ['grains', 'legumes', 'dried-milk', 'fats', 'sugars', 'salt'] as const;
  const eaters = Array.from({ length: 12 }, (_, eater) => ({
    eaterId: `eater ${eater}`,
    birthOn: `${1950 + 6 * eater}-05-01`,
    sex: eater % 2 === 0 ? ('female' as const) : ('male' as const),
    activity: 'moderate' as const,
    presentPercent: 100 - 5 * (eater % 3),
    heightCentimetres: null,
    massKilograms: null,
    typedKilocalories: null,
    excludedAllergens: eater % 3 === 0 ? [allergens[eater % 4] ?? ''] : [],
    excludedFoodCodes: [],
    avoidsGluten: eater === 5,
  }));
  const stock = Array.from({ length: 200 }, (_, lot) => ({
    lotId: `lot ${lot}`,
    foodCode: `food ${lot % 40}`,
    group: groups[lot % 6] ?? ('grains' as const),
    grams: 2000 + spread(lot, 20_000),
    daysLeft: lot % 5 === 0 ? null : 30 + spread(lot, 3000),
    allergens: lot % 4 === 0 ? [allergens[(lot / 4) % 4] ?? ''] : [],
    gluten: lot % 4 === 0 ? ('yes' as const) : ('no' as const),
    kilocaloriesPer100Grams: 100 + spread(lot, 500),
  }));
  return { eaters, stock, today: '2026-09-01', targetDays: 365 };
}
