import { type Fraction, fraction } from '@sheafbook/units';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { chargeLandedCost } from './landed-cost.ts';
import { creditByOriginalWeights } from './landed-cost-line.ts';
import type { ChargedLine, FreightBasis, GoodsLine, LandedOwner, OtherLine } from './landed-cost-terms.ts';

const NAMES = ['Ashdown', 'Birchall', 'Corran', 'Dell'];
const owners: LandedOwner[] = NAMES.map((ownerId, position) => ({
  ownerId,
  seat: position + 1,
  isHousehold: true,
  bearsHouseholdPart: true,
}));
const awarded = (amounts: readonly number[]) =>
  NAMES.map((ownerId, position) => ({ ownerId, grams: amounts[position] ?? 0 }));

// Autumn grain: wheat 216.00 less 3.60 for a torn bag, oats 112.50, beans 107.00 less one bag of 21.40, freight 88.00.
// Awards in pounds; largest remainder only reads their proportions.
const goods: GoodsLine[] = [
  { costLineId: 'wheat', netMinorUnits: 21_240, awards: awarded([115, 100, 50, 30]) },
  { costLineId: 'oats', netMinorUnits: 11_250, awards: awarded([30, 40, 70, 10]) },
  { costLineId: 'beans', netMinorUnits: 8560, awards: awarded([40, 28, 20, 12]) },
];
const halfAndHalf: FreightBasis = { kind: 'blend', numerator: 1, denominator: 2 };
const freight = (basis: FreightBasis): OtherLine => ({ costLineId: 'freight', minorUnits: 8800, basis });

const centsOf = (line: ChargedLine | undefined) => line?.shares.map((share) => share.minorUnits);
const spareOf = (line: ChargedLine | undefined) =>
  line?.shares.filter((share) => share.gotSpareUnit).map((share) => share.ownerId);
function exactShares(line: ChargedLine | undefined): Fraction[] {
  const weightSum = (line?.shares ?? []).reduce((sum, share) => sum + share.weight, 0);
  return (line?.shares ?? []).map((share) => fraction((line?.minorUnits ?? 0) * share.weight, weightSum));
}

test('autumn grain is charged to the cent, line by line', () => {
  const { lines, totals } = chargeLandedCost({ owners, goods, others: [freight(halfAndHalf)] });
  expect(lines.map((line) => [line.costLineId, centsOf(line), spareOf(line)])).toEqual([
    ['wheat', [8280, 7200, 3600, 2160], []],
    ['oats', [2250, 3000, 5250, 750], []],
    ['beans', [3424, 2397, 1712, 1027], ['Birchall']],
    ['freight:by-weight', [1494, 1356, 1130, 420], ['Ashdown', 'Dell']],
    ['freight:per-household', [1100, 1100, 1100, 1100], []],
  ]);
  expect(totals).toEqual([
    { ownerId: 'Ashdown', minorUnits: 16_548 },
    { ownerId: 'Birchall', minorUnits: 15_053 },
    { ownerId: 'Corran', minorUnits: 12_792 },
    { ownerId: 'Dell', minorUnits: 5457 },
  ]);
  expect(totals.reduce((sum, total) => sum + total.minorUnits, 0)).toBe(49_850);
});

test('the exact shares behind autumn grain are the fractions they are rounded from', () => {
  const { lines } = chargeLandedCost({ owners, goods, others: [freight(halfAndHalf)] });
  const [, , beans, byWeight] = lines;
  expect(exactShares(beans)).toEqual([
    fraction(3424),
    fraction(11_984, 5),
    fraction(1712),
    fraction(5136, 5),
  ]);
  expect(exactShares(byWeight)).toEqual([
    fraction(162_800, 109),
    fraction(147_840, 109),
    fraction(123_200, 109),
    fraction(45_760, 109),
  ]);
});

test.for<{ basis: FreightBasis; cents: number[] }>([
  { basis: { kind: 'by-weight' }, cents: [2987, 2713, 2260, 840] },
  { basis: { kind: 'by-value' }, cents: [2991, 2701, 2264, 844] },
  { basis: { kind: 'per-household' }, cents: [2200, 2200, 2200, 2200] },
  { basis: halfAndHalf, cents: [2594, 2456, 2230, 1520] },
  { basis: { kind: 'blend', numerator: 1, denominator: 1 }, cents: [2987, 2713, 2260, 840] },
  { basis: { kind: 'blend', numerator: 0, denominator: 1 }, cents: [2200, 2200, 2200, 2200] },
])('freight of 88.00 by $basis is $cents', ({ basis, cents }) => {
  const withFreight = chargeLandedCost({ owners, goods, others: [freight(basis)] });
  const without = chargeLandedCost({ owners, goods, others: [] });
  const freightOf = withFreight.totals.map(
    (total, position) => total.minorUnits - (without.totals[position]?.minorUnits ?? 0),
  );
  expect(freightOf).toEqual(cents);
});

test('by value goes by the cents of goods, 139.54, 125.97, 105.62 and 39.37', () => {
  const { lines } = chargeLandedCost({ owners, goods, others: [freight({ kind: 'by-value' })] });
  expect(lines.at(-1)?.shares.map((share) => share.weight)).toEqual([13_954, 12_597, 10_562, 3937]);
});

test('the same buy in grams is charged the same cents', () => {
  // Wheat split to the gram from 133,812 g, oats from three bags of 22,680 g, beans from four of 11,340 g.
  const inGrams = [
    [52_164, 45_360, 22_680, 13_608],
    [13_608, 18_144, 31_752, 4536],
    [18_144, 12_701, 9072, 5443],
  ];
  const gramGoods = goods.map((line, position) => ({ ...line, awards: awarded(inGrams[position] ?? []) }));
  const inPounds = chargeLandedCost({ owners, goods, others: [freight(halfAndHalf)] });
  const charged = chargeLandedCost({ owners, goods: gramGoods, others: [freight(halfAndHalf)] });
  expect(charged.totals).toEqual(inPounds.totals);
  const byWeight = charged.lines.find((line) => line.costLineId === 'freight:by-weight');
  expect(byWeight?.shares.map((share) => share.weight)).toEqual([83_916, 76_205, 63_504, 23_587]);
});

test('a blend of an odd amount rounds the part by weight down', () => {
  const odd = { costLineId: 'freight', minorUnits: 8801, basis: halfAndHalf };
  const { lines } = chargeLandedCost({ owners, goods, others: [odd] });
  expect(lines.slice(-2).map((line) => line.minorUnits)).toEqual([4400, 4401]);
});

test('a late credit of 4.00 on wheat is 1.56, 1.35, 0.68 and 0.41 by the original weights', () => {
  const { lines } = chargeLandedCost({ owners, goods, others: [] });
  const [wheat] = lines;
  if (!wheat) throw new Error('wheat is charged');
  expect(creditByOriginalWeights(400, wheat)).toEqual([
    { ownerId: 'Ashdown', minorUnits: 156 },
    { ownerId: 'Birchall', minorUnits: 135 },
    { ownerId: 'Corran', minorUnits: 68 },
    { ownerId: 'Dell', minorUnits: 41 },
  ]);
  expect(creditByOriginalWeights(-400, wheat).map((share) => share.minorUnits)).toEqual([
    -156, -135, -68, -41,
  ]);
});

test('common stock pays its goods and its freight by weight, but no household part', () => {
  const commonStock = { ownerId: 'common stock', seat: 99, isHousehold: false, bearsHouseholdPart: false };
  const { lines } = chargeLandedCost({
    owners: [commonStock, ...owners.slice(0, 1)],
    goods: [
      {
        costLineId: 'wheat',
        netMinorUnits: 100,
        awards: [
          { ownerId: 'common stock', grams: 1 },
          { ownerId: 'Ashdown', grams: 3 },
        ],
      },
    ],
    others: [{ costLineId: 'freight', minorUnits: 40, basis: halfAndHalf }],
  });
  expect(lines.map((line) => [line.costLineId, centsOf(line)])).toEqual([
    ['wheat', [75, 25]],
    ['freight:by-weight', [15, 5]],
    ['freight:per-household', [20, 0]],
  ]);
});

test('a line of nothing needs nobody to bear it', () => {
  const allShort = [{ costLineId: 'wheat', netMinorUnits: 0, awards: [] }];
  const { lines } = chargeLandedCost({ owners, goods: allShort, others: [] });
  expect(centsOf(lines[0])).toEqual([0, 0, 0, 0]);
});

const stranger = [{ costLineId: 'wheat', netMinorUnits: 5, awards: [{ ownerId: 'Eskdale', grams: 1 }] }];
test.for<{ input: Partial<Parameters<typeof chargeLandedCost>[0]>; message: RegExp }>([
  { input: { goods: stranger }, message: /awarded to Eskdale, who is not among the owners/ },
  { input: { goods: [...goods, ...goods] }, message: /two cost lines have one id/ },
  { input: { owners: [...owners, ...owners] }, message: /two owners have one seat/ },
  {
    input: { owners: [...owners, ...owners.map((owner) => ({ ...owner, seat: owner.seat + 10 }))] },
    message: /an owner is listed twice/,
  },
  {
    input: { owners: owners.map((owner) => ({ ...owner, isHousehold: false })) },
    message: /only a household bears a per-household part/,
  },
  {
    input: { owners: owners.map((owner) => ({ ...owner, bearsHouseholdPart: false })) },
    message: /at least one weight must be positive/,
  },
  { input: { goods: [{ costLineId: 'wheat', netMinorUnits: -5, awards: [] }] }, message: /netMinorUnits/ },
  {
    input: { goods: [{ costLineId: 'wheat', netMinorUnits: 5, awards: [] }] },
    message: /at least one weight/,
  },
  {
    input: { goods: [{ costLineId: 'wheat', netMinorUnits: 5, awards: awarded([0.5]) }] },
    message: /grams must be a whole number/,
  },
  {
    input: { others: [freight({ kind: 'blend', numerator: 3, denominator: 2 })] },
    message: /a blend lies between/,
  },
  {
    input: { others: [freight({ kind: 'blend', numerator: 0, denominator: 0 })] },
    message: /a blend lies between/,
  },
  {
    input: { others: [{ costLineId: 'fee', minorUnits: 0.5, basis: { kind: 'by-weight' } }] },
    message: /fee must be a whole number of minor units/,
  },
])('a charge without sense is refused: $message', ({ input, message }) => {
  expect(() => chargeLandedCost({ owners, goods, others: [freight(halfAndHalf)], ...input })).toThrow(
    message,
  );
});

const someBasis: fc.Arbitrary<FreightBasis> = fc.oneof(
  fc.constantFrom<FreightBasis>({ kind: 'by-weight' }, { kind: 'by-value' }, { kind: 'per-household' }),
  fc.record({
    kind: fc.constant('blend' as const),
    numerator: fc.nat(4),
    denominator: fc.integer({ min: 4, max: 9 }),
  }),
);
const someBuy = fc
  .record({
    ownerCount: fc.integer({ min: 1, max: 6 }),
    goods: fc.array(
      fc.record({
        cents: fc.integer({ min: 1, max: 100_000 }),
        grams: fc.array(fc.integer({ min: 1, max: 90_000 }), { minLength: 6, maxLength: 6 }),
      }),
      { minLength: 1, maxLength: 4 },
    ),
    others: fc.array(fc.record({ cents: fc.integer({ min: -5000, max: 20_000 }), basis: someBasis }), {
      maxLength: 4,
    }),
  })
  .map((buy) => {
    const people = Array.from({ length: buy.ownerCount }, (_, position) => ({
      ownerId: `owner ${position}`,
      seat: position * 2,
      isHousehold: true,
      bearsHouseholdPart: true,
    }));
    return {
      owners: people,
      goods: buy.goods.map(({ cents, grams }, line) => ({
        costLineId: `food ${line}`,
        netMinorUnits: cents,
        awards: people.map(({ ownerId }, position) => ({ ownerId, grams: grams[position] ?? 0 })),
      })),
      others: buy.others.map(({ cents, basis }, line) => ({
        costLineId: `other ${line}`,
        minorUnits: cents,
        basis,
      })),
    };
  });

test('what is charged is what was billed, line by line and in all', () => {
  fc.assert(
    fc.property(someBuy, (buy) => {
      const { lines, totals } = chargeLandedCost(buy);
      for (const line of lines) {
        expect(line.shares.reduce((sum, share) => sum + share.minorUnits, 0)).toBe(line.minorUnits);
      }
      const billed =
        buy.goods.reduce((sum, line) => sum + line.netMinorUnits, 0) +
        buy.others.reduce((sum, line) => sum + line.minorUnits, 0);
      expect(totals.reduce((sum, total) => sum + total.minorUnits, 0)).toBe(billed);
    }),
  );
});

test('the order in which owners and awards are listed changes no cent', () => {
  fc.assert(
    fc.property(someBuy, (buy) => {
      const turned = {
        ...buy,
        owners: buy.owners.toReversed(),
        goods: buy.goods.map((line) => ({ ...line, awards: line.awards.toReversed() })),
      };
      expect(chargeLandedCost(turned)).toEqual(chargeLandedCost(buy));
    }),
  );
});
