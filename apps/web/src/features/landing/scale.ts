import { divideFractions, formatDecimal, fraction, GRAMS_PER_UNIT, type Locale } from '@sheafbook/units';

export type ScaleUnit = 'lb' | 'kg';

/** Where things stand on the bar under a reading. Units: parts of the bar's width, 0 to 1. */
export type ScaleBar = {
  readonly weighed: number;
  readonly declared: number;
  readonly shortFrom: number | null;
  readonly ticks: readonly { readonly at: number; readonly label: string | null }[];
};

const STEPS = [1, 2, 5, 10, 20, 25, 50, 100, 200, 500, 1000];

/** A bar that holds the larger of both masses, ending on a tick; every second tick has its number. */
export function scaleBar(bag: { declaredGrams: number; weighedGrams: number; unit: ScaleUnit }): ScaleBar {
  const gramsEach = bag.unit === 'kg' ? 1000 : 453.59237;
  const most = Math.max(bag.declaredGrams, bag.weighedGrams, 1) / gramsEach;
  const step = STEPS.find((width) => most / width <= 5) ?? Math.ceil(most / 5);
  const steps = Math.max(1, Math.ceil(most / step));
  const share = (grams: number) => grams / gramsEach / (step * steps);
  return {
    weighed: share(Math.max(0, bag.weighedGrams)),
    declared: share(bag.declaredGrams),
    shortFrom: bag.weighedGrams < bag.declaredGrams ? share(Math.max(0, bag.weighedGrams)) : null,
    ticks: Array.from({ length: steps + 1 }, (_, at) => ({
      at: at / steps,
      label: at % 2 === 0 ? String(at * step) : null,
    })),
  };
}

/** A mass as a scale shows it: kilograms to the gram, pounds to a hundredth. */
export function scaleText(grams: number, unit: ScaleUnit, locale: Locale): string {
  return formatDecimal(divideFractions(fraction(grams), GRAMS_PER_UNIT[unit]), unit === 'kg' ? 3 : 2, locale);
}

/** One key of the pad after another, as the number grows on a scale: one point, and no zeros in front. */
export function press(text: string, key: string): string {
  if (key === 'rub') return text.slice(0, -1);
  if (key === '.') return /[.,]/.test(text) ? text : `${text === '' ? '0' : text}.`;
  if (text.length >= 8) return text;
  return text === '0' ? key : text + key;
}
