import { type FillAnswer, type FillLine, type FillRequest, fillBags } from '@sheafbook/sharing';
import { loadSolver } from '@sheafbook/solve';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { aLine, anOffer, aPledge, aRequest } from '../../packages/sharing/src/fill-builders.ts';
import { fillByBruteForce, type LineWay } from './fill-brute-force.ts';

const solver = await loadSolver();
const seeded = (numRuns: number) => ({ seed: 20_260_731, numRuns });

/** An option that is nearly always null. */
const rarely = <Value>(value: fc.Arbitrary<Value>) =>
  fc.integer({ min: 0, max: 5 }).chain((die) => (die === 0 ? value : fc.constant(null)));

const somePledge = fc
  .record({
    step: fc.constantFrom(1, 2, 5),
    least: fc.nat({ max: 2 }),
    more: fc.nat({ max: 3 }),
    room: fc.nat({ max: 3 }),
    ceiling: fc.option(fc.integer({ min: 95, max: 190 }), { freq: 2 }),
  })
  .map(({ step, least, more, room, ceiling }) => {
    const wanted = Math.max(1, least + more);
    return {
      ...aPledge(['', least * step, wanted * step, (wanted + room) * step, step]),
      // A line unit weighs 100 g, so this is a price per line unit.
      ceiling: ceiling === null ? null : { minorUnits: ceiling, grams: 100 },
    };
  });

const someOffer = fc
  .record({
    bagSize: fc.constantFrom(4, 5, 6, 10),
    price: fc.integer({ min: 80, max: 130 }),
    discount: fc.integer({ min: 0, max: 30 }),
    from: fc.integer({ min: 2, max: 4 }),
    breakKind: fc.constantFrom('all-units' as const, 'incremental' as const),
    mostBags: rarely(fc.integer({ min: 1, max: 5 })),
  })
  .map(({ bagSize, price, discount, from, breakKind, mostBags }) =>
    anOffer({
      bagSize,
      bagGrams: bagSize * 100,
      breakKind,
      mostBags,
      breaks: [
        { fromBags: 1, bagPriceMinorUnits: price * bagSize },
        { fromBags: from, bagPriceMinorUnits: (price - discount) * bagSize },
      ],
    }),
  );

const someLine = (most: { pledges: number; offers: number }) =>
  fc
    .record({
      offers: fc.array(someOffer, { minLength: most.offers, maxLength: most.offers }),
      pledges: fc.array(somePledge, { minLength: most.pledges - 1, maxLength: most.pledges, size: 'max' }),
      commonCap: fc.constantFrom(0, 0, 2, 5),
      leastBags: fc.constantFrom(0, 0, 0, 2),
      mostBags: rarely(fc.integer({ min: 1, max: 6 })),
    })
    .map((line) => ({
      ...aLine(line),
      offers: line.offers.map((offer, i) => ({ ...offer, bagOfferId: `offer ${i}` })),
      pledges: line.pledges.map((pledge, i) => ({
        ...pledge,
        pledgeId: `pledge ${i}`,
        ownerId: `owner ${i}`,
      })),
    }));

const someRequest = (lines: fc.Arbitrary<FillLine[]>) =>
  fc
    .record({
      lines,
      freight: fc.record({
        steps: fc.constantFrom(
          [],
          [{ fromGrams: 0, minorUnits: 500 }],
          [
            { fromGrams: 0, minorUnits: 300 },
            { fromGrams: 1500, minorUnits: 900 },
          ],
        ),
        freeFromGoodsMinorUnits: fc.option(fc.constantFrom(1500, 3000)),
      }),
      minimumGoodsMinorUnits: fc.constantFrom(0, 0, 1000, 2000),
      minimumGrams: fc.constantFrom(0, 0, 1000, 2000),
    })
    .map(aRequest);

const inOrder = (answer: FillAnswer, request: FillRequest) =>
  answer.lines
    .toSorted((a, b) => (a.lineId < b.lineId ? -1 : 1))
    .map((filled) => {
      const line = request.lines.find((given) => given.lineId === filled.lineId);
      const offers = line?.offers.toSorted(
        (a, b) => b.bagSize - a.bagSize || (a.bagOfferId < b.bagOfferId ? -1 : 1),
      );
      const bagsOf = (id: string) => filled.bags.find((bag) => bag.bagOfferId === id)?.bags;
      return {
        units: filled.allotments.map((allotment) => allotment.units),
        spare: filled.commonUnits,
        bags: offers?.map((offer) => bagsOf(offer.bagOfferId)),
      };
    });

const asFilled = ({ units, spare, bags }: LineWay) => ({ units, spare, bags });

function expectBest(request: FillRequest): void {
  const answer = fillBags(request, solver);
  expect(inOrder(answer, request)).toEqual(fillByBruteForce(request).map(asFilled));
  expect(answer.certificate.isProvenBest).toBe(true);
}

// Timeouts of their own: each solves hundreds of models, on a machine that may be busy.
test('one line of one bag size is filled as trying everything fills it', { timeout: 60_000 }, () => {
  const lines = someLine({ pledges: 4, offers: 1 }).map((line) => [line]);
  fc.assert(fc.property(someRequest(lines), expectBest), seeded(60));
});

test('one line of several bag sizes is filled as trying everything fills it', { timeout: 60_000 }, () => {
  const lines = someLine({ pledges: 3, offers: 3 }).map((line) => [line]);
  fc.assert(fc.property(someRequest(lines), expectBest), seeded(40));
});

test('two lines under one freight and minimum are filled as trying everything fills them', {
  timeout: 60_000,
}, () => {
  const lines = fc
    .tuple(someLine({ pledges: 3, offers: 1 }), someLine({ pledges: 2, offers: 2 }))
    .map(([a, b]) => [
      { ...a, lineId: 'oats' },
      { ...b, lineId: 'beans' },
    ]);
  fc.assert(fc.property(someRequest(lines), expectBest), seeded(40));
});
