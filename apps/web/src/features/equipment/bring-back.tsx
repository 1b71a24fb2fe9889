import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { Choice, Field } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { Figures } from '../../ui/pieces.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { PaperLinks } from '../paper/paper-links.tsx';
import { DamageForm } from './damage-form.tsx';
import { PhotosOfLoan } from './photos-of-item.tsx';
import { type Loan, loanQuery } from './queries.ts';
import { type Ticked, Ticks, ticksOf } from './ticks.tsx';
import { moneyTyped } from './typed.ts';
import { useCounter } from './use-counter.ts';
import { useEquipmentText } from './words.ts';
import { WrittenDown } from './written-down.tsx';

/** A loan comes back with its parts counted; once it is back, what it came to. */
export function BringBack() {
  const { storehouse, item, loan } = useParams({ from: '/s/$storehouse/equipment/$item/loans/$loan' });
  const counter = useCounter(loan);
  const reading = useQuery(loanQuery({ storehouse, loan }));
  return (
    <Loaded isPage reading={reading}>
      {(body) => (
        <>
          <Link className="who" to="/s/$storehouse/equipment/$item" params={{ storehouse, item }}>
            <BackIcon />
            {body.itemName}
          </Link>
          {counter.waits ? (
            <WrittenDown />
          ) : body.inAt === null ? (
            <ComingForm loan={body} counter={counter} />
          ) : (
            <>
              <Settled loan={body} />
              <DamageForm loan={body} />
            </>
          )}
          <PhotosOfLoan loan={body} />
          <PaperLinks papers={[{ kind: 'loan-slip', path: `loans/${loan}/paper` }]} />
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

type Typed = {
  readonly ticked: Ticked;
  readonly broughtBy: string;
  readonly condition: string;
  readonly note: string;
  readonly uses: string;
  readonly damage: string;
  readonly refundTo: string;
};
type ComingProps = { loan: Loan; counter: ReturnType<typeof useCounter> };

function ComingForm({ loan, counter }: ComingProps) {
  const words = useEquipmentText();
  const { format, duties, personName, household } = useHouse();
  const keeps = duties.includes('equipment_keeper') || duties.includes('coordinator');
  const [isAsked, setIsAsked] = useState(false);
  const { draft, change, forget } = useDraft<Typed>(`loan-back.${loan.id}`, {
    ...{ ticked: {}, broughtBy: loan.household.id === household ? personName : '' },
    ...{ condition: 'ready', note: '', uses: '1', damage: '', refundTo: 'balance' },
    ...(counter.refused?.act.typed as Partial<Typed> | undefined),
  });
  const parts = loan.parts.map(({ id, name, outPieces }) => ({ id, name, most: outPieces }));
  const ticks = ticksOf(parts, draft.ticked);
  const damage = moneyTyped(draft.damage, format.currency);
  const isUses = /^\d{1,6}$/.test(draft.uses.trim());
  const isReady = ticks !== null && draft.broughtBy.trim() !== '' && isUses && damage !== undefined;
  const write = () => {
    if (ticks === null) return;
    const { broughtBy, note } = draft;
    const json = {
      ...{ parts: ticks, broughtBy, note, uses: Number(draft.uses), damageMinorUnits: damage ?? 0 },
      ...{ condition: draft.condition as Condition, refundTo: draft.refundTo as Money },
      happenedAt: new Date().toISOString(),
    };
    const { id: of, itemId, itemName: thing } = loan;
    forget();
    counter.write({ kind: 'back', of, itemId, thing, typed: draft, json });
  };
  useTitle(words.returnTitle(loan.itemName));
  return (
    <Form
      onSend={() => {
        setIsAsked(true);
        if (isReady) write();
      }}
    >
      <h1>{words.returnTitle(loan.itemName)}</h1>
      <p>{words.forWhom(loan.household.name, format.instant(loan.outAt), format.instant(loan.dueAt))}</p>
      {parts.length === 0 ? null : <h2>{words.tickIn}</h2>}
      <Ticks parts={parts} ticked={draft.ticked} onChange={(ticked) => change({ ticked })} />
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
      <div>
        <button type="submit" className="btn go">
          {words.takeBack}
        </button>
      </div>
    </Form>
  );
}
