import type { en } from '../en/eat-first.ts';
import { keptTime } from '../kept-time.ts';

export const days = (count: number): string =>
  keptTime(count, { day: ['día', 'días'], month: ['mes', 'meses'], year: ['año', 'años'] });

export const es: typeof en = {
  eatFirst: 'Coma primero',
  ofKitchen: (food) => `${food}, en la cocina`,
  atRisk: (mass) => `A su ritmo, ${mass} pasarían de su fecha antes de comerlos.`,
  keeps: (count) => (count === 0 ? 'pasó su fecha: primero mire y huela' : `se conserva unos ${days(count)}`),
  seeAll: 'Qué comer después',
};
