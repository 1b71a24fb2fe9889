import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { buysQuery } from '../../api/queries.ts';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { Ledger, NextStep } from '../../ui/pieces.tsx';
import { FundStand } from '../fund/stand.tsx';
import { BankAgrees } from './bank-agrees.tsx';
import { BooksPage } from './books-page.tsx';
import { CanPay } from './can-pay.tsx';
import { ChargesOf } from './charges-of.tsx';
import { HeldDeposits } from './held-deposits.tsx';
import { Owing } from './owing-table.tsx';
import { balancesQuery, clearingQuery, openClaimsQuery, trialBalanceQuery } from './queries.ts';
import { useBooksText } from './words.ts';

/** The treasurer's first page: does the book balance, who owes, does each buy clear, what is held and claimed. */
export function Desk() {
  const t = useBooksText();
  const { storehouse, format } = useHouse();
  const trial = useQuery(trialBalanceQuery({ storehouse }));
  const balances = useQuery(balancesQuery({ storehouse }));
  const buys = useQuery(buysQuery({ storehouse }));
  return (
    <BooksPage title={t.books}>
      <Loaded isPage reading={joined(joined(trial, balances), buys)}>
        {([[book, { balances: households }], { buys: all }]) => {
          const owing = households.filter(({ balanceMinorUnits }) => balanceMinorUnits > 0);
          const owed = owing.reduce((sum, { balanceMinorUnits }) => sum + balanceMinorUnits, 0);
          const charged = lastCharged(all);
          const open = all.filter(({ stage }) => ['ordered', 'landed', 'shared-out'].includes(stage));
          return (
            <>
              <h1>{t.deskTitle(book.agrees, owing.length, format.money(owed))}</h1>
              <div className="cols">
                <div className="stack">
                  <div className="row">
                    <h2>{t.whoOwes}</h2>
                    <span className="soft">{book.currency}</span>
                  </div>
                  <Owing households={households} />
                  <h2>{t.clearings}</h2>
                  {open.length === 0 ? <p className="soft">{t.noClearings}</p> : null}
                  {open.map(({ id }) => (
                    <OpenClearing key={id} buy={id} />
                  ))}
                  <Claims />
                  <h2>{t.deposits}</h2>
                  <HeldDeposits />
                </div>
                <div className="stack">
                  <Owed owing={owing.length} owed={owed} />
                  <CanPay />
                  <BankAgrees />
                  <FundStand />
                  <h2>{t.accounts}</h2>
                  <ul className="accounts">
                    {book.rows.filter(isShown).map((row) => (
                      <li key={row.number}>
                        <Link
                          to="/s/$storehouse/books/entries"
                          params={{ storehouse }}
                          search={{ chart: row.number }}
                        >
                          <b>
                            {row.number} {t.charts[row.number] ?? row.name}
                          </b>
                          <span className="num">
                            {format.money(row.debitMinorUnits - row.creditMinorUnits)}
                          </span>
                        </Link>
                      </li>
                    ))}
                  </ul>
                  <p className="soft">{t.signs}</p>
                </div>
              </div>
              {charged === undefined ? null : <ChargesOf buy={charged} />}
            </>
          );
        }}
      </Loaded>
    </BooksPage>
  );
}

type ListedBuy = { id: string; name: string; stage: string; landingOn: string | null };

/** The last buy whose costs were charged. */
const lastCharged = (buys: readonly ListedBuy[]): ListedBuy | undefined =>
  buys
    .filter(({ stage }) => stage === 'shared-out' || stage === 'closed')
    .toSorted((a, b) => (b.landingOn ?? '').localeCompare(a.landingOn ?? ''))[0];

/** Accounts that a desk looks at every day stand there at 0.00 too; the trial balance has them all. */
const DAILY = new Set(['1000', '1010', '1100', '1200', '1400', '2000', '2100', '2200', '3000']);
const isShown = (row: { number: string; debitMinorUnits: number; creditMinorUnits: number }) =>
  DAILY.has(row.number) || row.debitMinorUnits !== row.creditMinorUnits;

function Owed({ owing, owed }: { owing: number; owed: number }) {
  const t = useBooksText();
  const { storehouse, format, duties } = useHouse();
  if (owing === 0 || !duties.includes('treasurer')) return null;
  return (
    <NextStep title={t.takePayments}>
      <p>{t.takePaymentsWords(owing, format.money(owed))}</p>
      <Link className="btn go" to="/s/$storehouse/books/owing" params={{ storehouse }}>
        {t.toOwing}
      </Link>
    </NextStep>
  );
}

function OpenClearing({ buy }: { buy: string }) {
  const t = useBooksText();
  const { storehouse, format } = useHouse();
  const clearing = useQuery(clearingQuery({ storehouse, buy }));
  return (
    <Loaded reading={clearing}>
      {(body) => (
        <p className="row">
          <Link to="/s/$storehouse/books/clearing/$buy" params={{ storehouse, buy }}>
            {t.clearingOf(body.buy.name)}
          </Link>
          <b className="num">{format.money(body.balanceMinorUnits)}</b>
        </p>
      )}
    </Loaded>
  );
}

function Claims() {
  const t = useBooksText();
  const { storehouse, format } = useHouse();
  const reading = useQuery(openClaimsQuery({ storehouse }));
  return (
    <>
      <h2>{t.claims}</h2>
      <Loaded reading={reading}>
        {(body) =>
          body.claims.length === 0 ? (
            <p className="soft">{t.noClaims}</p>
          ) : (
            <Ledger
              caption={t.claims}
              columns={[
                { name: t.supplier },
                { name: t.because },
                { name: t.age },
                { name: t.amount, isNumber: true },
              ]}
              rows={[
                ...body.claims.map((claim) => ({
                  key: claim.claimId,
                  cells: [
                    <Link
                      key="claim"
                      to="/s/$storehouse/books/claims/$claim"
                      params={{ storehouse, claim: claim.claimId }}
                    >
                      {claim.supplier}
                    </Link>,
                    `${claim.buy}: ${claim.because}`,
                    t.ageDays(claim.ageDays),
                    format.money(claim.outstandingMinorUnits),
                  ],
                })),
                { key: 'sum', isSum: true, cells: [t.all, '', '', format.money(body.outstandingMinorUnits)] },
              ]}
            />
          )
        }
      </Loaded>
    </>
  );
}
