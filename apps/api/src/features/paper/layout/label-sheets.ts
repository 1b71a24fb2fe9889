/** A sheet of stickers: where its labels stand. Units: millimetres. */
export type LabelSheet = {
  readonly page: readonly [width: number, height: number];
  readonly columns: number;
  readonly rows: number;
  readonly label: readonly [width: number, height: number];
  readonly corner: readonly [left: number, top: number];
  readonly pitch: readonly [across: number, down: number];
};

const A4 = [210, 297] as const;
const LETTER = [215.9, 279.4] as const;

/** Sheets that office shops have, by the number of labels on one. Source: common practice, no source; measured as sold. */
export const LABEL_SHEETS = {
  'letter-30': {
    page: LETTER,
    columns: 3,
    rows: 10,
    label: [66.675, 25.4],
    corner: [4.7625, 12.7],
    pitch: [69.85, 25.4],
  },
  'letter-10': {
    page: LETTER,
    columns: 2,
    rows: 5,
    label: [101.6, 50.8],
    corner: [3.96875, 12.7],
    pitch: [106.3625, 50.8],
  },
  'a4-21': { page: A4, columns: 3, rows: 7, label: [63.5, 38.1], corner: [7.25, 15.15], pitch: [66, 38.1] },
  'a4-8': { page: A4, columns: 2, rows: 4, label: [99.1, 67.7], corner: [4.65, 13.1], pitch: [101.6, 67.7] },
} as const satisfies Record<string, LabelSheet>;

export const LABEL_SHEET_NAMES = ['letter-30', 'letter-10', 'a4-21', 'a4-8'] as const;
export type LabelSheetName = (typeof LABEL_SHEET_NAMES)[number];

export const labelsOnSheet = ({ columns, rows }: LabelSheet): number => columns * rows;
