/** One line of the table: several measurements of one thing, and what was promised of their median. */
export type Row = {
  readonly what: string;
  readonly figures: readonly number[];
  readonly unit: '%' | 'ms' | '/s' | 'MB';
  readonly promise?: { readonly atLeast: number } | { readonly atMost: number };
};

const HEAD = ['what', 'min', 'median', 'max', '', 'promise', 'met'];

/** Text columns to the left, figures to the right. */
export function tableText(rows: readonly Row[]): string {
  const cells = [HEAD, ...rows.map(cellsOf)];
  const widths = HEAD.map((_, column) => Math.max(...cells.map((line) => (line[column] ?? '').length)));
  return cells
    .map((line) =>
      line
        .map((cell, column) =>
          column === 0 || column > 3 ? cell.padEnd(widths[column] ?? 0) : cell.padStart(widths[column] ?? 0),
        )
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

function cellsOf({ what, figures, unit, promise }: Row): string[] {
  const sorted = figures.toSorted((a, b) => a - b);
  const middle = medianOf(figures);
  const figuresText = [sorted[0] ?? Number.NaN, middle, sorted.at(-1) ?? Number.NaN].map(plain);
  return [what, ...figuresText, unit, promiseText(promise, unit), verdict(promise, middle)];
}

export function medianOf(figures: readonly number[]): number {
  const sorted = figures.toSorted((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
  const lower = sorted[Math.ceil(sorted.length / 2) - 1] ?? Number.NaN;
  return (lower + upper) / 2;
}

const plain = (figure: number): string => (figure >= 100 ? figure.toFixed(0) : figure.toFixed(1));

function promiseText(promise: Row['promise'], unit: Row['unit']): string {
  if (!promise) return '';
  return 'atLeast' in promise ? `≥ ${promise.atLeast} ${unit}` : `≤ ${promise.atMost} ${unit}`;
}

function verdict(promise: Row['promise'], middle: number): string {
  if (!promise) return '';
  const isMet = 'atLeast' in promise ? middle >= promise.atLeast : middle <= promise.atMost;
  return isMet ? 'yes' : 'NO';
}
