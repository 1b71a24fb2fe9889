import { useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { Link, useParams, useSearch } from '@tanstack/react-router';
import { useState } from 'react';
import { buyQuery } from '../../api/queries.ts';
import { Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Ledger } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { BooksPage } from './books-page.tsx';
import { type EntriesOf, entriesQuery } from './queries.ts';
import { useBooksText } from './words.ts';

/** The journal, or the entries behind one figure of it. */
export function Entries() {
  const t = useBooksText();
  const { storehouse } = useHouse();
  const of = useSearch({ from: '/s/$storehouse/books/entries' });
  const buy = useQuery({ ...buyQuery({ storehouse, buy: of.buy ?? '' }), enabled: of.buy !== undefined });
  const behind = of.chart ? `${of.chart} ${t.charts[of.chart] ?? ''}` : buy.data?.name;
  return <EntryList of={of} title={behind ? t.journalOf(behind) : t.journalTitle} />;
}

/** The entries of one account, such as one household's balance. */
export function AccountEntries() {
  const t = useBooksText();
  const { account } = useParams({ from: '/s/$storehouse/books/accounts/$account' });
  return <EntryList of={{ account }} title={t.journalOf(t.account)} />;
}

function EntryList({ of, title }: { of: EntriesOf; title: string }) {
  const t = useBooksText();
  const { storehouse, format } = useHouse();
  const [wanted, setWanted] = useState('');
  const reading = useInfiniteQuery(entriesQuery({ storehouse }, of));
  return (
    <BooksPage title={title}>
      <h1>{title}</h1>
      <Loaded reading={reading}>
        {({ pages }) => {
          const all = pages.flatMap(({ entries }) => entries);
          const rows = all.map((entry) => ({
            key: entry.id,
            said: [
              String(entry.entryNo),
              format.day(entry.onDay),
              t.whats[entry.what] ?? entry.what,
              entry.buy ?? '',
              entry.note,
              ...entry.movements.flatMap((movement) =>
                movement.isHomeStock ? [] : [movement.from.name, movement.to.name],
              ),
            ].join(' '),
            cells: [
              <Link
                key="entry"
                to="/s/$storehouse/books/entries/$entry"
                params={{ storehouse, entry: entry.id }}
              >
                {String(entry.entryNo)}
              </Link>,
              format.day(entry.onDay),
              [t.whats[entry.what] ?? entry.what, entry.buy, entry.note].filter(Boolean).join(': '),
              moneyOf(entry.movements, format.money),
            ],
          }));
          const shown = rows.filter(({ said }) => said.toLowerCase().includes(wanted.trim().toLowerCase()));
          if (all.length === 0) return <p>{t.noEntries}</p>;
          return (
            <>
              <Field
                label={t.findEntry}
                type="search"
                value={wanted}
                onChange={(event) => setWanted(event.target.value)}
              />
              {shown.length === 0 ? <p role="status">{t.nothingFound}</p> : null}
              <Ledger
                caption={title}
                columns={[
                  { name: t.entry },
                  { name: t.day },
                  { name: t.what },
                  { name: t.amount, isNumber: true },
                ]}
                rows={shown}
              />
            </>
          );
        }}
      </Loaded>
      <ProblemSaid error={reading.data ? reading.error : null} />
      {reading.hasNextPage ? (
        <div className="actions">
          <button
            type="button"
            className="btn"
            disabled={reading.isFetchingNextPage}
            onClick={() => reading.fetchNextPage()}
          >
            {t.older}
          </button>
        </div>
      ) : null}
    </BooksPage>
  );
}

type Movement = { readonly unit: string; readonly isHomeStock: boolean; readonly amount?: number };

/** What an entry moved in money; one that moved grams alone says nothing here. */
function moneyOf(movements: readonly Movement[], money: (minorUnits: number) => string): string {
  const moved = movements.filter(({ unit, isHomeStock }) => unit === 'currency' && !isHomeStock);
  return moved.length === 0 ? '' : money(moved.reduce((sum, { amount = 0 }) => sum + amount, 0));
}
