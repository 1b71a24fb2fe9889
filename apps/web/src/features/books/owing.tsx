import { parseMoney } from '@sheafbook/units';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { api, askOnce } from '../../api/client.ts';
import { ApiProblem } from '../../api/problem.ts';
import { CsvLink } from '../../ui/csv-link.tsx';
import { Check, Field, problemsOf } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { NextStep } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { PaperLinks } from '../paper/paper-links.tsx';
import { BooksPage } from './books-page.tsx';
import type { HouseholdBalance } from './owing-table.tsx';
import { balancesQuery } from './queries.ts';
import { useBooksText } from './words.ts';

const inside = api.storehouses[':storehouse'];

/** Who owes, and a payment in two taps: the household, then the till that the money came into. */
export function OwingPage() {
  const t = useBooksText();
  const { storehouse, format } = useHouse();
  const balances = useQuery(balancesQuery({ storehouse }));
  const [wanted, setWanted] = useState('');
  return (
    <BooksPage title={t.places.owing ?? ''}>
      <Loaded isPage reading={balances}>
        {({ balances: households }) => {
          const owing = households.filter(({ balanceMinorUnits }) => balanceMinorUnits > 0);
          const owed = owing.reduce((sum, { balanceMinorUnits }) => sum + balanceMinorUnits, 0);
          const shown = households
            .filter(({ household }) => household.toLowerCase().includes(wanted.trim().toLowerCase()))
            .toSorted((a, b) => b.balanceMinorUnits - a.balanceMinorUnits || a.seat - b.seat);
          return (
            <>
              <h1>{t.owingTitle(owing.length, format.money(owed))}</h1>
              <Field
                label={t.findHousehold}
                type="search"
                value={wanted}
                onChange={(event) => setWanted(event.target.value)}
              />
              {shown.length === 0 ? <p role="status">{t.noSuchHousehold}</p> : null}
              <Households rows={shown} />
              <PaperLinks papers={[{ kind: 'who-owes', path: 'balances/paper' }]} />
              <p>
                <CsvLink list="balances">{t.download}</CsvLink>
              </p>
            </>
          );
        }}
      </Loaded>
    </BooksPage>
  );
}

function Households({ rows }: { rows: readonly HouseholdBalance[] }) {
  const t = useBooksText();
  const { format } = useHouse();
  const [open, setOpen] = useState<string | null>(null);
  return (
    <ul className="list">
      {rows.map((row) => (
        <li key={row.householdId}>
          <button
            type="button"
            className="owing-row"
            aria-expanded={open === row.householdId}
            onClick={() => setOpen(open === row.householdId ? null : row.householdId)}
          >
            <b>{row.household}</b>
            <span className="num">
              {row.balanceMinorUnits < 0
                ? t.creditOf(format.money(-row.balanceMinorUnits))
                : format.money(row.balanceMinorUnits)}
            </span>
          </button>
          {open === row.householdId ? <TakePayment row={row} close={() => setOpen(null)} /> : null}
        </li>
      ))}
    </ul>
  );
}

type Posted = { readonly entryId: string; readonly minorUnits: number };

function TakePayment({ row, close }: { row: HouseholdBalance; close: () => void }) {
  const t = useBooksText();
  const client = useQueryClient();
  const { storehouse, format, duties } = useHouse();
  const {
    draft: { typed },
    change,
    forget,
  } = useDraft(
    `payment.${row.householdId}`,
    { typed: row.balanceMinorUnits > 0 ? format.money(row.balanceMinorUnits) : '' },
    { version: row.balanceMinorUnits },
  );
  const [isKnownDuplicate, setKnown] = useState(false);
  const [posted, setPosted] = useState<Posted | null>(null);
  const renew = () => client.invalidateQueries({ queryKey: ['books'] });
  const amount = parseMoney(typed, format.currency);
  const problem = 'problem' in amount && typed !== '' ? t.moneyProblem : undefined;
  const paying = useMutation({
    mutationFn: (till: 'bank' | 'cash') => {
      const minorUnits = 'problem' in amount ? 0 : amount.minorUnits;
      const json = { householdId: row.householdId, minorUnits, till, isKnownDuplicate };
      return askOnce(`payment.${row.householdId}`, json, (headers) =>
        inside.payments.$post({ param: { storehouse }, json }, { headers }),
      );
    },
    onSuccess: async (entry) => {
      forget();
      setPosted(await entry);
      await renew();
    },
  });
  const undoing = useMutation({
    mutationFn: ({ entryId }: Posted) => {
      const json = { reason: t.undoReason };
      return askOnce(`undo.${entryId}`, json, (headers) =>
        inside.entries[':entry'].reversal.$post({ param: { storehouse, entry: entryId }, json }, { headers }),
      );
    },
    onSuccess: () => {
      setPosted(null);
      return renew();
    },
  });
  if (!duties.includes('treasurer')) return <p className="soft">{t.treasurerPosts}</p>;
  if (posted)
    return (
      <NextStep title={t.posted(format.money(posted.minorUnits), row.household)}>
        <ProblemSaid error={undoing.error} />
        <div className="actions">
          <button
            type="button"
            className="btn"
            disabled={undoing.isPending}
            onClick={() => undoing.mutate(posted)}
          >
            {t.undo}
          </button>
          <button type="button" className="btn quiet" onClick={close}>
            {t.done}
          </button>
        </div>
      </NextStep>
    );
  const isDuplicate = paying.error instanceof ApiProblem && paying.error.code === 'looks-like-a-duplicate';
  const isHeldUp = paying.isPending || 'problem' in amount;
  return (
    <NextStep>
      <Field
        label={t.received}
        inputMode="decimal"
        value={typed}
        onChange={(event) => change({ typed: event.target.value })}
        problem={problem ?? problemsOf(paying.error).minorUnits}
      />
      <p>{t.willPost('problem' in amount ? '…' : format.money(amount.minorUnits), row.household)}</p>
      {isDuplicate ? <Check label={t.knownDuplicate} isOn={isKnownDuplicate} onChange={setKnown} /> : null}
      <ProblemSaid error={paying.error} />
      <div className="actions">
        <button type="button" className="btn go" disabled={isHeldUp} onClick={() => paying.mutate('bank')}>
          {t.byBank}
        </button>
        <button type="button" className="btn" disabled={isHeldUp} onClick={() => paying.mutate('cash')}>
          {t.inCash}
        </button>
      </div>
    </NextStep>
  );
}
