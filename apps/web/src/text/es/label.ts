import type { LabelWords } from '../en/label.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export const es: LabelWords = {
  title: 'Etiquetas',
  toShelf: 'Estante',
  empty: 'Ningún envase suyo tiene algo dentro todavía.',
  which: '¿Qué envases llevan etiqueta?',
  all: (count) => `Los ${count}`,
  none: 'Ninguno',
  one: (food, kind, mass, code) => `${food}, ${kind}, ${mass}, ${code}`,
  sheet: 'Hoja de etiquetas',
  sheets: {
    'letter-30': 'Carta, 30 de 66,7 × 25,4 mm',
    'letter-10': 'Carta, 10 de 101,6 × 50,8 mm',
    'a4-21': 'A4, 21 de 63,5 × 38,1 mm',
    'a4-8': 'A4, 8 de 99,1 × 67,7 mm',
  },
  start: (number) => `Empezar en la etiqueta ${number}`,
  sticker: (number) => `Etiqueta ${number}`,
  comesTo: (labels, sheets) =>
    labels === 0
      ? 'Marque primero los envases.'
      : `${s(labels, 'etiqueta', 'etiquetas')} en ${s(sheets, 'hoja', 'hojas')}.`,
  tooMany: (most) => `Como máximo ${most} etiquetas de una vez.`,
  print: 'Abrir las etiquetas para imprimir',
  scaleWords: 'Imprima al 100 %, sin ajustar a la página, y pruebe antes en papel común.',
};
