import type { ReactNode } from 'react';
import { useText } from '../text/taste.ts';
import { WatchMark, WellMark, WrongMark } from './icons.tsx';

/** The page's one accent: what to do next. */
export function NextStep({ title, children }: { title?: string; children: ReactNode }) {
  return (
    <section className="next">
      {title === undefined ? null : <h2>{title}</h2>}
      {children}
    </section>
  );
}

export function Figures({ rows }: { rows: readonly { name: string; value: string; unit?: string }[] }) {
  return (
    <dl className="figures">
      {rows.map(({ name, value, unit }) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>
            {value} {unit ? <span className="u">{unit}</span> : null}
          </dd>
        </div>
      ))}
    </dl>
  );
}

/** State is never colour alone: a mark and a word go with it. */
export function State({ kind, word }: { kind: 'well' | 'watch' | 'wrong'; word: string }) {
  const Mark = { well: WellMark, watch: WatchMark, wrong: WrongMark }[kind];
  return (
    <span className={`state ${kind}`}>
      <Mark />
      {word}
    </span>
  );
}

export type Column = { readonly name: string; readonly isNumber?: boolean };
export type LedgerRow = {
  readonly key: string;
  readonly cells: readonly ReactNode[];
  readonly isSum?: boolean;
};

/** Head ruled in ink, rows by a hairline, the sum once above and twice below. */
export function Ledger({
  caption,
  columns,
  rows,
}: {
  caption: string;
  columns: Column[];
  rows: LedgerRow[];
}) {
  return (
    // A table wider than a phone moves inside its own frame, which the keyboard can reach too.
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a frame that scrolls must be reachable by keyboard (axe: scrollable-region-focusable)
    <section className="scroll" tabIndex={0} aria-label={caption}>
      <table>
        <caption className="sr">{caption}</caption>
        <thead>
          <tr>
            {columns.map(({ name, isNumber }) => (
              <th key={name} scope="col" className={isNumber ? 'num' : undefined}>
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ key, cells, isSum }) => (
            <tr key={key} className={isSum ? 'sum' : undefined}>
              {cells.map((cell, at) => {
                const className = columns[at]?.isNumber ? 'num' : undefined;
                const name = columns[at]?.name ?? at;
                return at === 0 ? (
                  <th key={name} scope="row" className={className}>
                    {cell}
                  </th>
                ) : (
                  <td key={name} className={className}>
                    {cell}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** The table behind a picture, for whoever would rather read. */
export function AsTable({ children }: { children: ReactNode }) {
  const t = useText();
  return (
    <details>
      <summary>{t.asTable}</summary>
      {children}
    </details>
  );
}
