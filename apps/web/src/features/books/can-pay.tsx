import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { addDays } from '../../text/format.ts';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Outlook } from '../bank/pay.tsx';
import { forecastQuery } from '../bank/queries.ts';
import { useBankText } from '../bank/words.ts';

const DAYS_AHEAD = 14;

/** Whether the bank pays what is due within two weeks; the page of the bank takes other days and bills to come. */
export function CanPay() {
  const words = useBankText();
  const { storehouse, format } = useHouse();
  const [on] = useState(() => addDays(format.today(), DAYS_AHEAD));
  const forecast = useQuery(forecastQuery({ storehouse }, { on, more: '0' }));
  return (
    <section className="stack">
      <h2>{words.canPay}</h2>
      <Loaded reading={forecast}>
        {(body) => {
          return (
            <>
              <Outlook body={body} />
              <ul className="accounts">
                {[
                  { to: '/s/$storehouse/books/bank', name: words.bankNow, amount: body.bankMinorUnits },
                  { to: '/s/$storehouse/books/owing', name: words.dueIn, amount: body.receiptsMinorUnits },
                  {
                    to: '/s/$storehouse/books/suppliers',
                    name: words.dueOut,
                    amount: -body.paymentsMinorUnits,
                  },
                ].map(({ to, name, amount }) => (
                  <li key={to}>
                    <Link to={to} params={{ storehouse }}>
                      <span>{name}</span>
                      <span className="num">{format.money(amount)}</span>
                    </Link>
                  </li>
                ))}
              </ul>
            </>
          );
        }}
      </Loaded>
    </section>
  );
}
