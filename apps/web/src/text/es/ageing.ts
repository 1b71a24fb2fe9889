import type { AgeingWords } from '../en/ageing.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** Las palabras de quién debe y desde cuándo. */
export const es: AgeingWords = {
  ageing: 'Quién debe',
  title: (count: number, total: string, currency: string) =>
    `${s(count, 'hogar debe', 'hogares deben')} ${total} ${currency}${count === 1 ? '' : ' en total'}.`,
  nobody: 'Nadie debe nada.',
  oldest: (name: string, day: string) => `Lo más antiguo es de ${name}, desde el ${day}.`,
  how: 'Lo que paga un hogar salda primero sus cargos más antiguos. Un cargo vence el día en que se anota.',
  seen: 'Cada hogar de esta lista ve que usted la leyó.',
  search: 'Buscar un hogar',
  noneFound: 'No se encuentra ningún hogar así.',
  household: 'Hogar',
  owes: 'Debe',
  since: 'Desde',
  days0: '0–30 días',
  days31: '31–60',
  days61: '61–90',
  days90: 'más de 90',
  together: 'En total',
  late: (days: number) => s(days, 'día', 'días'),
  credit: 'A quién se debe',
  creditWords: (total: string, currency: string) => `Los hogares tienen ${total} ${currency} a su favor.`,
  isOwed: 'Se le debe',
  reference: 'Palabra para la transferencia',
  references: 'Palabras para transferencias',
  referencesWords:
    'Una transferencia con la palabra de su hogar se reconoce entre los movimientos del banco.',
  left: 'se ha ido',
  asCsv: 'En CSV',
};
