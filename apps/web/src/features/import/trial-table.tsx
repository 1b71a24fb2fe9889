import { useState } from 'react';
import { Check } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { State } from '../../ui/pieces.tsx';
import type { TrialFile, TrialRow } from './queries.ts';
import { sayEffect } from './say-effect.ts';
import { useImportText } from './words.ts';

/** So many rows are drawn at once; a phone would choke on two thousand. */
const ROWS_AT_ONCE = 100;

/** A file as it stands in the sheet: each error at its cell, each row's effect at its end. */
export function TrialTable({ file }: { file: TrialFile }) {
  const t = useImportText();
  const [isFaultyOnly, setFaultyOnly] = useState(file.errors > 0);
  const [shownCount, setShown] = useState(ROWS_AT_ONCE);
  const rows = isFaultyOnly ? file.rows.filter(({ problems }) => problems.length > 0) : file.rows;
  return (
    <section className="stack">
      <div className="row">
        <h2>{file.name}</h2>
        <State
          kind={file.errors > 0 ? 'wrong' : 'well'}
          word={file.errors > 0 ? t.errors(file.errors) : t.noErrors}
        />
      </div>
      <p>
        {t.kinds[file.kind ?? ''] ?? t.kindUnknown}: {t.counts(file.newRows, file.skippedRows)}
      </p>
      {file.encoding === 'windows-1252' ? <p className="soft">{t.readAsWindows}</p> : null}
      {file.problems.map(({ message, heading }) => (
        <p key={message + heading} className="problem">
          {message}
        </p>
      ))}
      <Check label={t.faultyOnly} isOn={isFaultyOnly} onChange={setFaultyOnly} />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a frame that scrolls must be reachable by keyboard (axe: scrollable-region-focusable) */}
      <section className="scroll" tabIndex={0} aria-label={file.name}>
        <table>
          <caption className="sr">{file.name}</caption>
          <thead>
            <tr>
              <th scope="col">{t.row}</th>
              {file.headings.map((heading) => (
                <th key={heading} scope="col">
                  {heading}
                </th>
              ))}
              <th scope="col">{t.effect}</th>
            </tr>
          </thead>
          <tbody>
            {rows.slice(0, shownCount).map((row) => (
              <Row key={row.row} row={row} columns={file.headings} />
            ))}
          </tbody>
        </table>
      </section>
      {rows.length > shownCount ? (
        <div className="actions">
          <button type="button" className="btn" onClick={() => setShown(shownCount + ROWS_AT_ONCE)}>
            {t.moreRows(rows.length - shownCount)}
          </button>
        </div>
      ) : null}
    </section>
  );
}

function Row({ row, columns }: { row: TrialRow; columns: readonly string[] }) {
  const t = useImportText();
  const { format } = useHouse();
  const atNoCell = row.problems.filter(({ heading }) => !columns.includes(heading ?? ''));
  return (
    <tr>
      <th scope="row">{row.row}</th>
      {columns.map((heading, at) => {
        const problems = row.problems.filter((problem) => problem.heading === heading);
        return (
          <td key={heading} className={problems.length > 0 ? 'cell-wrong' : undefined}>
            {row.cells[at] ?? ''}
            {problems.map(({ message }) => (
              <span key={message} className="problem">
                {message}
              </span>
            ))}
          </td>
        );
      })}
      <td>
        {sayEffect(t, row.effect, format)}
        {atNoCell.map(({ message }) => (
          <span key={message} className="problem">
            {message}
          </span>
        ))}
      </td>
    </tr>
  );
}
