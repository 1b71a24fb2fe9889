import type { Column, Row, TableBlock } from '../content.ts';
import { plain, type Sheet, strong } from './sheet.ts';
import type { Style } from './style.ts';
import { longestWord, widthOf } from './text.ts';

/** Points between two columns. */
export const GUTTER = 10;

export type MeasuredColumn = { readonly column: Column; readonly left: number; readonly width: number };

/** A word of text may be cut at this width, so that a long name leaves room for the figures beside it. */
const CUTTABLE = 90;

type Need = { readonly least: number; readonly most: number };

/** What a column needs at least, so that no figure is cut, and at most, so that nothing is wrapped. */
function needOf(sheet: Sheet, block: TableBlock, position: number): Need {
  const { doc, scale } = sheet;
  const column = block.columns[position];
  const cells = block.rows.map((row) => ({
    text: position === 0 && spansOn(row) ? '' : (row.cells[position] ?? ''),
    style: row.kind === 'sum' ? strong(sheet) : plain(sheet),
  }));
  const all = [{ text: column?.name ?? '', style: plain(sheet) }, ...cells];
  const pen = (column?.penWidth ?? 0) * scale;
  const words = Math.max(...all.map(({ text, style }) => longestWord(doc, text, style)));
  const lines = Math.max(...all.map(({ text, style }) => longestLine(sheet, text, style)));
  const isCut = column?.isNumber !== true;
  return {
    least: Math.max(pen, isCut ? Math.min(words, CUTTABLE * scale) : words),
    most: Math.max(pen, lines),
  };
}

/** The name of a sum runs on over the empty cells beside it. */
export const spansOn = ({ kind, cells }: Row): boolean => kind === 'sum' && cells[1] === '';

const longestLine = ({ doc }: Sheet, text: string, style: Style): number =>
  Math.max(0, ...text.split('\n').map((line) => widthOf(doc, line, style)));

/** The positions of the columns that stand side by side, in as many groups as the width of the page asks for. */
export function columnGroups(sheet: Sheet, block: TableBlock): number[][] {
  const needs = block.columns.map((_, position) => needOf(sheet, block, position).least);
  const keys = block.columns.flatMap(({ isKey }, position) => (isKey ? [position] : []));
  const groups: number[][] = [];
  let group: number[] = [];
  const widthOfGroup = (positions: readonly number[]) =>
    positions.reduce((sum, position) => sum + (needs[position] ?? 0), GUTTER * (positions.length - 1));
  for (const position of block.columns.keys()) {
    if (group.some((known) => !keys.includes(known)) && widthOfGroup([...group, position]) > sheet.width) {
      groups.push(group);
      group = [...keys];
    }
    if (!group.includes(position)) group.push(position);
  }
  return [...groups, group];
}

/** Gives each column what it needs, and shares what is left among those that would still wrap, then among text. */
export function widthsFor(sheet: Sheet, block: TableBlock, positions: readonly number[]): MeasuredColumn[] {
  const needs = positions.map((position) => needOf(sheet, block, position));
  const room = sheet.width - GUTTER * (positions.length - 1);
  const sum = (of: (need: Need) => number) => needs.reduce((total, need) => total + of(need), 0);
  const [least, most] = [sum((need) => need.least), sum((need) => need.most)];
  const wanting = most - least;
  const spare = Math.max(0, room - least);
  const share = wanting === 0 ? 0 : Math.min(1, spare / wanting);
  const widths = needs.map((need) => need.least + (need.most - need.least) * share);
  const over = room - widths.reduce((total, width) => total + width, 0);
  const growing = positions.filter((position) => isGrowing(block, position));
  let left = sheet.left;
  return positions.map((position, at) => {
    const column = block.columns[position] ?? { name: '' };
    const isTaking = growing.length === 0 || growing.includes(position);
    const grown = isTaking ? over / (growing.length || positions.length) : 0;
    const width = (widths[at] ?? 0) + Math.max(0, grown);
    const measured = { column, left, width };
    left += width + GUTTER;
    return measured;
  });
}

/** Room that nobody needs goes to words; figures stay beside one another, and a pen has what it asked for. */
const isGrowing = ({ columns }: TableBlock, position: number): boolean =>
  columns[position]?.isNumber !== true && columns[position]?.penWidth === undefined;
