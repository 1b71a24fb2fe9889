import { expect, test } from 'vitest';
import type { BuyLineBody, Fill, OwnPledge, Quote } from './buy-body.ts';
import { limitsOf, lineFactsOf } from './line-facts.ts';

// Job map 4.5: bags of 50 lb at 27.00, 25.50 from 10, 24.00 from 20; freight 95.00, free from 600.00 of goods.
const OFFER = {
  ...{ id: 'bag', buyLineId: 'wheat', bagSize: 50, bagGrams: 22_680, bagLabel: '50 lb' },
  ...{ breakKind: 'all-units', mostBags: null },
  breaks: [
    { fromBags: 1, bagPriceMinorUnits: 2700 },
    { fromBags: 10, bagPriceMinorUnits: 2550 },
    { fromBags: 20, bagPriceMinorUnits: 2400 },
  ],
};
const QUOTE = {
  ...{ id: 'mill', isWithdrawn: false, offers: [OFFER], freightFreeFromMinorUnits: 60_000 },
  freightSteps: [{ fromGrams: 0, minorUnits: 9500 }],
} as unknown as Quote;
const LINE = {
  ...{ id: 'wheat', massUnit: 'lb', stepUnits: 5, quoteId: 'mill' },
  pledged: { isShown: false },
} as unknown as BuyLineBody;
const fillOf = (bags: number, basket: { goodsMinorUnits: number; grams: number }) =>
  ({
    lines: [
      { lineId: 'wheat', commonUnits: 0, bags: [{ bagOfferId: 'bag', bags, goodsMinorUnits: bags * 2550 }] },
    ],
    baskets: [{ quoteId: 'mill', ...basket }],
  }) as unknown as Fill;

test('each jump says what a bag lands at there, and the last one frees the freight', () => {
  const alone = fillOf(18, { goodsMinorUnits: 18 * 2550, grams: 18 * 22_680 });
  // 10 bags: 35.00 each with freight; 20: 28.75; 25 reach 600.00 and pay no freight: 24.00.
  expect(lineFactsOf(LINE, alone, [QUOTE])?.jumps).toEqual([
    { fromBags: 10, isFreeFreight: false, landed: { minorUnits: 3500, grams: 22_680 } },
    { fromBags: 20, isFreeFreight: false, landed: { minorUnits: 2875, grams: 22_680 } },
    { fromBags: 25, isFreeFreight: true, landed: { minorUnits: 2400, grams: 22_680 } },
  ]);
});

test('what else is ordered from the supplier brings free freight nearer and bears its part', () => {
  // Another food for 240.00 of as much mass as ten bags: 15 bags of wheat (382.50) reach the 600.00 together with it.
  const together = fillOf(10, { goodsMinorUnits: 10 * 2550 + 24_000, grams: 20 * 22_680 });
  const jumps = lineFactsOf(LINE, together, [QUOTE])?.jumps ?? [];
  expect(jumps.filter(({ isFreeFreight }) => isFreeFreight).map(({ fromBags }) => fromBags)).toEqual([15]);
  // At ten bags half of the freight is the other food's: (255.00 + 47.50) ÷ 10.
  expect(jumps[0]).toMatchObject({ fromBags: 10, landed: { minorUnits: 3025 } });
});

const AT = { unit: 'lb', currency: 'USD' } as const;

test('a highest price is for one unit; an untouched one goes back as it came', () => {
  const pledge = { ceilingMinorUnits: 655, ceilingPerGrams: 4536 } as OwnPledge;
  expect(
    limitsOf({ ceiling: '0,70', substitute: 'rice' }, { ceiling: '' }, { ...AT, pledge: undefined }),
  ).toEqual({
    limits: { substituteLineId: 'rice', ceilingMinorUnits: 70, ceilingPerGrams: 454 },
    isCeilingWrong: false,
  });
  expect(limitsOf({ ceiling: '0.66', substitute: '' }, { ceiling: '0.66' }, { ...AT, pledge })).toEqual({
    limits: { substituteLineId: null, ceilingMinorUnits: 655, ceilingPerGrams: 4536 },
    isCeilingWrong: false,
  });
  expect(limitsOf({ ceiling: '', substitute: '' }, { ceiling: '0.66' }, { ...AT, pledge })).toEqual({
    limits: { substituteLineId: null },
    isCeilingWrong: false,
  });
  for (const ceiling of ['dear', '-1', '0', '0.705'])
    expect(
      limitsOf({ ceiling, substitute: '' }, { ceiling: '' }, { ...AT, pledge: undefined }).isCeilingWrong,
    ).toBe(true);
});
