import { useQuery } from '@tanstack/react-query';
import { useNavigate, useSearch } from '@tanstack/react-router';
import { useState } from 'react';
import { Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Ledger, State } from '../../ui/pieces.tsx';
import { BooksPage } from '../books/books-page.tsx';
import { tracesQuery } from './queries.ts';
import { useReviewText } from './words.ts';

/** Ten bags drawn by a seed that anyone can draw with again, each with its way and every gram of it. */
export function Traces() {
  const t = useReviewText();
  const navigate = useNavigate();
  const { storehouse, format } = useHouse();
  const { seed = '' } = useSearch({ from: '/s/$storehouse/books/traces' });
  const [typed, setTyped] = useState(seed);
  const reading = useQuery(tracesQuery({ storehouse }, seed));
  return (
    <BooksPage title={t.traces}>
      <h1>{seed === '' ? t.tracesTitle : t.drawnTitle(seed)}</h1>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault();
          void navigate({
            to: '/s/$storehouse/books/traces',
            params: { storehouse },
            search: typed.trim() === '' ? {} : { seed: typed.trim() },
          });
        }}
      >
        <Field
          label={t.seed}
          hint={t.seedHint}
          value={typed}
          onChange={(event) => setTyped(event.target.value)}
        />
        <div className="actions">
          <button type="submit" className="btn go">
            {t.draw}
          </button>
        </div>
      </form>
      {seed === '' ? null : (
        <Loaded reading={reading}>
          {({ traces, candidates }) => (
            <>
              <p>{t.drawnFrom(traces.length, candidates)}</p>
              {traces.map((trace) => (
                <section key={trace.bagId} className="stack">
                  <div className="row">
                    <h2>{trace.bagCode}</h2>
                    <State
                      kind={trace.addsUp ? 'well' : 'wrong'}
                      word={trace.addsUp ? t.addsUp : t.doesNotAddUp}
                    />
                  </div>
                  <p>
                    {t.wayOf({
                      food: format.language === 'es' ? trace.food.nameEs : trace.food.nameEn,
                      supplier: trace.supplier,
                      mark: trace.supplierMark,
                      buy: trace.buy,
                      day: format.day(trace.arrivedOn),
                    })}
                  </p>
                  <Ledger
                    caption={trace.bagCode}
                    columns={[
                      { name: t.way },
                      { name: t.place },
                      { name: t.whose },
                      { name: t.gramsHead, isNumber: true },
                    ]}
                    rows={[
                      ...trace.steps.map((step) => ({
                        key: `${step.way} ${step.place} ${step.owner} ${step.ownerName}`,
                        cells: [
                          t.ways[step.way] ?? step.way,
                          t.placesOf[step.place] ?? step.place,
                          step.ownerName ?? t.owners[step.owner] ?? step.owner,
                          format.count(step.grams),
                        ],
                      })),
                      {
                        key: 'sum',
                        isSum: true,
                        cells: [
                          t.inIsOut(
                            format.count(trace.inGrams),
                            format.count(trace.outGrams),
                            format.count(trace.leftGrams),
                          ),
                          '',
                          '',
                          format.count(trace.inGrams),
                        ],
                      },
                    ]}
                  />
                </section>
              ))}
              <details>
                <summary>{t.howDrawn}</summary>
                <p>{t.drawnBy}</p>
              </details>
              <p>
                <a
                  className="btn"
                  href={`/api/storehouses/${storehouse}/traces?format=csv&seed=${encodeURIComponent(seed)}`}
                  download
                >
                  {t.download}
                </a>
              </p>
            </>
          )}
        </Loaded>
      )}
    </BooksPage>
  );
}
