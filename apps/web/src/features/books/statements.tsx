import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { statementQuery } from '../../api/queries.ts';
import { Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { StatementSheet } from '../statement/statement.tsx';
import { BooksPage } from './books-page.tsx';
import { balancesQuery } from './queries.ts';
import { useBooksText } from './words.ts';

/** The statements of all households: each opens, and prints, as its household sees it. */
export function Statements() {
  const t = useBooksText();
  const { storehouse, format } = useHouse();
  const [wanted, setWanted] = useState('');
  const balances = useQuery(balancesQuery({ storehouse }));
  return (
    <BooksPage title={t.places.statements ?? ''}>
      <h1>{t.statementsTitle}</h1>
      <Field
        label={t.findHousehold}
        type="search"
        value={wanted}
        onChange={(event) => setWanted(event.target.value)}
      />
      <Loaded reading={balances}>
        {({ balances: households }) => {
          const shown = households.filter(({ household }) =>
            household.toLowerCase().includes(wanted.trim().toLowerCase()),
          );
          return (
            <>
              {shown.length === 0 ? <p role="status">{t.noSuchHousehold}</p> : null}
              <ul className="list">
                {shown.map((row) => (
                  <li key={row.householdId}>
                    <Link
                      to="/s/$storehouse/books/statements/$household"
                      params={{ storehouse, household: row.householdId }}
                    >
                      <b>{row.household}</b>
                      <span className="num">{format.money(row.balanceMinorUnits)}</span>
                    </Link>
                  </li>
                ))}
              </ul>
            </>
          );
        }}
      </Loaded>
    </BooksPage>
  );
}

export function HouseholdStatementPage() {
  const t = useBooksText();
  const { storehouse, household } = useParams({ from: '/s/$storehouse/books/statements/$household' });
  const statement = useQuery(statementQuery({ storehouse, household }, {}));
  return (
    <BooksPage title={t.places.statements ?? ''}>
      <Loaded isPage reading={statement}>
        {(body) => <StatementSheet body={body} />}
      </Loaded>
    </BooksPage>
  );
}
