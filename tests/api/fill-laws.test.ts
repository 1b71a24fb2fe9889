import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fillBuy } from '../../apps/api/src/features/fill/assemble.ts';
import type { FillInputs } from '../../apps/api/src/features/fill/inputs.ts';
import { loadFillSolver } from '../../apps/api/src/features/fill/solver.ts';

const solver = await loadFillSolver();
const GRAMS_PER_POUND = 453.59237;
const grams = (pounds: number) => Math.round(pounds * GRAMS_PER_POUND);

/** A pledge in steps of 5 lb, on one of two foods that stand in for each other, with a ceiling in cents a pound. */
const somePledge = fc.record({
  isOats: fc.boolean(),
  least: fc.integer({ min: 0, max: 6 }),
  wanted: fc.integer({ min: 1, max: 6 }),
  most: fc.integer({ min: 0, max: 6 }),
  ceiling: fc.option(fc.integer({ min: 55, max: 95 })),
  hasSubstitute: fc.boolean(),
  minute: fc.integer({ min: 0, max: 3 }),
});

/** Wheat at 36.00, 30.00 from three bags; oats at 33.00; freight of 10.00 for both. */
const someBuy = fc
  .record({
    pledges: fc.array(somePledge, { minLength: 1, maxLength: 5 }),
    capPounds: fc.constantFrom(0, 10, 25),
  })
  .map(
    ({ pledges, capPounds }): FillInputs => ({
      methodVersion: 1,
      commonOwnerId: 'common',
      lines: ['oats', 'wheat'].map((lineId) => ({
        lineId,
        massUnit: 'lb',
        stepUnits: 5,
        commonCapGrams: grams(capPounds),
        quoteId: null,
      })),
      quotes: [
        {
          quoteId: 'quote',
          supplierId: 'mill',
          validUntilOn: '2026-10-31',
          freight: { steps: [{ fromGrams: 0, minorUnits: 1000 }], freeFromGoodsMinorUnits: null },
          minimumGoodsMinorUnits: 0,
          minimumGrams: 0,
          offers: [
            anOffer('wheat', [
              { fromBags: 1, bagPriceMinorUnits: 3600 },
              { fromBags: 3, bagPriceMinorUnits: 3000 },
            ]),
            anOffer('oats', [{ fromBags: 1, bagPriceMinorUnits: 3300 }]),
          ],
        },
      ],
      pledges: pledges.map((pledge, position) => ({
        pledgeId: `pledge-${position}`,
        householdId: `household-${position}`,
        seat: position + 1,
        lineId: pledge.isOats ? 'oats' : 'wheat',
        leastGrams: grams(5 * Math.min(pledge.least, pledge.wanted)),
        wantedGrams: grams(5 * pledge.wanted),
        mostGrams: grams(5 * Math.max(pledge.most, pledge.wanted)),
        wholeBags: false,
        substituteLineId: pledge.hasSubstitute ? (pledge.isOats ? 'wheat' : 'oats') : null,
        rankedAt: `2026-09-01T12:0${pledge.minute}:00.000Z`,
        ceiling: pledge.ceiling === null ? null : { minorUnits: pledge.ceiling, grams: 454 },
      })),
    }),
  );

const anOffer = (lineId: string, breaks: readonly { fromBags: number; bagPriceMinorUnits: number }[]) => ({
  bagOfferId: `bag-of-${lineId}`,
  lineId,
  bagSize: 50,
  bagGrams: 22_680,
  breakKind: 'all-units' as const,
  breaks,
  mostBags: null,
});

test('whatever is pledged, the bags are filled to the gram and nobody is served twice or above a ceiling', () => {
  fc.assert(
    fc.property(someBuy, (inputs) => {
      const fill = fillBuy(inputs, solver);
      for (const line of fill.lines) {
        const bags = line.bags.reduce((sum, bag) => sum + bag.bags, 0);
        const shared = line.pledges.reduce((sum, pledge) => sum + pledge.grams, line.commonGrams);
        expect(shared).toBe(bags * 22_680);
        for (const pledge of line.pledges.filter(({ units }) => units > 0)) {
          const { ceiling, leastGrams, mostGrams } = pledgeOf(inputs, pledge.pledgeId);
          const { landedPrice } = line;
          if (ceiling && landedPrice)
            expect(landedPrice.minorUnits * ceiling.grams).toBeLessThanOrEqual(
              ceiling.minorUnits * landedPrice.grams,
            );
          expect(pledge.units * GRAMS_PER_POUND).toBeGreaterThan(leastGrams - 1);
          expect(pledge.units * GRAMS_PER_POUND).toBeLessThan(mostGrams + 1);
        }
      }
      const served = fill.lines.flatMap((line) => line.pledges.filter(({ units }) => units > 0));
      expect(new Set(served.map(({ pledgeId }) => pledgeId)).size).toBe(served.length);
    }),
    { numRuns: 60 },
  );
});

test('a substitute is used for a ceiling only, and each pledge has an answer on its own line', () => {
  fc.assert(
    fc.property(someBuy, (inputs) => {
      const fill = fillBuy(inputs, solver);
      for (const pledge of inputs.pledges) {
        const own = fill.lines
          .find((line) => line.lineId === pledge.lineId)
          ?.pledges.find(({ pledgeId }) => pledgeId === pledge.pledgeId);
        expect(own).toBeDefined();
        expect(own?.units === 0).toBe(own?.dropped !== null);
        const moved = fill.substitutions.find(({ pledgeId }) => pledgeId === pledge.pledgeId);
        if (moved) expect(pledge.ceiling).not.toBeNull();
        expect(own?.dropped === 'substitute').toBe(moved?.isServed === true);
      }
    }),
    { numRuns: 60 },
  );
});

test('the order of the pledges in the inputs changes nothing', () => {
  fc.assert(
    fc.property(someBuy, (inputs) => {
      const reversed = { ...inputs, pledges: inputs.pledges.toReversed() };
      expect(fillBuy(reversed, solver)).toEqual(fillBuy(inputs, solver));
    }),
    { numRuns: 30 },
  );
});

function pledgeOf({ pledges }: FillInputs, pledgeId: string) {
  const pledge = pledges.find((known) => known.pledgeId === pledgeId);
  if (!pledge) throw new Error(`no pledge ${pledgeId} in the inputs`);
  return pledge;
}
