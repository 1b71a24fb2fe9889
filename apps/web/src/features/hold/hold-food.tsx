import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { ask } from '../../api/client.ts';
import { Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useNamed } from '../../ui/use-named.ts';
import { foodsQuery } from '../buy/run-queries.ts';
import { inside, useHoldCommand } from './queries.ts';
import { useHoldText } from './words.ts';

const EMPTY = { foodId: '', fromOn: '', toOn: '', reason: '' };

/** Stops a food by its days alone, where a notice names no mark: bags that arrived and containers packed on them. */
export function HoldFood() {
  const words = useHoldText();
  const { storehouse } = useHouse();
  const navigate = useNavigate();
  const named = useNamed();
  const foods = useQuery(foodsQuery({ storehouse }));
  const { draft, change, forget } = useDraft('hold.food', EMPTY);
  const holding = useHoldCommand(async () => {
    const { reason, ...of } = draft;
    const json = { of: { scope: 'food' as const, ...of }, reason };
    const hold = await ask(inside.holds.$post({ param: { storehouse }, json }));
    forget();
    await navigate({ to: '/s/$storehouse/holds/$hold', params: { storehouse, hold: hold.id } });
  });
  const problems = problemsOf(holding.error);
  const field = (name: 'fromOn' | 'toOn') => ({
    ...{ type: 'date', required: true, value: draft[name], problem: problems[`of.${name}`] },
    onChange: (event: { target: { value: string } }) => change({ [name]: event.target.value }),
  });
  const options = (foods.data ?? []).map((food) => ({ value: food.id, name: named(food) }));
  return (
    <details>
      <summary>{words.holdFood}</summary>
      <Form isTight onSend={() => holding.mutate(undefined)}>
        <p>{words.holdFoodSays}</p>
        <Choice
          label={words.food}
          value={draft.foodId}
          problem={problems['of.foodId']}
          options={[
            { value: '', name: words.choose },
            ...options.toSorted((a, b) => a.name.localeCompare(b.name)),
          ]}
          onChange={(foodId) => change({ foodId })}
        />
        <Field label={words.fromOn} {...field('fromOn')} />
        <Field label={words.toOn} {...field('toOn')} />
        <Field
          label={words.reasonOfHold}
          value={draft.reason}
          problem={problems.reason}
          onChange={(event) => change({ reason: event.target.value })}
        />
        <ProblemSaid error={holding.error} />
        <div className="actions">
          <button
            type="submit"
            className="btn"
            disabled={draft.foodId === '' || draft.reason.trim() === '' || holding.isPending}
          >
            {words.begin}
          </button>
        </div>
      </Form>
    </details>
  );
}
