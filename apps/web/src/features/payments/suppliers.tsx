import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { CsvLink } from '../../ui/csv-link.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Ledger } from '../../ui/pieces.tsx';
import { Searched } from '../../ui/searched.tsx';
import { BooksPage } from '../books/books-page.tsx';
import { PayOne } from './pay-supplier.tsx';
import { type SupplierStanding, type SuppliersOwed, suppliersOwedQuery } from './queries.ts';
import { usePaymentsText } from './words.ts';

/** Whom we buy from: what each billed, credited and was paid, what we owe it, and what we claim of it. */
export function Suppliers() {
  const words = usePaymentsText();
  const { storehouse, format, duties } = useHouse();
  const reading = useQuery(suppliersOwedQuery({ storehouse }));
  return (
    <BooksPage title={words.suppliers}>
      <Loaded isPage reading={reading}>
        {(body) => (
          <>
            <h1>
              {body.owedMinorUnits === 0
                ? words.nothingOwed
                : words.owedTitle(format.money(body.owedMinorUnits))}
            </h1>
            {body.prepaidMinorUnits === 0 ? null : (
              <p>{words.prepaid(format.money(body.prepaidMinorUnits))}</p>
            )}
            {body.suppliers.length === 0 ? <p>{words.noSuppliers}</p> : <Standings body={body} />}
            {duties.includes('treasurer')
              ? body.suppliers
                  .filter(({ owedMinorUnits }) => owedMinorUnits > 0)
                  .map((supplier) => <PayOne key={supplier.supplierId} supplier={supplier} />)
              : null}
            <div className="actions">
              <Link className="btn" to="/s/$storehouse/books/bills" params={{ storehouse }}>
                {words.toBills}
              </Link>
              <Link className="btn" to="/s/$storehouse/books/claims" params={{ storehouse }}>
                {words.toClaims}
              </Link>
              <CsvLink list="suppliers-owed">{words.asCsv}</CsvLink>
            </div>
          </>
        )}
      </Loaded>
    </BooksPage>
  );
}

const FIGURES = [
  'broughtOverMinorUnits',
  'billedMinorUnits',
  'creditedMinorUnits',
  'paidMinorUnits',
  'owedMinorUnits',
  'claimedMinorUnits',
] as const satisfies readonly (keyof SupplierStanding)[];

function Standings({ body }: { body: SuppliersOwed }) {
  const words = usePaymentsText();
  const { format } = useHouse();
  const number = (name: string) => ({ name, isNumber: true });
  return (
    <>
      <Searched items={body.suppliers} wordsOf={({ supplier }) => supplier}>
        {(shown) => (
          <Ledger
            caption={words.suppliers}
            columns={[
              { name: words.supplier },
              number(words.broughtOver),
              number(words.billed),
              number(words.credited),
              number(words.paid),
              number(words.owed),
              number(words.claimed),
            ]}
            rows={shown.map((row) => ({
              key: row.supplierId,
              cells: [<Name key="name" row={row} />, ...FIGURES.map((figure) => format.money(row[figure]))],
            }))}
          />
        )}
      </Searched>
      <p className="soft">{words.howItAdds}</p>
    </>
  );
}

/** A supplier's name opens the entries behind its figures; one that never had any has none. */
function Name({ row }: { row: SupplierStanding }) {
  const words = usePaymentsText();
  const { storehouse, format } = useHouse();
  return (
    <span className="ample">
      {row.accountId === null ? (
        row.supplier
      ) : (
        <Link to="/s/$storehouse/books/accounts/$account" params={{ storehouse, account: row.accountId }}>
          {row.supplier}
        </Link>
      )}
      {row.lastPaidOn === null ? null : (
        <span className="soft block">{words.lastPaid(format.day(row.lastPaidOn))}</span>
      )}
    </span>
  );
}
