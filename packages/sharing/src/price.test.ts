import fc from 'fast-check';
import { expect, test } from 'vitest';
import { anOffer } from './fill-builders.ts';
import { goodsMinorUnits } from './price.ts';

const breaks = [
  { fromBags: 1, bagPriceMinorUnits: 2700 },
  { fromBags: 10, bagPriceMinorUnits: 2550 },
  { fromBags: 20, bagPriceMinorUnits: 2400 },
];

// All units: the price reached holds for every bag, so 20 bags at 24.00 (480.00) cost less than 19 at 25.50
// (484.50).
test.for([
  { bags: 0, goods: 0 },
  { bags: 1, goods: 2700 },
  { bags: 9, goods: 24_300 },
  { bags: 10, goods: 25_500 },
  { bags: 19, goods: 48_450 },
  { bags: 20, goods: 48_000 },
  { bags: 25, goods: 60_000 },
])('$bags bags with breaks on all units cost $goods', ({ bags, goods }) => {
  expect(goodsMinorUnits(anOffer({ breaks }), bags)).toBe(goods);
});

// Incremental: each bag costs the price of the step that it falls in. The first nine bags at 27.00 are
// 243.00, the next ten at 25.50 are 255.00, all further ones 24.00 each:
// 10 bags 243.00 + 25.50 = 268.50; 19 bags 243.00 + 255.00 = 498.00; 25 bags 498.00 + 6 × 24.00 = 642.00.
test.for([
  { bags: 9, goods: 24_300 },
  { bags: 10, goods: 26_850 },
  { bags: 19, goods: 49_800 },
  { bags: 20, goods: 52_200 },
  { bags: 25, goods: 64_200 },
])('$bags bags with incremental breaks cost $goods', ({ bags, goods }) => {
  expect(goodsMinorUnits(anOffer({ breakKind: 'incremental', breaks }), bags)).toBe(goods);
});

test('one more bag with incremental breaks costs exactly the price of its step', () => {
  const offer = anOffer({ breakKind: 'incremental', breaks });
  const property = fc.property(fc.nat({ max: 60 }), (bags) => {
    const step = breaks.findLast((priceBreak) => priceBreak.fromBags <= bags + 1);
    const more = goodsMinorUnits(offer, bags + 1) - goodsMinorUnits(offer, bags);
    expect(more).toBe(step?.bagPriceMinorUnits);
  });
  fc.assert(property, { seed: 20_260_731 });
});

test.for([
  { given: { breaks: [] }, bags: 1, message: /hold from 1 bag on/ },
  { given: { breaks: [{ fromBags: 2, bagPriceMinorUnits: 1 }] }, bags: 1, message: /hold from 1 bag on/ },
  { given: { breaks: breaks.toReversed() }, bags: 1, message: /hold from 1 bag on/ },
  {
    given: { breaks: [...breaks, { fromBags: 15, bagPriceMinorUnits: 2000 }] },
    bags: 1,
    message: /must ascend by bags/,
  },
  { given: { breaks: [{ fromBags: 1, bagPriceMinorUnits: -1 }] }, bags: 1, message: /bagPriceMinorUnits/ },
  { given: { bagGrams: 0 }, bags: 1, message: /at least one gram/ },
  { given: {}, bags: -1, message: /bags must be a whole number/ },
  { given: {}, bags: 1.5, message: /bags must be a whole number/ },
  { given: {}, bags: Number.MAX_SAFE_INTEGER, message: /goodsMinorUnits must be a whole number/ },
])('a price list or count that makes no sense is stopped: $message', ({ given, bags, message }) => {
  expect(() => goodsMinorUnits(anOffer(given), bags)).toThrow(message);
});
