import type { BuyWish } from '../../support/buy.ts';

const DAY = 86_400_000;

/** The job map's grain buy on the days of a real browser, which knows no other clock than the true one. */
export function grainNow(): BuyWish {
  const now = Date.now();
  const dayIn = (days: number) => new Date(now + days * DAY).toISOString().slice(0, 10);
  return {
    name: 'Autumn grain',
    gatheringClosesAt: new Date(now + 12 * DAY).toISOString(),
    orderOn: dayIn(14),
    quote: {
      validUntil: dayIn(60),
      offers: [
        { foodCode: 'wheat-hard-red-winter', bagSize: 50, bagPriceMinorUnits: 3600 },
        { foodCode: 'oats-rolled', bagSize: 50, bagPriceMinorUnits: 3750 },
        { foodCode: 'beans-black', bagSize: 25, bagPriceMinorUnits: 2140 },
      ],
      freightSteps: [{ fromGrams: 0, minorUnits: 8800 }],
    },
  };
}
