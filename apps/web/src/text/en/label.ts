const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** Labels for one's own containers. */
export const en = {
  title: 'Labels',
  toShelf: 'Shelf',
  empty: 'No container of yours holds anything yet.',
  which: 'Which containers get a label?',
  all: (count: number) => `All ${count}`,
  none: 'None',
  one: (food: string, kind: string, mass: string, code: string) => `${food}, ${kind}, ${mass}, ${code}`,
  sheet: 'Sheet of stickers',
  sheets: {
    'letter-30': 'Letter, 30 of 2 5/8 × 1 in',
    'letter-10': 'Letter, 10 of 4 × 2 in',
    'a4-21': 'A4, 21 of 63.5 × 38.1 mm',
    'a4-8': 'A4, 8 of 99.1 × 67.7 mm',
  },
  start: (number: number) => `Begin at sticker ${number}`,
  sticker: (number: number) => `Sticker ${number}`,
  comesTo: (labels: number, sheets: number) =>
    labels === 0
      ? 'Tick the containers first.'
      : `${s(labels, 'label', 'labels')} on ${s(sheets, 'sheet', 'sheets')}.`,
  tooMany: (most: number) => `At most ${most} labels at a time.`,
  print: 'Open the labels to print',
  scaleWords: 'Print at 100 %, not fitted to the page, and try on plain paper first.',
};

export type LabelWords = typeof en;
