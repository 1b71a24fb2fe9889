import { parseMoney } from '@sheafbook/units';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { askOnce } from '../../api/client.ts';
import { Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { Ledger, State } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { type Agreement, bankApi, bankKey } from './queries.ts';
import { useBankText, useEntryName } from './words.ts';

/** The bank's word less the book's, and everything that is between them, down to the cent that nothing explains. */
export function AgreementTable({ body }: { body: Agreement }) {
  const words = useBankText();
  const { format, duties } = useHouse();
  const { differenceMinorUnits: difference } = body;
  const money = (minorUnits: number) => format.money(minorUnits);
  return (
    <section className="stack">
      <div className="row">
        <h2>{words.agreement}</h2>
        <span className="soft">{body.currency}</span>
      </div>
      {body.statementMinorUnits === null ? (
        <p className="soft">{words.notTold}</p>
      ) : (
        <Ledger
          caption={words.agreement}
          columns={[{ name: words.words }, { name: words.amount, isNumber: true }]}
          rows={[
            {
              key: 'bank',
              cells: [words.bankSays(format.day(body.throughOn)), money(body.statementMinorUnits)],
            },
            { key: 'book', cells: [words.bookSays, money(body.bookMinorUnits)] },
            { key: 'uncleared', cells: [words.uncleared, money(body.unclearedMinorUnits)] },
            ...(body.bookedLater.length === 0
              ? []
              : [{ key: 'later', cells: [words.bookedLater, money(body.bookedLaterMinorUnits)] }]),
            { key: 'notInBook', cells: [words.notInBook, money(body.notInBookMinorUnits)] },
            {
              key: 'difference',
              isSum: true,
              cells: [
                difference === 0 ? (
                  <State key="state" kind="well" word={words.difference} />
                ) : (
                  <State key="state" kind="wrong" word={words.difference} />
                ),
                money(difference ?? 0),
              ],
            },
          ]}
        />
      )}
      <Between body={body} />
      {duties.includes('treasurer') ? <SayBalance /> : null}
      <p className="soft">{words.before}</p>
    </section>
  );
}

/** Each entry and each line that is between the two, one by one. */
function Between({ body }: { body: Agreement }) {
  const words = useBankText();
  const nameOf = useEntryName();
  const { format } = useHouse();
  const columns = [{ name: words.day }, { name: words.words }, { name: words.amount, isNumber: true }];
  const entries = (rows: Agreement['uncleared']) =>
    rows.map((entry) => ({
      key: entry.id,
      cells: [
        format.shortDay(entry.onDay),
        [nameOf(entry.what), entry.party].filter(Boolean).join(', '),
        format.money(entry.minorUnits),
      ],
    }));
  return (
    <>
      {body.uncleared.length > 0 ? (
        <details>
          <summary>{`${words.uncleared}: ${body.uncleared.length}`}</summary>
          <Ledger caption={words.uncleared} columns={columns} rows={entries(body.uncleared)} />
        </details>
      ) : null}
      {body.bookedLater.length > 0 ? (
        <details>
          <summary>{`${words.bookedLater}: ${body.bookedLater.length}`}</summary>
          <Ledger caption={words.bookedLater} columns={columns} rows={entries(body.bookedLater)} />
        </details>
      ) : null}
      {body.notInBook.length > 0 ? (
        <details>
          <summary>{`${words.notInBook}: ${body.notInBook.length}`}</summary>
          <Ledger
            caption={words.notInBook}
            columns={columns}
            rows={body.notInBook.map((line) => ({
              key: line.lineId,
              cells: [
                format.shortDay(line.onDay),
                [line.words, line.setAsideBecause].filter(Boolean).join(': '),
                format.money(line.minorUnits),
              ],
            }))}
          />
        </details>
      ) : null}
    </>
  );
}

/** An amount that may stand below zero, as an overdrawn account does. */
function readBalance(text: string, currency: string): number | undefined {
  const isBelow = /^\s*[-−–]/.test(text);
  const read = parseMoney(isBelow ? text.replace(/^\s*[-−–]\s*/, '') : text, currency);
  if ('problem' in read) return undefined;
  return isBelow && read.minorUnits !== 0 ? -read.minorUnits : read.minorUnits;
}

function SayBalance() {
  const words = useBankText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const [isTried, setIsTried] = useState(false);
  const { draft, change, reset } = useDraft(`bank-balance.${storehouse}`, { onDay: '', amount: '' });
  const minorUnits = readBalance(draft.amount, format.currency);
  const saying = useMutation({
    mutationFn: (json: { onDay: string; minorUnits: number }) =>
      askOnce(`bank-balance.${storehouse}`, json, (headers) =>
        bankApi.balances.$post({ param: { storehouse }, json }, { headers }),
      ),
    onSuccess: () => {
      reset({ onDay: '', amount: '' });
      setIsTried(false);
      return queries.invalidateQueries({ queryKey: bankKey({ storehouse }) });
    },
  });
  const problems = problemsOf(saying.error);
  return (
    <details>
      <summary>{words.sayBalance}</summary>
      <Form
        onSend={() => {
          setIsTried(true);
          if (minorUnits !== undefined && draft.onDay !== '')
            saying.mutate({ onDay: draft.onDay, minorUnits });
        }}
      >
        <p className="soft">{words.sayBalanceWords}</p>
        <div className="pair roomy">
          <Field
            label={words.balanceDay}
            type="date"
            value={draft.onDay}
            onChange={(event) => change({ onDay: event.target.value })}
            problem={problems.onDay ?? (isTried && draft.onDay === '' ? words.dayProblem : undefined)}
          />
          <Field
            label={words.balanceAmount}
            hint={words.balanceHint}
            inputMode="text"
            value={draft.amount}
            onChange={(event) => change({ amount: event.target.value })}
            problem={
              problems.minorUnits ?? (isTried && minorUnits === undefined ? words.moneyProblem : undefined)
            }
          />
        </div>
        {saying.error && !problems.onDay ? <ProblemSaid error={saying.error} /> : null}
        <div>
          <button type="submit" className="btn" disabled={saying.isPending}>
            {words.sayNow}
          </button>
        </div>
      </Form>
    </details>
  );
}
