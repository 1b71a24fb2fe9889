import { spellCode } from '@sheafbook/units';
import { drawSheaf } from './mark.ts';
import { drawQr } from './qr.ts';
import { drawUnread, isLarge, plain, rule, type Sheet, strong } from './sheet.ts';
import { mark, within } from './structure.ts';
import type { Style } from './style.ts';
import { drawLine, lineHeight, widthOf, wrap } from './text.ts';

/** What stands on every page of a paper besides its content. */
export type Frame = {
  readonly storehouse: string;
  readonly title: string;
  readonly paperNo: number;
  readonly code: string;
  /** Where the code leads: the web page of this paper. */
  readonly address: string;
  readonly language: 'en' | 'es';
  /** "2026-11-20 18:05" on the wall of the storehouse. */
  readonly printedLocally: string;
  readonly asOfEntryNo: number;
  readonly words: FrameWords;
};

type FrameWords = {
  readonly number: (paperNo: number) => string;
  readonly printed: (at: string, entryNo: number) => string;
  readonly language: string;
  readonly page: (page: number, pages: number) => string;
  readonly notes: string;
  /** Says that names in scripts without a font of ours stand in Latin letters. */
  readonly inLatin: string;
};

/** Points of room for the line of the pen and for the footer, which takes two lines in the large version. */
export const footHeight = (sheet: Pick<Sheet, 'scale'>): number =>
  isLarge(sheet) ? 3 * lineHeight(plain(sheet)) + 24 : 2 * lineHeight(plain(sheet)) + 22;
const QR_FIRST = 78;
const QR_NEXT = 60;

/** Draws the head of a page; gives where its body begins. The first page has the title, those after it a line. */
export function drawHead(sheet: Sheet, frame: Frame, about?: readonly string[]): number {
  const { doc, left, width } = sheet;
  rule(sheet, { y: 1.5, left: 0, right: left * 2 + width, points: 3 }); // the weave: two stripes at the page's head
  rule(sheet, { y: 5, left: 0, right: left * 2 + width, points: 0.8 });
  const size = about ? QR_FIRST : QR_NEXT;
  const codeStyle = { ...strong(sheet), points: Math.max(13, sheet.scale * 11) };
  const code = spellCode(frame.code);
  const right = left + width;
  const drawCode = () => mark(doc, () => drawQr(doc, frame.address, { x: right - size, y: 26, size }));
  if (about) within(doc, 'Figure', drawCode, { alt: frame.address });
  else drawCode();
  const codeWidth = widthOf(doc, code, codeStyle);
  const codeX = Math.min(right - codeWidth, right - size / 2 - codeWidth / 2);
  const drawSpelled = () => drawLine(doc, code, { x: codeX, y: 26 + size + 4, style: codeStyle });
  if (about) within(doc, 'P', drawSpelled);
  else drawSpelled();
  const qrBottom = 26 + size + 4 + lineHeight(codeStyle);
  const textWidth = width - Math.max(size, codeWidth) - 20;
  const textBottom = about
    ? drawTitle(sheet, frame, { about, textWidth })
    : drawRunningHead(sheet, frame, textWidth);
  return Math.max(qrBottom, textBottom) + 8;
}

function drawTitle(
  sheet: Sheet,
  frame: Frame,
  { about, textWidth }: { about: readonly string[]; textWidth: number },
): number {
  const { doc, left } = sheet;
  drawUnread(doc, () => drawSheaf(doc, { x: left, y: 24, size: 22 }));
  const house: Style = { face: 'serif', points: Math.max(14, 11 * sheet.scale) };
  const title: Style = { face: 'serif', points: 29 };
  const top = { x: left + 30, y: 26, width: textWidth - 30, style: house };
  let y = within(doc, 'P', () => drawWrapped(sheet, frame.storehouse, top));
  const under = (style: Style) => ({ x: left, y: y + 1, width: textWidth, style });
  y = within(doc, 'H1', () => drawWrapped(sheet, frame.title, under(title)));
  for (const line of [frame.words.number(frame.paperNo), ...about])
    y = within(doc, 'P', () => drawWrapped(sheet, line, under(plain(sheet))));
  return y;
}

function drawRunningHead(sheet: Sheet, frame: Frame, textWidth: number): number {
  const { left } = sheet;
  const y = drawWrapped(sheet, frame.storehouse, { x: left, y: 26, width: textWidth, style: strong(sheet) });
  const words = `${frame.title}, ${frame.words.number(frame.paperNo)}`;
  return drawWrapped(sheet, words, { x: left, y, width: textWidth, style: plain(sheet) });
}

function drawWrapped(
  { doc }: Sheet,
  words: string,
  { x, y, width, style }: { x: number; y: number; width: number; style: Style },
): number {
  const lines = wrap(doc, words, { width, style });
  for (const [at, line] of lines.entries()) drawLine(doc, line, { x, y: y + at * lineHeight(style), style });
  return y + lines.length * lineHeight(style);
}

/** Once all pages are there: the line for a pen, when it was printed, as of which entry, and page n of N. */
export function drawFooters(sheet: Sheet, frame: Frame): void {
  const { doc, left, width } = sheet;
  const { start, count } = doc.bufferedPageRange();
  const style = plain(sheet);
  const right = left + width;
  for (let page = 0; page < count; page += 1) {
    doc.switchToPage(start + page);
    const top = sheet.bottom() + 6;
    drawLine(doc, frame.words.notes, { x: left, y: top, style });
    const penLine = top + lineHeight(style) + 2;
    rule(sheet, { y: penLine, left: left + widthOf(doc, `${frame.words.notes}  `, style), points: 0.6 });
    const printed = frame.words.printed(frame.printedLocally, frame.asOfEntryNo);
    const pages = frame.words.page(page + 1, count);
    const y = penLine + 5;
    const second = isLarge(sheet) ? y + lineHeight(style) : y;
    const language = isLarge(sheet) ? '' : ` · ${frame.words.language}`;
    drawLine(doc, `${printed}${language}`, { x: left, y, style });
    if (isLarge(sheet)) drawLine(doc, frame.words.language, { x: left, y: second, style });
    drawLine(doc, pages, { x: right, y: second, style, align: 'right' });
  }
}
