/** Papers and what a pen wrote on them. */
export const en = {
  paper: 'Paper',
  papersWords: 'Opens as a PDF, with a code that leads back here.',
  size: 'Sheet',
  sizes: { a4: 'A4', letter: 'Letter' },
  language: 'Language',
  languages: { en: 'English', es: 'Español' },
  unitFirst: 'Unit first',
  units: { lb: 'pounds', kg: 'kilograms' },
  large: 'Large print',
  kinds: {
    'buy-sheet': 'Buy sheet',
    'pledge-slip': 'Pledge slip',
    'pledge-slip-blank': 'Empty pledge slip',
    'quote-comparison': 'Quotes compared',
    order: 'Order',
    'landing-sheet': 'Landing sheet',
    'claim-letter': 'Claim letter',
    'split-sheet': 'Split sheet',
    statement: 'Statement',
    'who-owes': 'Who owes',
  } as Record<string, string>,
};

export type PaperWords = typeof en;
