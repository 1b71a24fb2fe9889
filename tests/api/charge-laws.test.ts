import { sumOf } from '@sheafbook/units';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Bill, type CostFacts, chargeBills } from '../../apps/api/src/features/charge/bills.ts';
import { differences } from '../../apps/api/src/features/charge/recharge.ts';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { type GrainHouseholds, openGrain } from '../support/fixed-buy.ts';
import { aPlainBuy, splitPlain } from '../support/plain-buy.ts';
import { chargeOf } from '../support/shared-buy.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

const OWNERS = [1, 2, 3, 4, 5].map((seat) => ({
  ownerId: seat === 5 ? 'common' : `household ${seat}`,
  seat,
  isHousehold: seat < 5,
  bearsHouseholdPart: seat < 5,
}));

const someGrams = fc.array(fc.nat(60_000), { minLength: 5, maxLength: 5 });
const someLine = fc.record({
  billed: fc.nat(1_000_000),
  credited: fc.nat(100),
  grams: someGrams.filter((row) => row.some((grams) => grams > 0)),
});

/** Facts of a buy with one to four foods; the credit on a food is so many hundredths of its bill. */
const someFacts = fc
  .record({
    lines: fc.array(someLine, { minLength: 1, maxLength: 4 }),
    freight: fc.nat(200_000),
    other: fc.nat(5_000),
    withheldMinorUnits: fc.nat(2_000),
    freightBasis: fc.constantFrom('by-weight', 'by-value', 'per-household', 'blend'),
    blendNumerator: fc.nat(7),
  })
  .map(({ lines, freight, other, withheldMinorUnits, freightBasis, blendNumerator }): CostFacts => {
    const goods = lines.map(
      ({ billed }, at): Bill => ({ kind: 'goods', buyLineId: `food ${at}`, minorUnits: billed }),
    );
    return {
      bills: [
        ...goods,
        { kind: 'freight', buyLineId: null, minorUnits: freight },
        { kind: 'other', buyLineId: null, minorUnits: other },
      ],
      credits: lines.map(({ billed, credited }, at) => ({
        kind: 'short',
        buyLineId: `food ${at}`,
        minorUnits: Math.floor((billed * credited) / 100),
      })),
      withheldMinorUnits,
      awards: lines.flatMap(({ grams }, at) =>
        OWNERS.map(({ ownerId }, owner) => ({
          buyLineId: `food ${at}`,
          ownerId,
          grams: grams[owner] ?? 0,
        })),
      ),
      owners: OWNERS,
      terms: { freightBasis, blendNumerator, blendDenominator: 7, levyHundredthsOfPercent: 0 },
    };
  });

const owedFor = ({ bills, credits, withheldMinorUnits }: CostFacts) =>
  sumOf(bills.map((bill) => bill.minorUnits)) -
  sumOf(credits.map((credit) => credit.minorUnits)) -
  withheldMinorUnits;
const chargedBy = (totals: readonly { readonly minorUnits: number }[]) =>
  sumOf(totals.map((total) => total.minorUnits));

test('what is charged comes to what is billed, less what is credited and withheld, whatever the basis', () => {
  fc.assert(
    fc.property(someFacts, (facts) => {
      expect(chargedBy(chargeBills(facts).totals)).toBe(owedFor(facts));
    }),
  );
});

test('charging again comes to what the bills are now, and leaves nobody’s line in the clearing account', () => {
  fc.assert(
    fc.property(someFacts, fc.nat(5_000), someGrams, (facts, risen, laterGrams) => {
      const charged = chargeBills(facts).lines;
      const later = OWNERS.map(({ ownerId }, at) => ({
        buyLineId: 'food 0',
        ownerId,
        grams: laterGrams[at] ?? 0,
      }));
      const now: CostFacts = {
        ...facts,
        bills: [...facts.bills, { kind: 'goods', buyLineId: 'food 0', minorUnits: risen }],
        awards: facts.awards.map((award) => ({
          ...award,
          grams:
            award.grams +
            (award.buyLineId === 'food 0'
              ? (later.find((row) => row.ownerId === award.ownerId)?.grams ?? 0)
              : 0),
        })),
        levyMinorUnits: 0,
      };
      const target = chargeBills(now);
      const changes = differences(target.lines, charged);
      for (const line of changes) expect(chargedBy(line.shares)).toBe(line.minorUnits);
      expect(chargedBy(changes)).toBe(owedFor(now) - owedFor(facts));
      if (laterGrams.every((grams) => grams === 0)) return;
      // More was split: each owner ends where it would be had all of it come at once.
      for (const { ownerId, minorUnits } of target.totals) {
        const partOf = (lines: typeof changes) =>
          sumOf(
            lines.flatMap((line) =>
              line.shares.filter((share) => share.ownerId === ownerId).map((share) => share.minorUnits),
            ),
          );
        expect(partOf([...charged, ...changes])).toBe(minorUnits);
      }
    }),
  );
});

test('a buy whose charges already meet its bills needs no charging again', () => {
  fc.assert(
    fc.property(someFacts, (facts) => {
      const { lines } = chargeBills(facts);
      expect(differences(lines, lines)).toEqual([]);
    }),
  );
});

let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
beforeAll(async () => {
  ({ app, storehouse, households } = await openGrain());
});
afterAll(() => app.close());

test('random buys on the real database charge what they cost, and share every gram that landed', async () => {
  const someBuy = fc.record({
    wanted: fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 4, maxLength: 4 }),
    missing: fc.integer({ min: 0, max: 2 }),
    torn: fc.integer({ min: 10_000, max: 22_680 }),
    freightMinorUnits: fc.integer({ min: 1, max: 20_000 }),
    price: fc.integer({ min: 1, max: 9_999 }),
    freightBasis: fc.constantFrom('by-weight', 'by-value', 'per-household', 'blend'),
    rule: fc.constantFrom('proportional', 'equal-awards', 'equal-losses', 'first-come', 'rotation-of-loss'),
  });
  const { Ashdown, Birchall, Corran, Dell } = households;
  const by = [Ashdown, Birchall, Corran, Dell].map((household) => household.caller);
  await fc.assert(
    fc.asyncProperty(someBuy, async ({ wanted, missing, torn, price, rule, ...wish }) => {
      // Wants in fifths of a bag; the last pledge rounds the sum up to whole bags of 50 lb.
      const pounds = wanted.map((steps) => steps * 10);
      const spare = (50 - (sumOf(pounds) % 50)) % 50;
      const bagCount = (sumOf(pounds) + spare) / 50;
      const bags = Array.from({ length: Math.max(1, bagCount - missing) }, (_, at) =>
        at === 0 ? { netGrams: torn } : {},
      );
      const { freightBasis, freightMinorUnits } = wish;
      const buy = await aPlainBuy(app, storehouse, {
        treasurer: households.Birchall.caller,
        rules: { freightBasis, blendNumerator: 1, blendDenominator: 3 },
        freightMinorUnits,
        foods: [
          {
            bagPriceMinorUnits: price,
            pledges: pounds.map((wantedPounds, at) => ({
              by: by[at] ?? Ashdown.caller,
              wanted: wantedPounds + (at === 3 ? spare : 0),
            })),
            bags,
          },
        ],
      });
      await splitPlain(storehouse, buy, rule);
      const charges = bodyOf(await storehouse.coordinator.post(`${buy.path}/sharing-out`), 201);
      expect(sumOf(Object.values(chargeOf(charges))) + charges.commonStockMinorUnits).toBe(
        bagCount * price + freightMinorUnits,
      );
      expect(charges.clearingMinorUnits).toBe(0);
      const { splits } = bodyOf(await storehouse.coordinator.get(`${buy.path}/splits`));
      expect(splits[0].awardedGrams).toBe(sumOf(buy.bags.map((bag) => bag.netGrams)));
    }),
    { numRuns: 4 },
  );
});
