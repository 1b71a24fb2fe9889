import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { askOnce } from '../../api/client.ts';
import { Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { inside, type Loan, readAnew } from './queries.ts';
import { moneyTyped } from './typed.ts';
import { useEquipmentText } from './words.ts';

/** What the keeper finds damaged on a thing that is back, until it goes out again. */
export function DamageForm({ loan }: { loan: Loan }) {
  const words = useEquipmentText();
  const { storehouse, format, duties } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { cost, note },
    change,
    reset,
  } = useDraft(`damage.${loan.id}`, { cost: '', note: '' });
  const [isTried, setIsTried] = useState(false);
  const minorUnits = moneyTyped(cost, format.currency) ?? undefined;
  const charging = useMutation({
    mutationFn: (json: { minorUnits: number; note: string }) =>
      askOnce(`damage.${loan.id}`, json, (headers) =>
        inside.loans[':loan'].damage.$post({ param: { storehouse, loan: loan.id }, json }, { headers }),
      ),
    onSuccess: () => {
      reset();
      setIsTried(false);
      return readAnew(queries);
    },
  });
  const keeps = duties.includes('equipment_keeper') || duties.includes('coordinator');
  if (!keeps || loan.outAgainAt !== null) return null;
  const problems = problemsOf(charging.error);
  return (
    <details>
      <summary>{words.damageFound}</summary>
      <p className="soft">{words.damageSays}</p>
      <Form
        label={words.damageFound}
        onSend={() => {
          setIsTried(true);
          if (minorUnits !== undefined) charging.mutate({ minorUnits, note });
        }}
      >
        <Field
          label={words.damage}
          inputMode="decimal"
          value={cost}
          problem={isTried && minorUnits === undefined ? words.moneyProblem : problems.minorUnits}
          onChange={(event) => change({ cost: event.target.value })}
        />
        <Field
          label={words.conditionNote}
          value={note}
          problem={problems.note}
          onChange={(event) => change({ note: event.target.value })}
        />
        <ProblemSaid error={charging.error} />
        <div>
          <button type="submit" className="btn" disabled={charging.isPending}>
            {words.damageCharge}
          </button>
        </div>
      </Form>
    </details>
  );
}
