import { parseMass } from '@sheafbook/units';

/** The grams of a typed weight above zero; undefined for what is none. */
export function gramsTyped(text: string, unit: 'lb' | 'kg'): number | undefined {
  const mass = parseMass(text, { defaultUnit: unit });
  return 'problem' in mass ? undefined : mass.grams;
}
