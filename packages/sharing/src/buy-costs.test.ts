import { AssertionError, sumOf } from '@sheafbook/units';
import { describe, expect, test } from 'vitest';
import { type BuyCosts, type ChargeTerms, landedCostInput, listBearers } from './buy-costs.ts';
import { chargeLandedCost } from './landed-cost.ts';

const BY_WEIGHT: ChargeTerms = {
  freightBasis: 'by-weight',
  blendNumerator: 1,
  blendDenominator: 2,
  levyHundredthsOfPercent: 0,
};
const AWARDS = [
  { ownerId: 'Ashdown', grams: 3000 },
  { ownerId: 'common', grams: 1000 },
];
const SEATS: Readonly<Record<string, number>> = { Ashdown: 1, Birchall: 2, Corran: 3, common: 9 };
const seatOf = (ownerId: string) => SEATS[ownerId] ?? 0;
const owners = listBearers({ awards: AWARDS, commonId: 'common', seatOf });
const costs = (given: Partial<BuyCosts> = {}): BuyCosts => ({
  goods: [{ costLineId: 'wheat', netMinorUnits: 8000, awards: AWARDS }],
  owners,
  terms: BY_WEIGHT,
  freightMinorUnits: 400,
  ...given,
});
const basedOn = (freightBasis: string) => ({ terms: { ...BY_WEIGHT, freightBasis } });
const othersOf = (given: Partial<BuyCosts>) =>
  landedCostInput(costs(given)).others.map(({ costLineId, minorUnits }) => [costLineId, minorUnits]);

describe('the cost lines of a buy', () => {
  test.for([
    { basis: 'by-weight', line: 'freight:by-weight' },
    { basis: 'by-value', line: 'freight:by-value' },
    { basis: 'per-household', line: 'freight:per-household' },
    { basis: 'blend', line: 'freight' },
  ])('freight shared $basis stands in a line called $line', ({ basis, line }) => {
    expect(othersOf(basedOn(basis))).toEqual([[line, 400]]);
  });

  test('credits and withheld deposits take off, and what comes to nothing is left out', () => {
    const given = {
      freightMinorUnits: 0,
      otherMinorUnits: 30,
      orderCreditMinorUnits: 50,
      withheldMinorUnits: 20,
    };
    expect(othersOf(given)).toEqual([
      ['other:by-weight', 30],
      ['credit', -50],
      ['withheld', -20],
    ]);
  });

  test('the levy is reckoned from the goods, unless it was levied before', () => {
    // 2.5 % of 80.00 is 2.00.
    const terms = { ...BY_WEIGHT, levyHundredthsOfPercent: 250 };
    expect(othersOf({ freightMinorUnits: 0, terms })).toEqual([['levy', 200]]);
    expect(othersOf({ freightMinorUnits: 0, terms, levyMinorUnits: 190 })).toEqual([['levy', 190]]);
  });

  test('where goods cost nothing, what goes by value goes by weight', () => {
    const goods = [{ costLineId: 'wheat', netMinorUnits: 0, awards: AWARDS }];
    const input = landedCostInput(costs({ goods, ...basedOn('by-value'), orderCreditMinorUnits: 100 }));
    // 4.00 of freight less 1.00 of credit, over 3,000 and 1,000 g.
    expect(chargeLandedCost(input).totals.map((total) => total.minorUnits)).toEqual([225, 75]);
    expect(input.others.map((line) => line.costLineId)).toEqual(['freight:by-weight', 'credit']);
  });

  test.for(['per-household', 'blend'])(
    'where common stock took everything, freight %s goes by weight',
    (basis) => {
      const awards = AWARDS.slice(1);
      const input = landedCostInput(
        costs({
          goods: [{ costLineId: 'wheat', netMinorUnits: 8000, awards }],
          owners: listBearers({ awards, commonId: 'common', seatOf }),
          ...basedOn(basis),
        }),
      );
      expect(chargeLandedCost(input).totals).toEqual([{ ownerId: 'common', minorUnits: 8400 }]);
    },
  );

  test('what is charged is what the buy cost, to the last minor unit', () => {
    const terms = { ...BY_WEIGHT, freightBasis: 'blend', levyHundredthsOfPercent: 123 };
    const { totals } = chargeLandedCost(
      landedCostInput(
        costs({ terms, otherMinorUnits: 33, orderCreditMinorUnits: 7, withheldMinorUnits: 11 }),
      ),
    );
    // 80.00 of goods, a levy of 1.23 % on them (0.984, so 0.98), 4.00 and 0.33, less 0.07 and 0.11.
    expect(sumOf(totals.map((total) => total.minorUnits))).toBe(8000 + 98 + 400 + 33 - 7 - 11);
  });

  test('a basis that nobody knows is refused', () => {
    expect(() => landedCostInput(costs(basedOn('by-guess')))).toThrow(AssertionError);
  });
});

describe('who bears a buy', () => {
  test('whoever was awarded something, and who withdrew; nobody else, and each once', () => {
    const awards = [...AWARDS, { ownerId: 'Corran', grams: 0 }, ...AWARDS];
    const bearers = listBearers({
      awards,
      commonId: 'common',
      seatOf,
      withdrawnIds: ['Birchall', 'Ashdown'],
    });
    expect(bearers).toEqual([
      { ownerId: 'Ashdown', seat: 1, isHousehold: true, bearsHouseholdPart: true },
      { ownerId: 'common', seat: 9, isHousehold: false, bearsHouseholdPart: false },
      { ownerId: 'Birchall', seat: 2, isHousehold: true, bearsHouseholdPart: true },
    ]);
  });

  test('who stepped into another’s place bears no part per household', () => {
    const bearers = listBearers({ awards: AWARDS, commonId: 'common', seatOf, standInIds: ['Ashdown'] });
    expect(bearers[0]).toMatchObject({ ownerId: 'Ashdown', isHousehold: true, bearsHouseholdPart: false });
  });
});
