import type { PaperWords } from '../en/paper.ts';

export const es: PaperWords = {
  paper: 'Papel',
  papersWords: 'Se abre como PDF, con un código que lleva de vuelta aquí.',
  size: 'Hoja',
  sizes: { a4: 'A4', letter: 'Carta' },
  language: 'Idioma',
  languages: { en: 'English', es: 'Español' },
  unitFirst: 'Unidad primero',
  units: { lb: 'libras', kg: 'kilogramos' },
  large: 'Letra grande',
  kinds: {
    'buy-sheet': 'Hoja de la compra',
    'pledge-slip': 'Hoja de promesa',
    'pledge-slip-blank': 'Hoja de promesa vacía',
    'quote-comparison': 'Ofertas comparadas',
    order: 'Pedido',
    'landing-sheet': 'Hoja de llegada',
    'claim-letter': 'Carta de reclamación',
    'split-sheet': 'Hoja de reparto',
    statement: 'Extracto',
    'who-owes': 'Quién debe',
  },
};
