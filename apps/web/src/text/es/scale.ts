import type { ScaleWords } from '../en/scale.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
const off = (grams: number): string => `${Math.abs(grams)} g de ${grams > 0 ? 'más' : 'menos'}`;

export const es: ScaleWords = {
  ask: '¿Es exacta la balanza?',
  checked: '¿Está probada la balanza?',
  title: '¿Es exacta?',
  name: (item, unitNo) => `${item} ${unitNo}`,
  verdicts: {
    'never-checked': 'Sin probar',
    off: 'Yerra',
    'check-is-old': 'Probada hace demasiado',
    true: 'Exacta',
  },
  says: {
    'never-checked': () => 'Nadie le ha puesto aún una pesa conocida.',
    off: (grams, day) => `El ${day} marcaba ${off(grams)}: no pese en ella.`,
    'check-is-old': (_grams, day, days) =>
      `Probada por última vez el ${day}, ${s(days, 'día', 'días')} antes: póngale otra vez una pesa conocida.`,
    true: (grams, day) =>
      grams === 0
        ? `El ${day} marcaba la pesa al gramo.`
        : `El ${day} marcaba ${off(grams)}, dentro de su límite.`,
  },
  none: 'Ningún objeto de la lista es una balanza. Marque «Se pesa algo en ella» donde lo sea.',
  toCheck: 'Probarla',
  noneBooked: 'No hay balanza reservada para esta jornada. Pruebe con una pesa conocida la que esté allí.',
  noneGood:
    'Ninguna balanza del grupo tiene una buena prueba de los últimos 30 días. Ponga una pesa conocida en una antes de pesar nada.',
  toEquipment: 'Ver las balanzas',
  forDay: 'Balanzas de la jornada',
  words:
    'Ponga una pesa cuyos gramos conozca, y anote lo que marca. Lo que puede errar lo dice su fabricante, o su grupo.',
  laid: 'Pesa puesta, en gramos',
  shown: 'Lo que marca la balanza, en gramos',
  limit: 'Puede errar, en gramos',
  day: 'Día',
  gramsProblem: 'Escriba gramos enteros, como 10000.',
  save: 'Anotar la prueba',
  saved: 'Está anotado.',
  checks: 'Sus pruebas',
  noChecks: 'Aún no hay ninguna anotada.',
  check: (day, who, unitNo) => `${day}, n.º ${unitNo}, por ${who}`,
  reading: (laid, shown, limit) => `${laid} g puestos, ${shown} g marcados, límite ${limit} g`,
};
