import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import type { InferRequestType } from 'hono/client';
import { useState } from 'react';
import { api, askOnce } from '../../api/client.ts';
import { Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { FoodFinder } from '../buy/food-finder.tsx';
import { FillFields, NO_FILL, readFill } from './fill-fields.tsx';
import { Filled } from './filled.tsx';
import { type Kind, kindsQuery, OF_STOCK } from './queries.ts';
import { useShelfText } from './words.ts';
import './shelf.css';

const stock = api.storehouses[':storehouse'].stock;
type BringIn = InferRequestType<typeof stock.$post>['json'];
type ChosenFood = { id: string; nameEn: string; nameEs: string; bulk: number | null };

/** Writes down what a household had before, or bought elsewhere. */
export function Record() {
  const words = useShelfText();
  const { storehouse } = useHouse();
  useTitle(words.record);
  const kinds = useQuery(kindsQuery({ storehouse }));
  return (
    <>
      <h1>{words.recordTitle}</h1>
      <p>{words.recordWords}</p>
      <Loaded reading={kinds}>{({ containerKinds }) => <RecordForm kinds={containerKinds} />}</Loaded>
    </>
  );
}

function RecordForm({ kinds }: { kinds: readonly Kind[] }) {
  const words = useShelfText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const start = { ...NO_FILL, food: null as ChosenFood | null, originNote: '' };
  const { draft, change, reset } = useDraft(`record.${storehouse}`, start);
  const [isAsked, setIsAsked] = useState(false);
  const fill = readFill(draft, { unit: format.massUnit, kinds, today: format.today() });
  const recording = useMutation({
    mutationFn: (json: BringIn) =>
      askOnce(`record.${storehouse}`, json, (headers) =>
        stock.$post({ param: { storehouse }, json }, { headers }),
      ),
    onSuccess: () => {
      reset(start);
      setIsAsked(false);
      return Promise.all(OF_STOCK.map((key) => queries.invalidateQueries({ queryKey: [key] })));
    },
  });
  const problems = problemsOf(recording.error);
  if (recording.data)
    return <Filled filled={recording.data} canUndo={false} onMore={() => recording.reset()} />;
  const { food, originNote } = draft;
  return (
    <Form
      onSend={() => {
        setIsAsked(true);
        if (!fill || !food || originNote.trim() === '') return;
        const { kind, ...rest } = fill;
        recording.mutate({ foodId: food.id, originNote, containerKindId: kind.id, ...rest });
      }}
    >
      {food ? (
        <p className="row place">
          <b>{`${words.food}: ${nameIn(format.language, food)}`}</b>
          <button type="button" className="btn quiet" onClick={() => change({ food: null })}>
            {words.otherFood}
          </button>
        </p>
      ) : (
        <>
          <FoodFinder
            taken={[]}
            onFound={({ id, nameEn, nameEs, bulkMicrogramsPerMillilitre: bulk }) =>
              change({ food: { id, nameEn, nameEs, bulk } })
            }
          />
          {isAsked ? (
            <p className="wrong" role="alert">
              {words.foodNeeded}
            </p>
          ) : null}
        </>
      )}
      <FillFields
        draft={draft}
        change={change}
        kinds={kinds}
        bulkMicrograms={food?.bulk ?? null}
        isAsked={isAsked}
        problems={problems}
      />
      <Field
        label={words.origin}
        hint={words.originHint}
        value={originNote}
        onChange={(event) => change({ originNote: event.target.value })}
        problem={isAsked && originNote.trim() === '' ? words.originNeeded : problems.originNote}
      />
      {fill ? (
        <p>
          {words.recordSays(
            fill.count,
            nameIn(format.language, fill.kind),
            format.mass(fill.gramsEach),
            format.mass(fill.count * fill.gramsEach),
          )}
        </p>
      ) : null}
      {Object.keys(problems).length > 0 ? null : <ProblemSaid error={recording.error} />}
      <button type="submit" className="btn go" disabled={recording.isPending}>
        {words.pack}
      </button>
    </Form>
  );
}
