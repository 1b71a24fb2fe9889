import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { ask, askOnce } from '../../api/client.ts';
import { Check, Choice, Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
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
  const [condition, setCondition] = useState(unit.condition);
  const [note, setNote] = useState(unit.conditionNote);
  const [isWhole, setIsWhole] = useState(false);
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
    onSettled: () => readAnew(queries),
  });
  return (
    <form
      className="stack"
      onSubmit={(event) => {
        event.preventDefault();
        keeping.mutate();
      }}
    >
      <Choice
        label={words.setCondition}
        value={condition}
        options={Object.entries(words.states).map(([value, name]) => ({ value, name }))}
        onChange={setCondition}
      />
      <Field label={words.conditionNote} value={note} onChange={(event) => setNote(event.target.value)} />
      {unit.missing.length === 0 ? null : (
        <Check label={words.allThere} isOn={isWhole} onChange={setIsWhole} />
      )}
      <ProblemSaid error={keeping.error} />
      <div>
        <button type="submit" className="btn">
          {words.keep}
        </button>
      </div>
    </form>
  );
}

function MaintenanceForm({ unit }: { unit: Unit }) {
  const words = useEquipmentText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const [what, setWhat] = useState('');
  const [isService, setIsService] = useState(true);
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
      setWhat('');
      return readAnew(queries);
    },
  });
  return (
    <form
      className="stack"
      onSubmit={(event) => {
        event.preventDefault();
        writing.mutate();
      }}
    >
      <Field label={words.didWhat} value={what} onChange={(event) => setWhat(event.target.value)} />
      <Check label={words.isService} isOn={isService} onChange={setIsService} />
      <ProblemSaid error={writing.error} />
      <div>
        <button type="submit" className="btn">
          {words.writeDown}
        </button>
      </div>
    </form>
  );
}
