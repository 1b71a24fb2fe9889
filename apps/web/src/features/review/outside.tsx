import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { BankAgrees } from '../books/bank-agrees.tsx';
import { suppliersOwedQuery } from '../payments/queries.ts';
import { usePaymentsText } from '../payments/words.ts';

/** What the book says beside those outside: the bank, and the suppliers whose bills were paid or not. */
export function Outside() {
  const words = usePaymentsText();
  const { storehouse, format } = useHouse();
  const owed = useQuery(suppliersOwedQuery({ storehouse }));
  return (
    <>
      <BankAgrees />
      <section className="stack">
        <h2>{words.suppliers}</h2>
        <Loaded reading={owed}>
          {({ owedMinorUnits }) => (
            <p>
              <Link to="/s/$storehouse/books/suppliers" params={{ storehouse }}>
                {owedMinorUnits === 0 ? words.nothingOwed : words.owedTitle(format.money(owedMinorUnits))}
              </Link>
            </p>
          )}
        </Loaded>
      </section>
    </>
  );
}
