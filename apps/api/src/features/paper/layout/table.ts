import type { Column, Row, TableBlock } from '../content.ts';
import { columnGroups, GUTTER, type MeasuredColumn, spansOn, widthsFor } from './columns.ts';
import { drawUnread, ensureRoom, plain, rule, type Sheet, strong } from './sheet.ts';
import { into, newPart, type Part, unread, within } from './structure.ts';
import type { Style } from './style.ts';
import { drawLine, lineHeight, wrap } from './text.ts';

/** What a pen needs, in points of height. */
const PEN_ROW = 30;
const PADDING = 4;

type Laid = { readonly columns: readonly MeasuredColumn[]; readonly style: Style };

/**
 * Draws a table: head ruled in ink, rows by a hairline, a sum ruled once above and twice below. The head is repeated on
 * each page. A table that is wider than the page goes on below with its key columns repeated, so that no figure is cut.
 */
export function drawTable(sheet: Sheet, block: TableBlock): void {
  for (const positions of columnGroups(sheet, block)) {
    const columns = widthsFor(sheet, block, positions);
    const laid = { columns, style: plain(sheet) };
    within(sheet.doc, 'Table', () => drawGroup(sheet, laid, rowsOf(block, positions)));
    sheet.y += 10 * sheet.scale;
  }
}

const rowsOf = ({ rows }: TableBlock, positions: readonly number[]): Row[] =>
  rows.map((row) => ({ ...row, cells: positions.map((position) => row.cells[position] ?? '') }));

function drawGroup(sheet: Sheet, laid: Laid, rows: readonly Row[]): void {
  const heights = rows.map((row) => heightOf(sheet, laid, row));
  const firstNeeds = (heights[0] ?? 0) + (rows[1]?.kind === 'sum' ? (heights[1] ?? 0) : 0);
  const head = headHeight(sheet, laid);
  const wholePage = sheet.bottom() - 120 * sheet.scale;
  ensureRoom(sheet, head + Math.min(firstNeeds, wholePage / 2));
  within(sheet.doc, 'TR', () => drawHead(sheet, laid, 'TH'));
  for (const [at, row] of rows.entries()) {
    const height = heights[at] ?? 0;
    // A sum never stands alone at the top of a page.
    const needed = height + (rows[at + 1]?.kind === 'sum' ? (heights[at + 1] ?? 0) : 0);
    if (sheet.y + needed > sheet.bottom() && at > 0) {
      nextPage(sheet, laid);
    }
    within(sheet.doc, 'TR', () => drawRow(sheet, laid, row));
  }
}

const linesOf = (sheet: Sheet, { columns }: Laid, row: Row): string[][] => {
  const style = row.kind === 'sum' ? strong(sheet) : plain(sheet);
  return columns.map(({ width }, at) => {
    const room = at === 0 && spansOn(row) ? spanOf(columns, row) : width;
    return wrap(sheet.doc, row.cells[at] ?? '', { width: room, style });
  });
};

/** From the first column to the last empty one beside it. */
function spanOf(columns: readonly MeasuredColumn[], { cells }: Row): number {
  const next = cells.findIndex((cell, at) => at > 0 && cell !== '');
  const last = columns[next < 0 ? columns.length - 1 : next - 1];
  const [first] = columns;
  return first && last ? last.left + last.width - first.left : 0;
}

function heightOf(sheet: Sheet, laid: Laid, row: Row): number {
  const height = tallest(linesOf(sheet, laid, row)) * lineHeight(laid.style) + 2 * PADDING * sheet.scale;
  return row.kind === 'pen' ? Math.max(height, PEN_ROW * sheet.scale) : height;
}

const headLines = (sheet: Sheet, { columns, style }: Laid): string[][] =>
  columns.map(({ column, width }) => wrap(sheet.doc, column.name, { width, style }));

function headHeight(sheet: Sheet, laid: Laid): number {
  return tallest(headLines(sheet, laid)) * lineHeight(laid.style) + PADDING * sheet.scale;
}

/** The head stands on each page for the eye; a listener hears it once. */
function nextPage(sheet: Sheet, laid: Laid): void {
  sheet.nextPage();
  unread(sheet.doc, () => drawHead(sheet, laid));
}

function drawHead(sheet: Sheet, laid: Laid, kind?: 'TH'): void {
  const cells = headLines(sheet, laid);
  const lines = tallest(cells);
  const step = lineHeight(laid.style);
  for (const [at, cell] of cells.entries()) {
    const top = sheet.y + (lines - cell.length) * step; // heads stand on their rule
    const draw = () => drawCell(sheet, laid.columns[at], { cell, top, style: laid.style });
    if (kind) within(sheet.doc, kind, draw);
    else draw();
  }
  sheet.y += headHeight(sheet, laid);
  rule(sheet, { y: sheet.y, points: 1 });
}

/** A row that is taller than a page goes on where the page ends. */
function drawRow(sheet: Sheet, laid: Laid, row: Row): void {
  const style = row.kind === 'sum' ? strong(sheet) : plain(sheet);
  const step = lineHeight(style);
  const padding = 2 * PADDING * sheet.scale;
  if (row.kind === 'sum') rule(sheet, { y: sheet.y, points: 1 });
  let cells = linesOf(sheet, laid, row);
  const parts = cells.map(() => newPart(sheet.doc, 'TD'));
  while (tallest(cells) > 1 && sheet.y + tallest(cells) * step + padding > sheet.bottom()) {
    const fitting = Math.max(1, Math.floor((sheet.bottom() - sheet.y - padding) / step));
    drawCells(sheet, laid, { cells: cells.map((cell) => cell.slice(0, fitting)), style, parts });
    cells = cells.map((cell) => cell.slice(fitting));
    nextPage(sheet, laid);
  }
  const top = sheet.y;
  drawCells(sheet, laid, { cells, style, parts });
  const drawn = tallest(cells) * step + padding;
  sheet.y += row.kind === 'pen' ? Math.max(drawn, PEN_ROW * sheet.scale) : drawn;
  rule(sheet, { y: sheet.y, points: row.kind === 'sum' ? 1 : 0.4 });
  if (row.kind === 'sum') {
    sheet.y += 2.5;
    rule(sheet, { y: sheet.y, points: 1 });
  }
  if (row.kind === 'pen') drawUprights(sheet, laid, { from: top, to: sheet.y });
}

const tallest = (cells: readonly (readonly string[])[]): number =>
  Math.max(1, ...cells.map((cell) => cell.length));

/** A row that is filled in by hand shows where one column ends. */
function drawUprights(sheet: Sheet, { columns }: Laid, { from, to }: { from: number; to: number }): void {
  for (const { left } of columns.slice(1)) {
    const x = left - GUTTER / 2;
    drawUnread(sheet.doc, () => sheet.doc.lineWidth(0.4).moveTo(x, from).lineTo(x, to).stroke('black'));
  }
}

function drawCells(
  sheet: Sheet,
  { columns }: Laid,
  { cells, style, parts }: { cells: readonly string[][]; style: Style; parts: readonly Part[] },
): void {
  const top = sheet.y + PADDING * sheet.scale;
  for (const [at, cell] of cells.entries())
    into(sheet.doc, parts[at] ?? null, () => drawCell(sheet, columns[at], { cell, top, style }));
}

function drawCell(
  { doc }: Sheet,
  measured: MeasuredColumn | undefined,
  { cell, top, style }: { cell: readonly string[]; top: number; style: Style },
): void {
  if (!measured) return;
  const { column, left, width } = measured;
  const at = isRight(column) ? { x: left + width, align: 'right' as const } : { x: left };
  for (const [line, words] of cell.entries())
    if (words !== '') drawLine(doc, words, { ...at, y: top + line * lineHeight(style), style });
}

const isRight = (column: Column): boolean => column.isNumber === true;
