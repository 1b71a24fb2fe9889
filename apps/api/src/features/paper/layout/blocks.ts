import type { Block, Fact } from '../content.ts';
import { drawUnread, ensureRoom, isLarge, plain, rule, type Sheet, strong } from './sheet.ts';
import { within } from './structure.ts';
import type { Style } from './style.ts';
import { drawTable } from './table.ts';
import { drawLine, lineHeight, widthOf, wrap } from './text.ts';

/** Points above a heading and beneath a block, at the plain size. */
const GAP = 10;
const SHORT_LINES = 4;

export function drawBlocks(sheet: Sheet, blocks: readonly Block[]): void {
  for (const block of blocks) drawBlock(sheet, block);
}

function drawBlock(sheet: Sheet, block: Block): void {
  switch (block.kind) {
    case 'heading':
      drawHeading(sheet, block.text);
      break;
    case 'text':
      within(sheet.doc, 'P', () => drawText(sheet, block.text, plain(sheet)));
      break;
    case 'lead':
      within(sheet.doc, 'P', () => drawLead(sheet, block));
      break;
    case 'facts':
      within(sheet.doc, 'L', () => drawFacts(sheet, block.rows));
      break;
    case 'table':
      drawTable(sheet, block);
      break;
    case 'signatures':
      drawSignatures(sheet, block.boxes);
      break;
    case 'slip':
      within(sheet.doc, 'Div', () => drawSlip(sheet, block));
      break;
    case 'side-by-side':
      within(sheet.doc, 'Div', () => drawSideBySide(sheet, block));
  }
}

/** A heading keeps some of what follows on its page. */
function drawHeading(sheet: Sheet, words: string): void {
  const style: Style = { face: 'serif', points: Math.max(14 * sheet.scale, 14) };
  ensureRoom(sheet, (lineHeight(style) + 70) * Math.min(sheet.scale, 1.3));
  sheet.y += 4;
  within(sheet.doc, 'H2', () => drawText(sheet, words, style, 3));
}

/** What is short stays together: a page never begins with the last line of the one before. */
function drawText(sheet: Sheet, words: string, style: Style, after: number = GAP): void {
  const lines = wrap(sheet.doc, words, { width: sheet.width, style });
  if (lines.length <= SHORT_LINES) ensureRoom(sheet, lines.length * lineHeight(style));
  for (const line of lines) {
    ensureRoom(sheet, lineHeight(style));
    drawLine(sheet.doc, line, { x: sheet.left, y: sheet.y, style });
    sheet.y += lineHeight(style);
  }
  sheet.y += after;
}

type Lead = Extract<Block, { kind: 'lead' }>;

/** What the paper is read for, between two rules: "You owe 55.41 USD, due 30 November 2026". */
function drawLead(sheet: Sheet, { before, strong: figure, after }: Lead): void {
  const big: Style = { face: 'serif', points: 21 };
  const rest: Style = { face: 'serif', points: Math.max(14, 11 * sheet.scale) };
  const height = lineHeight(big) + 20;
  const tail = wrap(sheet.doc, after, { width: sheet.width, style: rest });
  ensureRoom(sheet, height + tail.length * lineHeight(rest));
  rule(sheet, { y: sheet.y, points: 0.8 });
  sheet.y += 9;
  const head = [before, figure].filter((words) => words !== '').join(' ');
  for (const line of wrap(sheet.doc, head, { width: sheet.width, style: big })) {
    drawLine(sheet.doc, line, { x: sheet.left, y: sheet.y, style: big });
    sheet.y += lineHeight(big);
  }
  const headWidth = widthOf(sheet.doc, `${head} `, big);
  if (headWidth + widthOf(sheet.doc, after, rest) <= sheet.width && after !== '') {
    const y = sheet.y - lineHeight(big) + (big.points - rest.points) * 0.98;
    drawLine(sheet.doc, after, { x: sheet.left + headWidth, y, style: rest });
  } else if (after !== '') drawText(sheet, after, rest, 0);
  sheet.y += 7;
  rule(sheet, { y: sheet.y, points: 0.8 });
  sheet.y += GAP + 4;
}

/** Names and what they stand for, in two columns of pairs where the type leaves room for them. */
function drawFacts(sheet: Sheet, rows: readonly Fact[]): void {
  const across = isLarge(sheet) || sheet.width < 400 ? 1 : 2;
  const columnWidth = (sheet.width - 20 * (across - 1)) / across;
  const style = plain(sheet);
  const bold = strong(sheet);
  const nameWidth = Math.min(
    columnWidth * 0.45,
    Math.max(0, ...rows.map(({ name }) => widthOf(sheet.doc, name, style))) + 10,
  );
  for (let first = 0; first < rows.length; first += across) {
    const pairs = rows.slice(first, first + across).map(({ name, value }) => ({
      name: wrap(sheet.doc, name, { width: nameWidth - 10, style }),
      value: wrap(sheet.doc, value, { width: columnWidth - nameWidth, style: bold }),
    }));
    const lines = Math.max(...pairs.map((pair) => Math.max(pair.name.length, pair.value.length)));
    ensureRoom(sheet, Math.min(lines, 12) * lineHeight(style) + 4);
    for (const [at, pair] of pairs.entries()) {
      const x = sheet.left + at * (columnWidth + 20);
      within(sheet.doc, 'LI', () => {
        within(sheet.doc, 'Lbl', () => drawLines(sheet, pair.name, { x, style }));
        within(sheet.doc, 'LBody', () => drawLines(sheet, pair.value, { x: x + nameWidth, style: bold }));
      });
      if (pair.value.join('') === '') drawPenLine(sheet, { left: x + nameWidth, right: x + columnWidth });
    }
    const isPen = rows.slice(first, first + across).some(({ value }) => value === '');
    sheet.y += lines * lineHeight(style) + (isPen ? 9 * sheet.scale : 3);
  }
  sheet.y += GAP - 2;
}

function drawLines({ doc, y }: Sheet, lines: readonly string[], at: { x: number; style: Style }): void {
  for (const [line, words] of lines.entries())
    if (words !== '') drawLine(doc, words, { ...at, y: y + line * lineHeight(at.style) });
}

/** A fact that is not known yet has a line to write it on. */
function drawPenLine(sheet: Sheet, { left, right }: { left: number; right: number }): void {
  rule(sheet, { y: sheet.y + lineHeight(plain(sheet)) - 1, left, right, points: 0.5 });
}

/** Boxes to sign in; each has its name above the line. */
function drawSignatures(sheet: Sheet, boxes: readonly string[]): void {
  const style = plain(sheet);
  const across = Math.max(1, Math.min(boxes.length, Math.floor(sheet.width / (150 * sheet.scale))));
  const width = (sheet.width - 14 * (across - 1)) / across;
  for (let first = 0; first < boxes.length; first += across) {
    const names = boxes
      .slice(first, first + across)
      .map((name) => wrap(sheet.doc, name, { width: width - 12, style }));
    const height = Math.max(...names.map((name) => name.length)) * lineHeight(style) + 34 * sheet.scale;
    ensureRoom(sheet, height + 6);
    for (const [at, name] of names.entries()) {
      const x = sheet.left + at * (width + 14);
      drawUnread(sheet.doc, () =>
        sheet.doc.lineWidth(0.6).roundedRect(x, sheet.y, width, height, 4).stroke('black'),
      );
      const inside = { ...sheet, y: sheet.y + 4 };
      within(sheet.doc, 'P', () => drawLines(inside, name, { x: x + 6, style }));
    }
    sheet.y += height + 8;
  }
}

type Slip = Extract<Block, { kind: 'slip' }>;

/** Points that a slip with five rows to tick and two boxes to sign takes, at the plain size. */
const SLIP_HEIGHT = 300;

/** A line to cut along, and beneath it what is handed back. */
function drawSlip(sheet: Sheet, { title, blocks }: Slip): void {
  ensureRoom(sheet, SLIP_HEIGHT * sheet.scale);
  const { doc, left, width, y } = sheet;
  drawUnread(doc, () =>
    doc
      .lineWidth(0.8)
      .dash(5, { space: 4 })
      .moveTo(left, y)
      .lineTo(left + width, y)
      .stroke('black')
      .undash(),
  );
  sheet.y += 6;
  drawHeading(sheet, title);
  drawBlocks(sheet, blocks);
}

type SideBySide = Extract<Block, { kind: 'side-by-side' }>;

/** Two short texts beside each other; one beneath the other in the large version, where a half page is too narrow. */
function drawSideBySide(sheet: Sheet, { left, right }: SideBySide): void {
  if (isLarge(sheet)) {
    drawBlocks(sheet, [...left, ...right]);
    return;
  }
  ensureRoom(sheet, 86);
  const width = (sheet.width - 24) / 2;
  const top = sheet.y;
  const ends = [left, right].map((blocks, at) => {
    const half = { ...sheet, left: sheet.left + at * (width + 24), width, y: top };
    drawBlocks(half, blocks);
    return half.y;
  });
  sheet.y = Math.max(...ends);
}
