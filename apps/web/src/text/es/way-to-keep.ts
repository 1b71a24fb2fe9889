import type { WaysWords } from '../en/way-to-keep.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

const DAYS_A_YEAR = 365.25;
const DAYS_A_MONTH = 30.4375;
const time = (days: number): string =>
  days >= 2 * DAYS_A_YEAR
    ? s(Math.round(days / DAYS_A_YEAR), 'año', 'años')
    : s(Math.round(days / DAYS_A_MONTH), 'mes', 'meses');

export const es: WaysWords = {
  title: 'Maneras de conservarlo',
  toShelf: 'Estante',
  opening: 'Diga un alimento y cuánto: aquí está en qué se puede guardar, cuánto dura y cuánto cuesta.',
  yours: 'Lo suyo, en sacos',
  ofYours: (food, mass) => `${food}, ${mass}`,
  food: (name) => `Alimento: ${name}`,
  otherFood: 'Otro alimento',
  mass: 'Cuánto',
  massProblem: 'Escriba un peso, como 120 lb o 50 kg.',
  moisture: 'Humedad en por ciento, si se midió',
  moistureHint: 'Déjelo vacío si nadie la ha medido.',
  moistureProblem: 'Escriba un por ciento, como 9,5, o nada.',
  ask: 'Elija un alimento y escriba cuánto.',
  cheapest: 'Lo más barato por año de conservación',
  first: 'Lo que más dura; no se sabe su precio',
  others: (count) => `${s(count, 'manera más', 'maneras más')} que se pueden usar`,
  modest: 'Algo modesto y seguro es mejor que nada.',
  way: (kind, treatment) => `${kind}, ${treatment.toLowerCase()}`,
  counts: (containers, each, last) =>
    containers === 1
      ? `1 envase con ${last}.`
      : `${containers} envases, ${each} en cada uno, ${last} en el último.`,
  packets: (list) => `Absorbedores: ${list}.`,
  packet: (count, size) => `${count} × ${size} ml`,
  dryIce: (mass) => `Hielo seco: ${mass}, y algo más por lo que se hace gas en el camino.`,
  needs: (what) => `Hace falta: ${what}.`,
  keeps: (low, likely, high) =>
    time(low) === time(high)
      ? `Estimación: dura unos ${time(likely)} a 21 °C (70 °F), en la oscuridad.`
      : `Estimación: dura unos ${time(likely)} a 21 °C (70 °F), en la oscuridad; entre ${time(low)} y ${time(high)}.`,
  lifeUnknown: 'Nadie ha dicho cómo se conserva este alimento.',
  costs: (cost, perYear) =>
    perYear === null
      ? `Cuesta ${cost} en total.`
      : `Cuesta ${cost} en total, ${perYear} por año de conservación.`,
  costUnknown: 'No se sabe cuánto cuesta: falta un precio.',
  keepDark: 'Deja pasar la luz: guárdelo en la oscuridad.',
  wantsOuter: 'Quiere una caja o un balde alrededor.',
  cautions: 'Precauciones',
  deferTo: (who) => `Primero está la palabra de: ${who}.`,
  refused: (count) => `${s(count, 'combinación', 'combinaciones')} que no se deben usar, y por qué`,
  nearest: (treatment) => `Lo que sí sirve en este envase: ${treatment.toLowerCase()}.`,
  noBulk: 'Nadie sabe cuánto pesa este alimento a granel, así que no se pueden contar los envases.',
};
