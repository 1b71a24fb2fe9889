import { useMutation, useQueryClient } from '@tanstack/react-query';
import { ask, askOnce } from '../../api/client.ts';
import { Check, Choice, Field } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { inside, readAnew, type Unit } from './queries.ts';
import { useEquipmentText } from './words.ts';

/** What the keeper says of a piece: how it is, that its parts are back, and what was done to it. */
export function UnitCare({ unit }: { unit: Unit }) {
  const words = useEquipmentText();
  return (
    <details>
      <summary>{words.setCondition}</summary>
      <div className="stack">
        <ConditionForm unit={unit} />
        <MaintenanceForm unit={unit} />
      </div>
    </details>
  );
}

type Condition = 'ready' | 'dirty' | 'broken' | 'retired';

function ConditionForm({ unit }: { unit: Unit }) {
  const words = useEquipmentText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { condition, note, isWhole },
    change,
    forget,
  } = useDraft(
    `unit-condition.${unit.id}`,
    { condition: unit.condition, note: unit.conditionNote, isWhole: false },
    { version: unit.version },
  );
  const keeping = useMutation({
    mutationFn: () =>
      ask(
        inside['equipment-units'][':unit'].$put({
          param: { storehouse, unit: unit.id },
          json: {
            ...{ version: unit.version, condition: condition as Condition, conditionNote: note },
            ...(isWhole ? { missing: [] } : {}),
          },
        }),
      ),
    onSuccess: forget,
    onSettled: () => readAnew(queries),
  });
  return (
    <Form onSend={() => keeping.mutate()}>
      <Choice
        label={words.setCondition}
        value={condition}
        options={Object.entries(words.states).map(([value, name]) => ({ value, name }))}
        onChange={(condition) => change({ condition })}
      />
      <Field
        label={words.conditionNote}
        value={note}
        onChange={(event) => change({ note: event.target.value })}
      />
      {unit.missing.length === 0 ? null : (
        <Check label={words.allThere} isOn={isWhole} onChange={(isWhole) => change({ isWhole })} />
      )}
      <ProblemSaid error={keeping.error} />
      <div>
        <button type="submit" className="btn">
          {words.keep}
        </button>
      </div>
    </Form>
  );
}

function MaintenanceForm({ unit }: { unit: Unit }) {
  const words = useEquipmentText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { what, isService },
    change,
    reset,
  } = useDraft(`maintenance.${unit.id}`, { what: '', isService: true });
  const writing = useMutation({
    mutationFn: () => {
      const json = { what, isService };
      return askOnce(`maintenance.${unit.id}`, json, (headers) =>
        inside['equipment-units'][':unit'].maintenance.$post(
          { param: { storehouse, unit: unit.id }, json },
          { headers },
        ),
      );
    },
    onSuccess: () => {
      reset();
      return readAnew(queries);
    },
  });
  return (
    <Form onSend={() => writing.mutate()}>
      <Field label={words.didWhat} value={what} onChange={(event) => change({ what: event.target.value })} />
      <Check label={words.isService} isOn={isService} onChange={(isService) => change({ isService })} />
      <ProblemSaid error={writing.error} />
      <div>
        <button type="submit" className="btn">
          {words.writeDown}
        </button>
      </div>
    </Form>
  );
}
