/** A paper before it is drawn: plain data, so that what it says can be tested without a page. */
export type PaperContent = {
  /** Beneath the title: whose it is, which buy, which days. */
  readonly about: readonly string[];
  readonly blocks: readonly Block[];
};

export type Block =
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'text'; readonly text: string }
  /** The one sentence that a paper is read for; `strong` stands out in it. */
  | { readonly kind: 'lead'; readonly before: string; readonly strong: string; readonly after: string }
  | { readonly kind: 'facts'; readonly rows: readonly Fact[] }
  | TableBlock
  | { readonly kind: 'side-by-side'; readonly left: readonly Block[]; readonly right: readonly Block[] }
  | { readonly kind: 'signatures'; readonly boxes: readonly string[] }
  /** A part to be cut off and handed back, which stays on one page. */
  | { readonly kind: 'slip'; readonly title: string; readonly blocks: readonly Block[] };

/** An empty value is a line for a pen. */
export type Fact = { readonly name: string; readonly value: string };

export type Column = {
  readonly name: string;
  readonly isNumber?: boolean;
  /** A column that is printed again when a wide table continues beside itself. */
  readonly isKey?: boolean;
  /** Points that a pen needs, at the plain size. */
  readonly penWidth?: number;
};

/** Cells break at `\n`; an empty cell of a pen row has room to write in. */
export type Row = { readonly cells: readonly string[]; readonly kind?: 'sum' | 'pen' };

export type TableBlock = {
  readonly kind: 'table';
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
};

export const heading = (text: string): Block => ({ kind: 'heading', text });
export const text = (words: string): Block => ({ kind: 'text', text: words });
/** A heading with its block, or with the sentence that there is nothing of the kind. */
export const section = (
  title: string,
  rows: readonly unknown[],
  { block, nothing }: { block: Block; nothing: string },
): Block[] => [heading(title), rows.length === 0 ? text(nothing) : block];
export const facts = (rows: readonly (Fact | false)[]): Block => ({
  kind: 'facts',
  rows: rows.filter((row) => row !== false),
});
export const table = (columns: readonly Column[], rows: readonly Row[]): TableBlock => ({
  kind: 'table',
  columns,
  rows,
});
/** Columns of figures. */
export const figures = (...names: readonly string[]): Column[] =>
  names.map((name) => ({ name, isNumber: true }));
