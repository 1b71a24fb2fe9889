import { priceOfGrams, type UnitPrice } from '@sheafbook/sharing';

/** A lot's common stock: what it stands at and its grams, now and in all that ever came into it. */
export type LotValue = {
  readonly minorUnits: number;
  readonly grams: number;
  readonly cameMinorUnits: number;
  readonly cameGrams: number;
};

/**
 * The lot's unit landed cost as the book has it: what its common stock stands at by its grams, so that grams times cost
 * stay the balance of 1400 (job map 3.2, question 10). Of stock that is all gone, what came in by the grams that came;
 * null for stock that never cost anything.
 */
function unitLandedOf(lot: LotValue): UnitPrice | null {
  if (lot.grams > 0) return { minorUnits: lot.minorUnits, grams: lot.grams };
  return lot.cameGrams > 0 ? { minorUnits: lot.cameMinorUnits, grams: lot.cameGrams } : null;
}

/** What a difference is worth at the lot's unit landed cost, half a minor unit going up; below zero when missing. */
export function worthOf(lot: LotValue, differenceGrams: number): number {
  const price = unitLandedOf(lot);
  if (price === null || differenceGrams === 0) return 0;
  const worth = priceOfGrams(price, Math.abs(differenceGrams));
  return differenceGrams < 0 ? -worth : worth;
}
