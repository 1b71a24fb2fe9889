import type { WishWords } from '../en/container-wish.ts';

export const es: WishWords = {
  title: (food) => `${food}: en qué se envasa lo suyo`,
  stands: (food, mass, basis) => `Su parte de ${food} es de ${mass}, ${basis}.`,
  bases: {
    awarded: 'tal como se adjudicó',
    allotted: 'como la promete la compra fijada',
    pledged: 'como usted la pidió',
  },
  none: (food) => `Aún no tiene parte de ${food}. El deseo ya puede quedar anotado.`,
  wishes: 'Sus deseos, uno tras otro',
  wishesWords: 'Escriba cuánto va en cada tipo. La última línea toma el resto si se deja vacía.',
  kind: (at) => `Tipo ${at}`,
  mass: (at) => `Cuánto, línea ${at}`,
  rest: 'Vacío: todo el resto.',
  massProblem: 'Escriba un peso, como 120 lb o 50 kg. Solo la última línea puede quedar vacía.',
  add: 'Un tipo más',
  drop: (at) => `Quitar la línea ${at}`,
  keep: 'Guardar estos deseos',
  comesTo: 'En qué queda',
  columns: { kind: 'Tipo', count: 'Envases', each: 'En cada uno', together: 'En total', cost: 'Cuestan' },
  costUnknown: 'no se sabe',
  remainder: (mass) =>
    `${mass} no llenan ningún envase entero. Se quedan en su saco, salvo que un último tipo tome el resto.`,
  noRemainder: 'No sobra nada.',
  level: 'Contados llenos al ras, sin sacudir.',
  noBulk: 'Nadie sabe cuánto pesa a granel este alimento, así que no se pueden contar envases.',
  noWishes: 'Aún no hay deseos, así que todo se queda en sus sacos.',
};
