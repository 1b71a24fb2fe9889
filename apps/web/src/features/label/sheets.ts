/** Sheets of stickers as the server knows them: how many stand across and down. */
export const SHEETS = {
  'letter-30': { columns: 3, rows: 10 },
  'letter-10': { columns: 2, rows: 5 },
  'a4-21': { columns: 3, rows: 7 },
  'a4-8': { columns: 2, rows: 4 },
} as const;
export type SheetName = keyof typeof SHEETS;
export const SHEET_NAMES = Object.keys(SHEETS) as SheetName[];

export const labelsOn = (sheet: SheetName): number => SHEETS[sheet].columns * SHEETS[sheet].rows;

/** How many sheets so many labels take from this sticker on. */
export const sheetsFor = (labels: number, sheet: SheetName, start: number): number =>
  labels === 0 ? 0 : Math.ceil((labels + start - 1) / labelsOn(sheet));
