import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { CsvLink } from '../../ui/csv-link.tsx';
import { Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Ledger } from '../../ui/pieces.tsx';
import { BooksPage } from './books-page.tsx';
import { trialBalanceQuery } from './queries.ts';
import { useBooksText } from './words.ts';

/** Every line of the chart with its balance; each opens the entries behind it. */
export function TrialBalance() {
  const t = useBooksText();
  const { storehouse, format } = useHouse();
  const [throughOn, setThroughOn] = useState('');
  const reading = useQuery(trialBalanceQuery({ storehouse }, throughOn || undefined));
  const amount = (minorUnits: number) => (minorUnits === 0 ? '' : format.money(minorUnits));
  return (
    <BooksPage title={t.places.trialBalance ?? ''}>
      <Loaded isPage reading={reading}>
        {(body) => (
          <>
            <h1>{t.trialTitle(body.agrees, format.money(body.debitMinorUnits))}</h1>
            <Field
              label={t.throughOn}
              type="date"
              value={throughOn}
              onChange={(event) => setThroughOn(event.target.value)}
            />
            <Ledger
              caption={t.places.trialBalance ?? ''}
              columns={[
                { name: t.account },
                { name: t.debit, isNumber: true },
                { name: t.credit, isNumber: true },
              ]}
              rows={[
                ...body.rows.map((row) => ({
                  key: row.number,
                  cells: [
                    <Link
                      key="account"
                      to="/s/$storehouse/books/entries"
                      params={{ storehouse }}
                      search={{ chart: row.number }}
                    >
                      {row.number} {t.charts[row.number] ?? row.name}
                    </Link>,
                    amount(row.debitMinorUnits),
                    amount(row.creditMinorUnits),
                  ],
                })),
                {
                  key: 'sum',
                  isSum: true,
                  cells: [t.all, format.money(body.debitMinorUnits), format.money(body.creditMinorUnits)],
                },
              ]}
            />
            <p>
              <CsvLink list={`trial-balance${throughOn ? `?throughOn=${throughOn}` : ''}`}>
                {t.download}
              </CsvLink>
            </p>
          </>
        )}
      </Loaded>
    </BooksPage>
  );
}
