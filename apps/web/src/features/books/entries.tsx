import { useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { Link, useParams, useSearch } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { buyQuery } from '../../api/queries.ts';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Ledger } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { BooksPage } from './books-page.tsx';
import { JournalSearch } from './journal-search.tsx';
import { type EntriesOf, entriesQuery } from './queries.ts';
import { useBooksText } from './words.ts';

/** The journal, or the entries behind one figure of it. */
export function Entries() {
  const t = useBooksText();
  const { storehouse } = useHouse();
  const of = useSearch({ from: '/s/$storehouse/books/entries' });
  const buy = useQuery({ ...buyQuery({ storehouse, buy: of.buy ?? '' }), enabled: of.buy !== undefined });
  const behind = of.chart ? `${of.chart} ${t.charts[of.chart] ?? ''}` : buy.data?.name;
  const title = behind ? t.journalOf(behind) : t.journalTitle;
  return <EntryList of={of} title={title} search={<JournalSearch of={of} />} />;
}

/** The entries of one account, such as one household's balance. */
export function AccountEntries() {
  const t = useBooksText();
  const { account } = useParams({ from: '/s/$storehouse/books/accounts/$account' });
  const { storehouse } = useHouse();
  const reading = useInfiniteQuery(entriesQuery({ storehouse }, { account }));
  const behind = reading.data?.pages
    .flatMap(({ entries }) => entries)
    .flatMap(({ movements }) => movements)
    .flatMap((movement) => (movement.isHomeStock ? [] : [movement.from, movement.to]))
    .find(({ accountId }) => accountId === account);
  const named = behind && [behind.number, behind.name].filter(Boolean).join(' ');
  return <EntryList of={{ account }} title={t.journalOf(named ?? t.account)} />;
}

function EntryList({ of, title, search }: { of: EntriesOf; title: string; search?: ReactNode }) {
  const t = useBooksText();
  const { storehouse, format } = useHouse();
  const reading = useInfiniteQuery(entriesQuery({ storehouse }, of));
  return (
    <BooksPage title={title}>
      <h1>{title}</h1>
      {search}
      <Loaded reading={reading}>
        {({ pages }) => {
          const all = pages.flatMap(({ entries }) => entries);
          if (all.length === 0) return <p role="status">{isNarrowed(of) ? t.nothingFound : t.noEntries}</p>;
          return (
            <Ledger
              caption={title}
              columns={[
                { name: t.entry },
                { name: t.day },
                { name: t.what },
                { name: t.amount, isNumber: true },
              ]}
              rows={all.map((entry) => ({
                key: entry.id,
                cells: [
                  <Link
                    key="entry"
                    to="/s/$storehouse/books/entries/$entry"
                    params={{ storehouse, entry: entry.id }}
                  >
                    {String(entry.entryNo)}
                  </Link>,
                  <span key="day" className="nb">
                    {format.day(entry.onDay)}
                  </span>,
                  [t.whats[entry.what] ?? entry.what, entry.buy, entry.note].filter(Boolean).join(': '),
                  moneyOf(entry.movements, format.money),
                ],
              }))}
            />
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

const isNarrowed = ({ words, what, fromOn, toOn }: EntriesOf) => Boolean(words || what || fromOn || toOn);

type Movement = { readonly unit: string; readonly isHomeStock: boolean; readonly amount?: number };

/** What an entry moved in money; one that moved grams alone says nothing here. */
function moneyOf(movements: readonly Movement[], money: (minorUnits: number) => string): string {
  const moved = movements.filter(({ unit, isHomeStock }) => unit === 'currency' && !isHomeStock);
  return moved.length === 0 ? '' : money(moved.reduce((sum, { amount = 0 }) => sum + amount, 0));
}
