import type { Fraction } from '@sheafbook/units';
import type { EaterFacts } from './eater.ts';

export type EnergyBasis = 'typed' | 'equation' | 'table' | 'unknown-under-2';

export type DailyKilocalories = {
  readonly kilocalories: Fraction;
  readonly basis: EnergyBasis;
  readonly note: string;
  readonly source: string;
};

export function dailyKilocalories(eater: EaterFacts, today: string): DailyKilocalories {
  throw new Error(`not written yet for ${eater.eaterId} on ${today}`);
}
