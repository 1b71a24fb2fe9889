import type { ScaleWords } from '../en/scale.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
const off = (grams: number): string => `${Math.abs(grams)} g de ${grams > 0 ? 'más' : 'menos'}`;

const high = ({
  degrees,
  isHigh,
  isExact,
}: {
  degrees: string;
  isHigh: boolean;
  isExact: boolean;
}): string => (isExact ? 'justo lo que debe' : `${degrees} de ${isHigh ? 'más' : 'menos'}`);

export const es: ScaleWords = {
  ask: '¿Es exacta la balanza o el termómetro?',
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
  thermometer: {
    says: {
      'never-checked': () => 'Nadie lo ha metido aún en una temperatura conocida.',
      off: (off, day) => `El ${day} marcaba ${high(off)}: no se fíe de él.`,
      'check-is-old': (_off, day, days) =>
        `Probado por última vez el ${day}, ${s(days, 'día', 'días')} antes: métalo otra vez en una temperatura conocida.`,
      true: (off, day) =>
        off.isExact
          ? `El ${day} marcaba ${high(off)}.`
          : `El ${day} marcaba ${high(off)}, dentro de su límite.`,
    },
    none: 'Ningún objeto de la lista es un termómetro. Marque «Es un termómetro» donde lo sea.',
    words: {
      F: 'Métalo en una temperatura que conozca, y anote lo que marca cuando ya no cambie. El hielo picado con un poco de agua, removido, está a 32 °F. El agua hierve a 212 °F junto al mar y a menos grados cuanto más alto vive uno: escriba los de su lugar. Lo que puede errar lo dice su fabricante, o su grupo.',
      C: 'Métalo en una temperatura que conozca, y anote lo que marca cuando ya no cambie. El hielo picado con un poco de agua, removido, está a 0 °C. El agua hierve a 100 °C junto al mar y a menos grados cuanto más alto vive uno: escriba los de su lugar. Lo que puede errar lo dice su fabricante, o su grupo.',
    },
    caution:
      'El agua hirviendo y su vapor queman: aleje a los niños y no ponga la mano en el vapor. Meta en agua un termómetro de cuarto solo si su fabricante dice que puede mojarse; si no, póngalo junto a uno exacto.',
    known: (unit) => `Lo que debe marcar, en °${unit}`,
    shown: (unit) => `Lo que marca el termómetro, en °${unit}`,
    limit: (unit) => `Puede errar, en °${unit}`,
    degreesProblem: 'Escriba grados, como 32 o 0.5.',
    reading: (known, shown, limit) => `debe marcar ${known}, marcaba ${shown}, límite ${limit}`,
  },
};
