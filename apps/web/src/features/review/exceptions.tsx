import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { useText } from '../../text/taste.ts';
import { CsvLink } from '../../ui/csv-link.tsx';
import { Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Ledger } from '../../ui/pieces.tsx';
import { useBooksText } from '../books/words.ts';
import { exceptionsQuery, monthsOfLooksQuery } from './queries.ts';
import { useReviewText } from './words.ts';

type Days = { readonly fromOn: string; readonly toOn: string };

/** What was taken back, what was decided against the rule, and who looked into whose things, in the days that one picks. */
export function Exceptions() {
  const t = useReviewText();
  const { format, duties } = useHouse();
  const today = format.today();
  const [fromOn, setFrom] = useState(`${today.slice(0, 4)}-01-01`);
  const [toOn, setTo] = useState(today);
  const days = { fromOn, toOn };
  const isWhole = fromOn !== '' && toOn !== '' && fromOn <= toOn;
  return (
    <section className="stack">
      <h2>{t.exceptions}</h2>
      <div className="pair">
        <Field
          label={t.fromDay}
          type="date"
          value={fromOn}
          onChange={(event) => setFrom(event.target.value)}
        />
        <Field
          label={t.toDay}
          type="date"
          value={toOn}
          onChange={(event) => setTo(event.target.value)}
          problem={fromOn > toOn && toOn !== '' ? t.daysProblem : undefined}
        />
      </div>
      {isWhole ? (
        <>
          <Listed days={days} />
          <p>
            <CsvLink list={`exceptions?fromOn=${fromOn}&toOn=${toOn}`}>{t.download}</CsvLink>
          </p>
          {duties.includes('reviewer') ? <Looks days={days} /> : null}
        </>
      ) : null}
    </section>
  );
}

function Listed({ days }: { days: Days }) {
  const t = useReviewText();
  const books = useBooksText();
  const { storehouse, format } = useHouse();
  const reading = useQuery(exceptionsQuery({ storehouse }, days));
  return (
    <Loaded reading={reading}>
      {({ corrections, overrides }) => (
        <>
          <h3>{t.corrections(corrections.length)}</h3>
          {corrections.length === 0 ? null : (
            <Ledger
              caption={t.corrections(corrections.length)}
              columns={[
                { name: t.day },
                { name: t.takenBack },
                { name: t.reason },
                { name: t.money, isNumber: true },
              ]}
              rows={corrections.map((row) => ({
                key: row.entryId,
                cells: [
                  format.day(row.onDay),
                  <Link
                    key="of"
                    to="/s/$storehouse/books/entries/$entry"
                    params={{ storehouse, entry: row.entryId }}
                  >
                    {t.undid(row.entryNo, row.undoneEntryNo, books.whats[row.undoneWhat] ?? row.undoneWhat)}
                  </Link>,
                  [row.reason, row.by].filter(Boolean).join(', '),
                  row.minorUnits === null ? '' : format.money(row.minorUnits),
                ],
              }))}
            />
          )}
          <h3>{t.overrides(overrides.length)}</h3>
          {overrides.length === 0 ? null : (
            <Ledger
              caption={t.overrides(overrides.length)}
              columns={[
                { name: t.day },
                { name: t.decided },
                { name: t.reason },
                { name: t.money, isNumber: true },
              ]}
              rows={overrides.map((row, at) => ({
                key: `${row.kind} ${row.onDay} ${at}`,
                cells: [
                  format.day(row.onDay),
                  <Decided key="what" row={row} />,
                  [row.reason, row.by].filter(Boolean).join(', '),
                  row.minorUnits === null ? '' : format.money(row.minorUnits),
                ],
              }))}
            />
          )}
        </>
      )}
    </Loaded>
  );
}

type Override = {
  readonly kind: string;
  readonly stage: string;
  readonly buyId: string | null;
  readonly buy: string | null;
  readonly household: string | null;
};

function Decided({ row: { kind, stage, buyId, buy, household } }: { row: Override }) {
  const t = useReviewText();
  const words = useText();
  const { storehouse } = useHouse();
  const said = t.overrideKinds[kind] ?? kind;
  return (
    <>
      {stage === '' ? said : `${said}: ${words.stages[stage] ?? stage}`}
      {household === null ? '' : `, ${household}`}
      {buyId === null ? null : (
        <>
          {', '}
          <Link to="/s/$storehouse/buys/$buy" params={{ storehouse, buy: buyId }}>
            {buy}
          </Link>
        </>
      )}
    </>
  );
}

function Looks({ days }: { days: Days }) {
  const t = useReviewText();
  const { storehouse, format } = useHouse();
  const reading = useQuery(monthsOfLooksQuery({ storehouse }, days));
  return (
    <Loaded reading={reading}>
      {({ months }) => (
        <>
          <h3>{t.looks(months.reduce((sum, { looks }) => sum + looks, 0))}</h3>
          {months.length === 0 ? null : (
            <Ledger
              caption={t.accessLog}
              columns={[
                { name: t.month },
                { name: t.who },
                { name: t.whatFor },
                { name: t.looksHead, isNumber: true },
                { name: t.householdsHead, isNumber: true },
              ]}
              rows={months.map((row) => ({
                key: `${row.month} ${row.reader} ${row.purpose}`,
                cells: [
                  format.monthOf(row.month),
                  row.reader,
                  row.lookedFor,
                  format.count(row.looks),
                  format.count(row.households),
                ],
              }))}
            />
          )}
          <p>
            <CsvLink list={`private-reads/months?from=${days.fromOn}&to=${days.toOn}`}>
              {t.downloadLooks}
            </CsvLink>
          </p>
        </>
      )}
    </Loaded>
  );
}
