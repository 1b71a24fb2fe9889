import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { CsvLink } from '../../ui/csv-link.tsx';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { State } from '../../ui/pieces.tsx';
import { Searched } from '../../ui/searched.tsx';
import { BooksPage } from '../books/books-page.tsx';
import { useBooksText } from '../books/words.ts';
import { itemsQuery } from '../equipment/queries.ts';
import { FulfilPromise, MakePromise, PayPromise, WithdrawPromise } from './promise-forms.tsx';
import { type FundPromise, fundQuery } from './queries.ts';
import { FundFigures } from './stand.tsx';
import { useFundText } from './words.ts';

/** The store fund: what is in it, what is promised out of it, and to what each promise came. */
export function FundPage() {
  const words = useFundText();
  const t = useBooksText();
  const { storehouse, format, duties } = useHouse();
  const fund = useQuery(fundQuery({ storehouse }));
  const items = useQuery(itemsQuery({ storehouse }));
  return (
    <BooksPage title={words.fund}>
      <Loaded isPage reading={joined(fund, items)}>
        {([body, { items: things }]) => {
          const { freeMinorUnits, currency } = body;
          const free = `${format.money(Math.abs(freeMinorUnits))} ${currency}`;
          return (
            <>
              <h1>{freeMinorUnits < 0 ? words.overTitle(free) : words.title(free)}</h1>
              <FundFigures fund={body} />
              <p className="soft">{words.whatYear}</p>
              {duties.includes('treasurer') || duties.includes('coordinator') ? (
                <MakePromise items={things} />
              ) : null}
              <h2>{words.promises}</h2>
              {body.promises.length === 0 ? <p className="soft">{words.noPromises}</p> : null}
              <Searched
                items={body.promises}
                wordsOf={({ purpose, item, state }) => `${purpose} ${item ?? ''} ${words.states[state]}`}
              >
                {(shown) => (
                  <ul className="list">
                    {shown.map((promise) => (
                      <PromiseRow key={promise.id} promise={promise} />
                    ))}
                  </ul>
                )}
              </Searched>
              <p>
                <CsvLink list="fund-promises">{t.download}</CsvLink>
              </p>
            </>
          );
        }}
      </Loaded>
    </BooksPage>
  );
}

const KINDS = { open: 'watch', fulfilled: 'well', withdrawn: 'well' } as const;

function PromiseRow({ promise }: { promise: FundPromise }) {
  const words = useFundText();
  const { storehouse, format, duties } = useHouse();
  const { state, purpose, item, entryId, entryNo, overrideReason, withdrawnBecause } = promise;
  const isTreasurer = duties.includes('treasurer');
  const said = [
    item ?? '',
    words.since(format.instant(promise.approvedAt)),
    overrideReason === '' ? '' : words.overpromised(overrideReason),
    withdrawnBecause === null ? '' : words.withdrawnBecause(withdrawnBecause),
  ];
  return (
    <li className="stack claim">
      <div className="row">
        <span>
          <b>{purpose}</b>
          <span className="soft block">{said.filter(Boolean).join('; ')}</span>
        </span>
        <b className="num">{format.money(promise.minorUnits)}</b>
        <State kind={KINDS[state]} word={words.states[state] ?? state} />
      </div>
      {entryId === null ? null : (
        <p>
          <Link to="/s/$storehouse/books/entries/$entry" params={{ storehouse, entry: entryId }}>
            {words.entry(String(entryNo))}
          </Link>
        </p>
      )}
      {state === 'open' && isTreasurer ? (
        <>
          <PayPromise promise={promise} />
          <FulfilPromise promise={promise} />
        </>
      ) : null}
      {state === 'open' && (isTreasurer || duties.includes('coordinator')) ? (
        <WithdrawPromise promise={promise} />
      ) : null}
    </li>
  );
}
