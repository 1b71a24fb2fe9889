import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { BooksPage } from '../books/books-page.tsx';
import { balancesQuery, trialBalanceQuery } from '../books/queries.ts';
import { CoverHardship, Refund } from './household-money.tsx';
import { BankCash, ChargeBank, OpenBalance, ReceiveFund, SpendFund } from './own-money.tsx';
import { PayAny } from './pay-supplier.tsx';
import { suppliersOwedQuery } from './queries.ts';
import { usePaymentsText } from './words.ts';

/** Every payment that is none of a household's own: each says what it posts before it does. */
export function Payments() {
  const words = usePaymentsText();
  const { storehouse, format, duties } = useHouse();
  const trial = useQuery(trialBalanceQuery({ storehouse }));
  const owed = useQuery(suppliersOwedQuery({ storehouse }));
  const balances = useQuery(balancesQuery({ storehouse }));
  return (
    <BooksPage title={words.payments}>
      <Loaded isPage reading={joined(joined(trial, owed), balances)}>
        {([[book, { suppliers }], { balances: households }]) => {
          const held = (number: string) => {
            const row = book.rows.find((known) => known.number === number);
            return format.money((row?.debitMinorUnits ?? 0) - (row?.creditMinorUnits ?? 0));
          };
          return (
            <>
              <h1>{words.title(held('1000'), held('1010'))}</h1>
              {duties.includes('treasurer') ? (
                <>
                  <section className="stack">
                    <h2>{words.moneyOut}</h2>
                    <PayAny suppliers={suppliers} />
                    <Refund households={households} />
                    <ChargeBank />
                    <SpendFund />
                    <CoverHardship households={households} />
                  </section>
                  <section className="stack">
                    <h2>{words.moneyIn}</h2>
                    <ReceiveFund />
                    <p>{words.fromHouseholdsWords}</p>
                    <div className="actions">
                      <Link className="btn" to="/s/$storehouse/books/owing" params={{ storehouse }}>
                        {words.toOwing}
                      </Link>
                      <Link className="btn" to="/s/$storehouse/books/deposits" params={{ storehouse }}>
                        {words.toDeposits}
                      </Link>
                    </div>
                  </section>
                  <section className="stack">
                    <h2>{words.between}</h2>
                    <BankCash />
                    <OpenBalance households={households} suppliers={suppliers} />
                  </section>
                </>
              ) : (
                <p>{words.treasurerPosts}</p>
              )}
              <div className="actions">
                <Link className="btn quiet" to="/s/$storehouse/books/entries" params={{ storehouse }}>
                  {words.lately}
                </Link>
              </div>
            </>
          );
        }}
      </Loaded>
    </BooksPage>
  );
}
