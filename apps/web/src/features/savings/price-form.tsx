import {
  fraction,
  GRAMS_PER_UNIT,
  multiplyFractions,
  parseMass,
  parseMoney,
  roundFraction,
  type TypedMass,
} from '@sheafbook/units';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { askOnce } from '../../api/client.ts';
import { Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { foodNameOf } from '../buy/food-name.ts';
import { type Food, foodsQuery } from '../buy/run-queries.ts';
import { inside } from './queries.ts';
import { useSavingsText } from './words.ts';

/** A shelf price as it was seen: of which food, when, how much for how much, and where in plain words. */
export function PriceForm() {
  const words = useSavingsText();
  const { storehouse } = useHouse();
  return (
    <details>
      <summary>{words.note}</summary>
      <Loaded reading={useQuery(foodsQuery({ storehouse }))}>
        {(foods) => <Fields foods={foods.filter(({ isRetired }) => !isRetired)} />}
      </Loaded>
    </details>
  );
}

function Fields({ foods }: { foods: readonly Food[] }) {
  const words = useSavingsText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const named = foods
    .map((food) => ({ value: food.id, name: foodNameOf({ food }, format.language) }))
    .toSorted((a, b) => a.name.localeCompare(b.name, format.language));
  const { draft, change, reset } = useDraft('shelf-price', {
    ...{ foodId: named[0]?.value ?? '', seenOn: format.today(), money: '' },
    ...{ mass: `1 ${format.massUnit}`, seenWhere: words.aShop },
  });
  const [isAsked, setIsAsked] = useState(false);
  const money = parseMoney(draft.money, format.currency);
  const minorUnits = 'minorUnits' in money && money.minorUnits > 0 ? money.minorUnits : null;
  const mass = parseMass(draft.mass, { defaultUnit: format.massUnit });
  const milligrams = 'grams' in mass && mass.grams > 0 ? milligramsOf(mass) : null;
  const noting = useMutation({
    mutationFn: (json: {
      foodId: string;
      seenOn: string;
      minorUnits: number;
      milligrams: number;
      seenWhere: string;
    }) =>
      askOnce('shelf-price', json, (headers) =>
        inside['shelf-prices'].$post({ param: { storehouse }, json }, { headers }),
      ),
    onSuccess: async () => {
      setIsAsked(false);
      reset({ foodId: draft.foodId });
      await queries.invalidateQueries({ queryKey: ['savings'] });
    },
  });
  const problems = problemsOf(noting.error);
  return (
    <Form
      onSend={() => {
        setIsAsked(true);
        const { foodId, seenOn, seenWhere } = draft;
        if (minorUnits !== null && milligrams !== null)
          noting.mutate({ foodId, seenOn, minorUnits, milligrams, seenWhere });
      }}
    >
      <p className="soft">{words.noteSays}</p>
      <Choice
        label={words.food}
        value={draft.foodId}
        options={named}
        onChange={(foodId) => change({ foodId })}
        problem={problems.foodId}
      />
      <div className="pair">
        <Field
          label={words.price(format.currency)}
          inputMode="decimal"
          value={draft.money}
          onChange={(event) => change({ money: event.target.value })}
          problem={isAsked && minorUnits === null ? words.moneyProblem : problems.minorUnits}
        />
        <Field
          label={words.forMass}
          value={draft.mass}
          onChange={(event) => change({ mass: event.target.value })}
          problem={isAsked && milligrams === null ? words.massProblem : problems.milligrams}
        />
      </div>
      <div className="pair">
        <Field
          label={words.seenOn}
          type="date"
          value={draft.seenOn}
          onChange={(event) => change({ seenOn: event.target.value })}
          problem={problems.seenOn}
        />
        <Field
          label={words.where}
          value={draft.seenWhere}
          onChange={(event) => change({ seenWhere: event.target.value })}
          problem={problems.seenWhere}
        />
      </div>
      {Object.keys(problems).length > 0 ? null : <ProblemSaid error={noting.error} />}
      {noting.isSuccess ? <p role="status">{words.isNoted}</p> : null}
      <div>
        <button type="submit" className="btn go" disabled={noting.isPending}>
          {words.noteIt}
        </button>
      </div>
    </Form>
  );
}

/** What was typed, to the milligram: a pound is no whole number of grams. */
const milligramsOf = ({ count, unit }: TypedMass): number =>
  Number(roundFraction(multiplyFractions(multiplyFractions(count, GRAMS_PER_UNIT[unit]), fraction(1000, 1))));
