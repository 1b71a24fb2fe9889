import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { askOnce } from '../../api/client.ts';
import { Choice, Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { Figures } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { inside, type Loan, loanQuery, readAnew } from './queries.ts';
import { type Ticked, Ticks, ticksOf } from './ticks.tsx';
import { moneyTyped } from './typed.ts';
import { useEquipmentText } from './words.ts';

/** A loan comes back with its parts counted; once it is back, what it came to. */
export function BringBack() {
  const { storehouse, item, loan } = useParams({ from: '/s/$storehouse/equipment/$item/loans/$loan' });
  const reading = useQuery(loanQuery({ storehouse, loan }));
  return (
    <Loaded reading={reading}>
      {(body) => (
        <>
          <Link className="who" to="/s/$storehouse/equipment/$item" params={{ storehouse, item }}>
            <BackIcon />
            {body.itemName}
          </Link>
          {body.inAt === null ? <ComingForm loan={body} /> : <Settled loan={body} />}
        </>
      )}
    </Loaded>
  );
}

function Settled({ loan }: { loan: Loan }) {
  const words = useEquipmentText();
  const { format } = useHouse();
  useTitle(words.returnTitle(loan.itemName));
  const rows = [
    [words.costs.fee, loan.feeMinorUnits],
    [words.costs.late, loan.lateMinorUnits],
    [words.costs.parts, loan.partsMinorUnits],
    [words.costs.damage, loan.damageMinorUnits],
    [words.costs.kept, loan.keptMinorUnits],
    [words.costs.refund, loan.refundMinorUnits],
  ] as const;
  return (
    <>
      <h1>{words.settled}</h1>
      {loan.isLateWaived ? <p>{words.lateWaived}</p> : null}
      <Figures
        rows={rows.map(([name, minorUnits]) => ({
          ...{ name, value: format.money(minorUnits ?? 0), unit: format.currency },
        }))}
      />
    </>
  );
}

type Condition = 'ready' | 'dirty' | 'broken';
type Money = 'balance' | 'cash' | 'bank';

function ComingForm({ loan }: { loan: Loan }) {
  const words = useEquipmentText();
  const { storehouse, format, duties, personName, household } = useHouse();
  const queries = useQueryClient();
  const keeps = duties.includes('equipment_keeper') || duties.includes('coordinator');
  const [ticked, setTicked] = useState<Ticked>({});
  const [isAsked, setIsAsked] = useState(false);
  const [draft, setDraft] = useState({
    broughtBy: loan.household.id === household ? personName : '',
    ...{ condition: 'ready', note: '', uses: '1', damage: '', refundTo: 'balance' },
  });
  const change = (part: Partial<typeof draft>) => setDraft({ ...draft, ...part });
  const parts = loan.parts.map(({ id, name, outPieces }) => ({ id, name, most: outPieces }));
  const ticks = ticksOf(parts, ticked);
  const damage = moneyTyped(draft.damage, format.currency);
  const isUses = /^\d{1,6}$/.test(draft.uses.trim());
  const isReady = ticks !== null && draft.broughtBy.trim() !== '' && isUses && damage !== undefined;
  const coming = useMutation({
    mutationFn: async () => {
      if (ticks === null) return;
      const { broughtBy, note } = draft;
      const json = {
        ...{ parts: ticks, broughtBy, note, uses: Number(draft.uses), damageMinorUnits: damage ?? 0 },
        ...{ condition: draft.condition as Condition, refundTo: draft.refundTo as Money },
      };
      await askOnce(`return ${loan.id}`, json, (header) =>
        inside.loans[':loan'].return.$post(
          { param: { storehouse, loan: loan.id }, json },
          { headers: header },
        ),
      );
    },
    onSuccess: () => readAnew(queries),
  });
  useTitle(words.returnTitle(loan.itemName));
  return (
    <form
      className="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        setIsAsked(true);
        if (isReady) coming.mutate();
      }}
    >
      <h1>{words.returnTitle(loan.itemName)}</h1>
      <p>{words.forWhom(loan.household.name, format.instant(loan.outAt), format.instant(loan.dueAt))}</p>
      {parts.length === 0 ? null : <h2>{words.tickIn}</h2>}
      <Ticks parts={parts} ticked={ticked} onChange={setTicked} />
      <Field
        label={words.broughtBy}
        value={draft.broughtBy}
        onChange={(event) => change({ broughtBy: event.target.value })}
        problem={isAsked && draft.broughtBy.trim() === '' ? words.nameProblem : undefined}
      />
      <Choice
        label={words.conditionIn}
        value={draft.condition}
        options={['ready', 'dirty', 'broken'].map((value) => ({ value, name: words.states[value] ?? value }))}
        onChange={(condition) => change({ condition })}
      />
      <Field
        label={words.note}
        value={draft.note}
        onChange={(event) => change({ note: event.target.value })}
      />
      <Field
        label={words.uses}
        inputMode="numeric"
        value={draft.uses}
        onChange={(event) => change({ uses: event.target.value })}
        problem={isAsked && !isUses ? words.numberProblem : undefined}
      />
      {keeps ? (
        <>
          <Field
            label={words.damage}
            inputMode="decimal"
            value={draft.damage}
            onChange={(event) => change({ damage: event.target.value })}
            problem={damage === undefined ? words.moneyProblem : undefined}
          />
          <Choice
            label={words.refundTo}
            value={draft.refundTo}
            options={Object.entries(words.money).map(([value, name]) => ({ value, name }))}
            onChange={(refundTo) => change({ refundTo })}
          />
        </>
      ) : null}
      <ProblemSaid error={coming.error} />
      <div>
        <button type="submit" className="btn go" disabled={coming.isPending}>
          {words.takeBack}
        </button>
      </div>
    </form>
  );
}
