import type { en } from '../en/eat-first.ts';
import { keptTime } from '../kept-time.ts';

export const days = (count: number): string =>
  keptTime(count, { day: ['día', 'días'], month: ['mes', 'meses'], year: ['año', 'años'] });

export const es: typeof en = {
  eatFirst: 'Coma primero',
  ofKitchen: (food) => `${food}, en la cocina`,
  atRisk: (mass) => `A su ritmo, ${mass} pasarían de su fecha antes de comerlos.`,
  keeps: (left, past) => {
    if (left > 0) return `se conserva unos ${days(left)}`;
    return past > 0
      ? `pasó su fecha hace unos ${days(past)}: primero mire y huela`
      : 'hoy es su fecha: primero mire y huela';
  },
  unfit: 'no se come: una revisión lo halló no apto',
  seeAll: 'Qué comer después',
};
