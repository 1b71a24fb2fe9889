import type { IntakeAnswers } from '@sheafbook/keeping';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { askOnce } from '../../api/client.ts';
import { Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { NextStep } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { FoodFinder } from '../buy/food-finder.tsx';
import { WhoseChoice, whoseFirst } from '../place/of-whose.tsx';
import { FillFields, NO_FILL, readFill } from '../shelf/fill-fields.tsx';
import { type Kind, kindsQuery, OF_STOCK } from '../shelf/queries.ts';
import { intakes, type TakeIn } from './queries.ts';
import { useIntakeText } from './words.ts';

type ChosenFood = { id: string; nameEn: string; nameEs: string; bulk: number | null };
type Facts = { readonly answers: IntakeAnswers; readonly onDone: () => void };

/** What it is, how much of it the scale shows, and who gave it. */
export function Weighing(facts: Facts) {
  const { storehouse } = useHouse();
  const kinds = useQuery(kindsQuery({ storehouse }));
  return (
    <Loaded reading={kinds}>
      {({ containerKinds }) => <WeighingForm kinds={containerKinds} {...facts} />}
    </Loaded>
  );
}

function WeighingForm({ kinds, answers, onDone }: Facts & { kinds: readonly Kind[] }) {
  const words = useIntakeText();
  const house = useHouse();
  const { storehouse, format } = house;
  const queries = useQueryClient();
  const {
    draft: { food, fillDraft, of, typed },
    change,
    reset,
  } = useDraft('weighing', {
    food: null as ChosenFood | null,
    fillDraft: NO_FILL,
    of: whoseFirst(house),
    typed: { mark: '', allergensMet: '', donor: '', note: '' },
  });
  const [isAsked, setIsAsked] = useState(false);
  const fill = readFill(fillDraft, { unit: format.massUnit, kinds, today: format.today() });
  const taking = useMutation({
    mutationFn: (json: TakeIn) =>
      askOnce(`intake.${storehouse}`, json, (headers) =>
        intakes.$post({ param: { storehouse }, json }, { headers }),
      ),
    onSuccess: () => {
      reset();
      return Promise.all(
        [...OF_STOCK, 'intakes'].map((key) => queries.invalidateQueries({ queryKey: [key] })),
      );
    },
  });
  const problems = problemsOf(taking.error);
  if (taking.data) return <Taken taken={taking.data} onDone={onDone} />;
  const text = (name: keyof typeof typed, label: string, hint?: string) => (
    <Field
      label={label}
      {...(hint === undefined ? {} : { hint })}
      value={typed[name]}
      onChange={(event) => change({ typed: { ...typed, [name]: event.target.value } })}
      problem={name === 'donor' && isAsked && typed.donor.trim() === '' ? words.donorNeeded : problems[name]}
    />
  );
  return (
    <Form
      onSend={() => {
        setIsAsked(true);
        if (!fill || !food || typed.donor.trim() === '') return;
        const { kind, ...rest } = fill;
        taking.mutate({ of, answers, foodId: food.id, containerKindId: kind.id, ...rest, ...typed });
      }}
    >
      <h2>{words.weigh}</h2>
      <p>{words.weighWords}</p>
      <WhoseChoice label={words.whose} owners={words.owners} of={of} onChange={(of) => change({ of })} />
      <FoodAsked food={food} setFood={(food) => change({ food })} isAsked={isAsked} />
      <FillFields
        draft={fillDraft}
        change={(part) => change({ fillDraft: { ...fillDraft, ...part } })}
        kinds={kinds}
        bulkMicrograms={food?.bulk ?? null}
        {...{ isAsked, problems }}
      />
      {answers.packedBy === 'unknown' ? <p className="said watch-said">{words.packedGuess}</p> : null}
      {text('mark', words.mark)}
      {text('allergensMet', words.allergensMet, words.allergensHint)}
      {text('donor', words.donor, words.donorHint)}
      {text('note', words.note)}
      {Object.keys(problems).length > 0 ? null : <ProblemSaid error={taking.error} />}
      <button type="submit" className="btn go" disabled={taking.isPending}>
        {words.takeIn}
      </button>
    </Form>
  );
}

function FoodAsked({
  food,
  setFood,
  isAsked,
}: {
  food: ChosenFood | null;
  setFood: (food: ChosenFood | null) => void;
  isAsked: boolean;
}) {
  const words = useIntakeText();
  const { format } = useHouse();
  if (food)
    return (
      <p className="row place">
        <b>{`${words.food}: ${nameIn(format.language, food)}`}</b>
        <button type="button" className="btn quiet" onClick={() => setFood(null)}>
          {words.otherFood}
        </button>
      </p>
    );
  return (
    <>
      <FoodFinder
        taken={[]}
        onFound={({ id, nameEn, nameEs, bulkMicrogramsPerMillilitre: bulk }) =>
          setFood({ id, nameEn, nameEs, bulk })
        }
      />
      {isAsked ? (
        <p className="wrong" role="alert">
          {words.foodNeeded}
        </p>
      ) : null}
    </>
  );
}

type TakenBody = {
  readonly grams: number;
  readonly containers: readonly { readonly id: string; readonly spelled: string }[];
  readonly warnings: readonly string[];
};

/** The codes for the labels, and what to do next with them. */
function Taken({ taken, onDone }: { taken: TakenBody; onDone: () => void }) {
  const words = useIntakeText();
  const { storehouse, format } = useHouse();
  return (
    <NextStep title={words.tookIn(format.mass(taken.grams), taken.containers.length)}>
      <div role="status" className="stack">
        {taken.warnings.map((warning) => (
          <p key={warning} className="said watch-said">
            {warning}
          </p>
        ))}
        <p>{words.writeCodes}</p>
        <p className="codes">
          {taken.containers.map(({ id, spelled }) => (
            <span key={id} className="code">
              {spelled}
            </span>
          ))}
        </p>
      </div>
      <div className="actions">
        <Link className="btn go" to="/s/$storehouse/inspections" params={{ storehouse }}>
          {words.lookNext}
        </Link>
        <button type="button" className="btn" onClick={onDone}>
          {words.anew}
        </button>
      </div>
    </NextStep>
  );
}
