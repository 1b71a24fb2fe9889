import type { KeepingWords } from '../en/keeping.ts';
import { keptTime } from '../kept-time.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

const TIMES = { day: ['día', 'días'], month: ['mes', 'meses'], year: ['año', 'años'] } as const;

export const es: KeepingWords = {
  title: 'Cuánto dura',
  time: (days) => keptTime(days, TIMES),
  keeps: (time, year) => `Donde está dura unos ${time}: cómalo primero en ${year}.`,
  eatNow: (pastDays) =>
    pastDays === 0
      ? 'Cómalo ya, después de mirarlo.'
      : `Pasó su fecha hace unos ${keptTime(pastDays, TIMES)}: cómalo ya, después de mirarlo.`,
  unfit: 'Nadie debe comerlo: lo que halló la última revisión no lo permite.',
  estimate: 'Es una estimación prudente.',
  classUnknown: 'Nadie ha dicho cuánto dura este alimento, así que no se da ningún plazo.',
  atLeast: 'Como mínimo',
  likely: 'Probable',
  atMost: 'Como máximo',
  usedUp: 'Gastado hasta ahora',
  why: 'Por qué',
  packs: {
    'can-oxygen-free': 'Lata cerrada sin oxígeno.',
    'foil-oxygen-free': 'Aluminio sin oxígeno.',
    'glass-oxygen-free': 'Vidrio sin oxígeno.',
    'pet-oxygen-free': 'Botella de plástico sin oxígeno.',
    'closed-with-air': 'Cerrado, con aire dentro.',
    'bare-pail': 'Plástico solo, que deja pasar el oxígeno despacio.',
    'open-sack': 'Abierto, o de una pared que nadie conoce.',
  },
  reasons: {
    pack: 'El envase es lo más débil: el alimento duraría más.',
    food: 'El alimento es lo más débil: el envase permitiría más.',
    moisture: 'Está húmedo: cada uno por ciento por encima de 10 reduce su vida a la mitad.',
    'moisture-unknown': 'Nadie midió su humedad.',
    light: 'Le llega luz, o nadie ha dicho que esté a oscuras.',
    opened: 'Está abierto.',
    'found-soon':
      'Lo que halló la última revisión le da 30 días desde entonces (práctica común, sin fuente).',
    'found-unfit': 'La última revisión halló algo que las personas no comen.',
    'warm-past': 'Estuvo a más de 21 °C (70 °F), y eso gastó su vida más deprisa.',
    'gap-in-readings': 'Algunos días nadie leyó la temperatura; ahí cuenta la vecina más alta.',
    'told-history': 'La temperatura que hubo es la palabra de quien lo guardó.',
    'unknown-history': 'No se sabe dónde estuvo o qué temperatura hubo: se toma como caliente.',
    'unknown-treatment': 'No se sabe qué se le hizo al envasarlo: se toma como nada.',
    'unknown-container': 'No se sabe qué detiene su pared: se toma como abierto.',
    estimate: 'Ninguna cifra publicada lo respalda; es práctica común.',
  },
  helps: 'Qué ayudaría más',
  moveTo: (place) => `Llévelo a: ${place}`,
  ways: {
    repack: 'Envasarlo de nuevo con un absorbedor',
    'repack-in-can': 'Envasarlo en una lata cerrada con un absorbedor',
  },
  stays: 'Dónde estuvo, y la vida que gastó',
  place: 'Lugar',
  days: 'Días',
  used: 'Vida gastada, en días a 21 °C',
  unknownPlace: 'Un lugar que nadie ha nombrado',
  since: (day, degrees, known) => `desde el ${day}, como a ${degrees} ${known}`,
  known: {
    read: '',
    told: '(según se dijo)',
    gap: '(con huecos)',
    unknown: '(supuesto, nadie lo sabe)',
  },
  moveTitle: 'Diga dónde está',
  sinceWhen: 'Desde',
  ofStore: (name) => `${name} (de la despensa común)`,
  wholeLot: (count) => `También ${s(count, 'otro', 'otros')} de este lote`,
  move: 'Está ahí',
  moved: 'Está en el libro.',
};
