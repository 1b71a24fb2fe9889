import { splitByWeight } from '@sheafbook/sharing';

/** What a difference is worth: its part, by weight, of what the lot's common stock stands at; below zero when missing. */
export function worthOf(lot: { minorUnits: number; grams: number }, differenceGrams: number): number {
  if (differenceGrams === 0 || lot.grams <= 0 || lot.minorUnits <= 0) return 0;
  const missing = Math.min(lot.grams, Math.abs(differenceGrams));
  const [part = 0] = splitByWeight(lot.minorUnits, [missing, lot.grams - missing]);
  return differenceGrams < 0 ? -part : part;
}
