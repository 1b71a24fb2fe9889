import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Ledger } from '../../ui/pieces.tsx';
import { BooksPage } from './books-page.tsx';
import { clearingQuery } from './queries.ts';
import { StairsPicture } from './stairs-picture.tsx';
import { useBooksText } from './words.ts';

/** One buy's clearing account: what it cost, what was claimed back, whom it was charged to, and that nothing is left. */
export function Clearing() {
  const t = useBooksText();
  const { storehouse, format } = useHouse();
  const { buy } = useParams({ from: '/s/$storehouse/books/clearing/$buy' });
  const clearing = useQuery(clearingQuery({ storehouse, buy }));
  return (
    <BooksPage title={t.charts['2200'] ?? ''}>
      <Loaded isPage reading={clearing}>
        {(body) => (
          <>
            <h1>
              {body.balanceMinorUnits === 0
                ? t.clears(body.buy.name)
                : t.doesNotClear(body.buy.name, format.money(body.balanceMinorUnits))}
            </h1>
            <div className="row">
              <h2>{t.clearingOf(body.buy.name)}</h2>
              <span className="soft">{t.toScale(body.currency)}</span>
            </div>
            {body.stairs.length === 0 ? (
              <p>{t.noSteps}</p>
            ) : (
              <StairsPicture
                name={body.buy.name}
                stairs={body.stairs}
                balanceMinorUnits={body.balanceMinorUnits}
              />
            )}
            <div className="row">
              <h2>{t.entriesOfBuy}</h2>
              <span className="soft">{t.neverRubbedOut}</span>
            </div>
            <Ledger
              caption={t.entriesOfBuy}
              columns={[
                { name: t.day },
                { name: t.entry },
                { name: t.what },
                { name: t.amount, isNumber: true },
                { name: t.left, isNumber: true },
              ]}
              rows={[
                ...body.steps.map((step) => ({
                  key: step.entryId,
                  cells: [
                    format.day(step.onDay),
                    <Link
                      key="entry"
                      to="/s/$storehouse/books/entries/$entry"
                      params={{ storehouse, entry: step.entryId }}
                    >
                      {String(step.entryNo)}
                    </Link>,
                    [t.whats[step.what] ?? step.what, step.note].filter(Boolean).join(': '),
                    format.money(step.amountMinorUnits),
                    format.money(step.balanceMinorUnits),
                  ],
                })),
                {
                  key: 'sum',
                  isSum: true,
                  cells: [t.left, '', '', '', format.money(body.balanceMinorUnits)],
                },
              ]}
            />
          </>
        )}
      </Loaded>
    </BooksPage>
  );
}
