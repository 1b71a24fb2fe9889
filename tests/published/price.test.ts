import { breakWeight, freightMinorUnits, goodsMinorUnits, rateFreight } from '@sheafbook/sharing';
import { floorFraction, fraction, fractionToNumber, multiplyFractions } from '@sheafbook/units';
import { describe, expect, test } from 'vitest';

// A textbook exercise on all-units discounts as reprinted, with its solution, at nursingexpertshelp.com
// ("find the least-cost order quantities when there are quantity discounts"): 800 units a year, 60 an order,
// holding 30 % of the price a year; 53 below 50 units, 51.50 from 50, 49.50 from 100, 48 from 200, 47 from
// 500. The published totals for 100, 200 and 500 units are 40,822.50, 40,080.00 and 41,221.00, and 200 is the
// answer.
describe('a published example of all-units discounts', () => {
  const offer = {
    bagOfferId: 'unit',
    bagSize: 1,
    bagGrams: 1,
    breakKind: 'all-units' as const,
    mostBags: null,
    breaks: [
      { fromBags: 1, bagPriceMinorUnits: 5300 },
      { fromBags: 50, bagPriceMinorUnits: 5150 },
      { fromBags: 100, bagPriceMinorUnits: 4950 },
      { fromBags: 200, bagPriceMinorUnits: 4800 },
      { fromBags: 500, bagPriceMinorUnits: 4700 },
    ],
  };
  const yearly = { units: 800, orderMinorUnits: 6000, holdingPercent: 30 };

  /** Goods of a year, orders of a year, and half an order held all year; all in minor units. */
  const yearlyCost = (quantity: number, goods = goodsMinorUnits(offer, Math.floor(quantity))): number => {
    const price = goods / Math.floor(quantity);
    const orders = (yearly.units / quantity) * yearly.orderMinorUnits;
    const holding = (quantity / 2) * price * (yearly.holdingPercent / 100);
    return yearly.units * price + orders + holding;
  };

  test.for([
    { quantity: 100, total: 4_082_250 },
    { quantity: 200, total: 4_008_000 },
    { quantity: 500, total: 4_122_100 },
  ])('ordering $quantity costs $total in a year', ({ quantity, total }) => {
    expect(yearlyCost(quantity)).toBeCloseTo(total, 6);
  });
  // The economic quantity at 51.50 is the root of 2 × 800 × 60 / (0.30 × 51.50) = 78.826, the only one that
  // falls into its own step; 42,417.87 a year (recomputed; the page rounds the quantity to 79 and prints
  // 42,417.9).
  test('the economic quantity of 78.826 costs 42,417.87 in a year', () => {
    const quantity = Math.sqrt((2 * 800 * 60) / (0.3 * 51.5));
    expect(quantity).toBeCloseTo(78.826, 3);
    expect(yearlyCost(quantity) / 100).toBeCloseTo(42_417.87, 2);
  });
  test('no quantity costs less than 200', () => {
    const costs = Array.from({ length: 800 }, (_, i) => yearlyCost(i + 1));
    expect(costs.indexOf(Math.min(...costs)) + 1).toBe(200);
  });
});

// help.insiteship.com, "Calculate Rated LTL Shipment": 1–499 lb at 14.38 and 500–999 lb at 10.29 for 100 lb.
// 450 lb come to 64.71, 500 lb to 51.45, and from 357.78 lb up (the page cuts 357.7886… off) rating 500 lb is
// cheaper.
describe('a published example of freight by weight', () => {
  const rates = [
    { fromMass: 0, minorUnits: 1438, perMass: 100 },
    { fromMass: 500, minorUnits: 1029, perMass: 100 },
  ];
  test('450 lb at their own rate come to 64.71, rated as 500 lb to 51.45', () => {
    expect(rateFreight(rates.slice(0, 1), 450)).toEqual({ minorUnits: 6471, ratedMass: 450 });
    expect(rateFreight(rates, 450)).toEqual({ minorUnits: 5145, ratedMass: 500 });
  });
  test('the break weight is 357.78 lb', () => {
    const hundredths = floorFraction(multiplyFractions(breakWeight(rates, 0), fraction(100)));
    expect(hundredths).toBe(35_778n);
    expect(fractionToNumber(breakWeight(rates, 0))).toBeCloseTo(357.7886, 4);
  });
  test.for([
    { mass: 357, minorUnits: 5134, ratedMass: 357 },
    { mass: 358, minorUnits: 5145, ratedMass: 500 },
    { mass: 500, minorUnits: 5145, ratedMass: 500 },
    { mass: 999, minorUnits: 10_280, ratedMass: 999 },
    { mass: 0, minorUnits: 0, ratedMass: 0 },
  ])('$mass lb are rated as $ratedMass lb', ({ mass, minorUnits, ratedMass }) => {
    expect(rateFreight(rates, mass)).toEqual({ minorUnits, ratedMass });
  });
  // The same tariff as steps of a delivery of 500 lb upwards would be: 51.45 from 357.7886… lb on until 500
  // lb.
  test('as a freight step the 500 lb price holds from the break weight on', () => {
    const poundGrams = 453.592_37;
    const steps = [
      { fromGrams: 0, minorUnits: 5134 },
      { fromGrams: Math.ceil(fractionToNumber(breakWeight(rates, 0)) * poundGrams), minorUnits: 5145 },
    ];
    const freightOf = (pounds: number) =>
      freightMinorUnits({ steps, freeFromGoodsMinorUnits: null }, 1, Math.round(pounds * poundGrams));
    expect([freightOf(357), freightOf(358), freightOf(500)]).toEqual([5134, 5145, 5145]);
  });
  test('tariffs that make no sense are stopped', () => {
    expect(() => rateFreight([], 1)).toThrow(/first rate must begin at 0/);
    expect(() => rateFreight(rates.toReversed(), 1)).toThrow(/first rate must begin at 0/);
    expect(() => rateFreight(rates, 1.5)).toThrow(/mass must be a whole number/);
    expect(() => rateFreight([{ fromMass: 0, minorUnits: 1, perMass: 0 }], 1)).toThrow(
      /at least one unit of mass/,
    );
    expect(() => breakWeight(rates, 1)).toThrow(/between two steps/);
    expect(() => breakWeight([{ fromMass: 0, minorUnits: 0, perMass: 1 }, ...rates.slice(1)], 0)).toThrow(
      /above 0/,
    );
  });
});
