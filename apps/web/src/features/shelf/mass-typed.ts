import { parseMass } from '@sheafbook/units';

/** The grams of a typed weight above zero; undefined for what is none. */
export function gramsTyped(text: string, unit: 'lb' | 'kg'): number | undefined {
  const mass = parseMass(text, { defaultUnit: unit });
  return 'problem' in mass ? undefined : mass.grams;
}

/**
 * The grams of what stands on a scale: a bare figure is kilograms, unless so much can't be there, as whoever reads 2560 off a
 * scale means grams.
 */
export function gramsOnScale(text: string, mostGrams: number): number | undefined {
  const asKilograms = gramsTyped(text, 'kg');
  const isBare = /^[\s\d.,]+$/.test(text);
  if (!isBare || (asKilograms ?? 0) <= mostGrams) return asKilograms;
  return gramsTyped(`${text} g`, 'kg');
}
