import { useInfiniteQuery } from '@tanstack/react-query';
import { type ReactNode, useDeferredValue, useId, useState } from 'react';
import { CsvLink } from '../../ui/csv-link.tsx';
import { Choice, Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { DoneLine } from './done-line.tsx';
import { OpenLine } from './open-line.tsx';
import { type Line, type LineState, linesQuery } from './queries.ts';
import { useBankText } from './words.ts';

const STATES: readonly LineState[] = ['open', 'done', 'set-aside', 'all'];

/** The bank's lines by what became of them, found by words or by amount. */
export function Lines({ action }: { action: ReactNode }) {
  const words = useBankText();
  const { storehouse } = useHouse();
  const [state, setState] = useState<LineState>('open');
  const [search, setSearch] = useState('');
  const of = { state, search: useDeferredValue(search) };
  const lines = useInfiniteQuery(linesQuery({ storehouse }, of));
  return (
    <section className="stack">
      <div className="row">
        <h2>{words.lines}</h2>
        {action}
      </div>
      <div className="pair roomy">
        <Choice
          label={words.show}
          value={state}
          options={STATES.map((value) => ({ value, name: words.states[value] }))}
          onChange={(value) => setState(value as LineState)}
        />
        <Field
          label={words.search}
          type="search"
          value={search}
          onChange={(event) => setSearch(event.target.value)}
        />
      </div>
      <Loaded reading={lines}>
        {({ pages }) => {
          const all = pages.flatMap((page) => page.lines);
          const next = all.find(({ suggestion }) => suggestion?.entry || suggestion?.guess);
          return (
            <>
              {all.length === 0 ? (
                <p className="soft">{search === '' && state === 'open' ? words.noneOpen : words.noneFound}</p>
              ) : (
                <ul className="bank-lines">
                  {all.map((line) => (
                    <LineItem key={line.id} line={line} isNext={line === next} />
                  ))}
                </ul>
              )}
              <div className="actions">
                {lines.hasNextPage ? (
                  <button type="button" className="btn" onClick={() => lines.fetchNextPage()}>
                    {words.more}
                  </button>
                ) : null}
                {all.length > 0 ? <CsvLink list={`bank/lines?state=${state}`}>{words.asCsv}</CsvLink> : null}
              </div>
            </>
          );
        }}
      </Loaded>
    </section>
  );
}

function LineItem({ line, isNext }: { line: Line; isNext: boolean }) {
  const words = useBankText();
  const { format } = useHouse();
  const id = useId();
  const way = line.minorUnits > 0 ? words.cameIn : words.wentOut;
  return (
    <li className="bank-line stack" aria-labelledby={id}>
      <div className="bank-head" id={id}>
        <span className="soft nb">{format.day(line.onDay)}</span>
        <b className="bank-words">{line.words}</b>
        <span className="bank-amount">
          <b>{format.money(line.minorUnits)}</b> <span className="u">{way}</span>
        </span>
      </div>
      {line.match ? <DoneLine line={line} match={line.match} /> : <OpenLine line={line} isNext={isNext} />}
    </li>
  );
}
