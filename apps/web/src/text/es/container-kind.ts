import type { KindWords } from '../en/container-kind.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export const es: KindWords = {
  title: 'Tipos de envase',
  toFoods: 'Alimentos',
  stands: (count, unpriced) =>
    `${s(count, 'tipo', 'tipos')} de envase; ${unpriced === 0 ? 'cada uno tiene su precio' : `${unpriced} sin precio`}.`,
  holdsWords:
    'Lo que cabe en un envase se mide o se calcula lleno al ras, y su nombre puede decir menos o más. No cambia nunca, porque con ello se llenaron envases.',
  kind: 'Tipo',
  holds: 'Cabe, en litros',
  tare: 'Pesa vacío, en gramos',
  price: (currency) => `Cuesta, ${currency}`,
  source: 'Quién lo dice',
  unknown: 'no se sabe',
  own: (source) => `${source} (propio del grupo)`,
  change: (name) => `Tara y precio de ${name}`,
  changeIt: 'Fijar tara y precio',
  which: '¿Qué tipo?',
  add: 'Añadir un tipo propio',
  nameEn: 'Nombre en inglés',
  nameEs: 'Nombre en español, si es otro',
  code: 'Código, para etiquetas',
  codeHint: 'Minúsculas, cifras y guiones, como jar-pint.',
  sourceHint: 'Por ejemplo: lleno al ras de agua y pesado.',
  addIt: 'Añadir este tipo',
  litresProblem: 'Escriba cuánto cabe en litros, como 3,1.',
  gramsProblem: 'Escriba gramos enteros, o nada.',
  moneyProblem: 'Escriba una cantidad de dinero, como 1,25, o nada.',
  nameProblem: 'Escriba un nombre, como tarro de pinta.',
  codeProblem: 'Escriba un código, como jar-pint.',
  sourceProblem: 'Diga de dónde sale la capacidad.',
};
