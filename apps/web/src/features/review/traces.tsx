import { useQuery } from '@tanstack/react-query';
import { useNavigate, useSearch } from '@tanstack/react-router';
import { useState } from 'react';
import { CsvLink } from '../../ui/csv-link.tsx';
import { Field } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { BooksPage } from '../books/books-page.tsx';
import { tracesQuery } from './queries.ts';
import { TraceView } from './trace-view.tsx';
import { useReviewText } from './words.ts';

/** Ten bags, containers and entries drawn by a seed that anyone can draw with again, each with its whole way. */
export function Traces() {
  const t = useReviewText();
  const navigate = useNavigate();
  const { storehouse } = useHouse();
  const { seed = '' } = useSearch({ from: '/s/$storehouse/books/traces' });
  const [typed, setTyped] = useState(seed);
  const reading = useQuery(tracesQuery({ storehouse }, seed));
  return (
    <BooksPage title={t.traces}>
      <h1>{seed === '' ? t.tracesTitle : t.drawnTitle(seed)}</h1>
      <Form
        onSend={() =>
          void navigate({
            to: '/s/$storehouse/books/traces',
            params: { storehouse },
            search: typed.trim() === '' ? {} : { seed: typed.trim() },
          })
        }
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
      </Form>
      {seed === '' ? null : (
        <Loaded reading={reading}>
          {({ traces, candidates }) => (
            <>
              <p>{t.drawnFrom(traces.length, candidates)}</p>
              {traces.map((trace) => (
                <TraceView key={trace.code} trace={trace} />
              ))}
              <details>
                <summary>{t.howDrawn}</summary>
                <p>{t.drawnBy}</p>
              </details>
              <p>
                <CsvLink list={`traces?seed=${encodeURIComponent(seed)}`}>{t.download}</CsvLink>
              </p>
            </>
          )}
        </Loaded>
      )}
    </BooksPage>
  );
}
