import type { Document } from './document.ts';
import { mark, unread } from './structure.ts';
import type { Style } from './style.ts';

/** Where drawing stands on the page, in points from its top left. */
export type Sheet = {
  readonly doc: Document;
  /** 1 at the plain size of 11 points; 16/11 in the large version. */
  readonly scale: number;
  /** The same words in the body of one page or the next. */
  readonly left: number;
  readonly width: number;
  readonly bottom: () => number;
  readonly nextPage: () => void;
  y: number;
};

export const PLAIN_POINTS = 11;
export const LARGE_POINTS = 16;

export const plain = ({ scale }: Pick<Sheet, 'scale'>): Style => ({
  face: 'sans',
  points: PLAIN_POINTS * scale,
});
export const strong = ({ scale }: Pick<Sheet, 'scale'>): Style => ({
  face: 'sans-bold',
  points: PLAIN_POINTS * scale,
});

export const isLarge = ({ scale }: Pick<Sheet, 'scale'>): boolean => scale > 1;

/** Goes on to the next page unless so many points are left on this one. */
export function ensureRoom(sheet: Sheet, points: number): void {
  if (sheet.y + points > sheet.bottom()) sheet.nextPage();
}

/** A line is drawn in solid black: a grey one is dots on an office printer. */
export function rule(
  sheet: Sheet,
  line: { y: number; left?: number; right?: number; points?: number },
): void {
  const { y, left = sheet.left, right = sheet.left + sheet.width, points = 0.4 } = line;
  drawUnread(sheet.doc, () => sheet.doc.lineWidth(points).moveTo(left, y).lineTo(right, y).stroke('black'));
}

/** Lines and boxes say nothing to a listener. */
export const drawUnread = (doc: Sheet['doc'], draw: () => unknown): void =>
  unread(doc, () => mark(doc, () => void draw()));
