import { parseMoney } from '@sheafbook/units';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { addDays } from '../../text/format.ts';
import { Field, problemsOf } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Ledger, State } from '../../ui/pieces.tsx';
import { type Forecast as ForecastBody, forecastQuery } from './queries.ts';
import { useBankText } from './words.ts';

/** Whether the bank can pay what is due by a day; the day and the bills to come are the treasurer's to change. */
export function Forecast() {
  const words = useBankText();
  const { storehouse, format } = useHouse();
  const [on, setOn] = useState(() => addDays(format.today(), 14));
  const [bills, setBills] = useState('');
  const read = bills.trim() === '' ? { minorUnits: 0 } : parseMoney(bills, format.currency);
  const more = 'minorUnits' in read ? read.minorUnits : 0;
  const forecast = useQuery({
    ...forecastQuery({ storehouse }, { on, more: String(more) }),
    enabled: on !== '',
  });
  const problems = problemsOf(forecast.error);
  return (
    <section className="stack">
      <h2>{words.canPay}</h2>
      <div className="pair roomy">
        <Field
          label={words.payBy}
          type="date"
          value={on}
          onChange={(event) => setOn(event.target.value)}
          problem={on === '' ? words.dayProblem : problems.on}
        />
        <Field
          label={words.billsToCome}
          inputMode="decimal"
          value={bills}
          onChange={(event) => setBills(event.target.value)}
          problem={'problem' in read ? words.moneyProblem : undefined}
        />
      </div>
      {problems.on || on === '' ? null : (
        <Loaded reading={forecast}>{(body) => <Answer body={body} />}</Loaded>
      )}
    </section>
  );
}

type Left = Pick<ForecastBody, 'on' | 'shortMinorUnits' | 'leftMinorUnits'>;

/** Whether it is enough, in a word and a sentence. */
export function Outlook({ body }: { body: Left }) {
  const words = useBankText();
  const { format } = useHouse();
  const day = format.day(body.on);
  const isShort = body.shortMinorUnits > 0;
  return (
    <p>
      <State kind={isShort ? 'wrong' : 'well'} word={isShort ? words.no : words.yes} />{' '}
      {isShort
        ? words.short(format.money(body.shortMinorUnits), day)
        : words.enough(format.money(body.leftMinorUnits), day)}
    </p>
  );
}

function Answer({ body }: { body: ForecastBody }) {
  const words = useBankText();
  const { format } = useHouse();
  const signed = (name: string, minorUnits: number) => ({
    key: name,
    cells: [name, format.money(minorUnits)],
  });
  return (
    <>
      <Outlook body={body} />
      <Ledger
        caption={words.canPay}
        columns={[{ name: words.words }, { name: words.amount, isNumber: true }]}
        rows={[
          signed(words.bankNow, body.bankMinorUnits),
          ...body.receipts.map((row) => ({
            key: `in ${row.party} ${row.why} ${row.dueOn}`,
            cells: [`${row.party}, ${words.owing[row.why]}`, format.money(row.minorUnits)],
          })),
          ...body.payments.map((row) => ({
            key: `out ${row.party}`,
            cells: [`${row.party}, ${words.owing[row.why]}`, format.money(-row.minorUnits)],
          })),
          ...(body.moreMinorUnits > 0 ? [signed(words.billsToCome, -body.moreMinorUnits)] : []),
          { ...signed(words.left, body.leftMinorUnits), isSum: true },
        ]}
      />
      <p className="soft">
        {words.certain} {body.tinMinorUnits > 0 ? words.tinHas(format.money(body.tinMinorUnits)) : ''}
      </p>
    </>
  );
}
