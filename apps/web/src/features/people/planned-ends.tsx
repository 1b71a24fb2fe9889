import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';
import { Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { dutiesQuery } from './queries.ts';
import { usePeopleText } from './words.ts';

const planned = api.storehouses[':storehouse'].persons[':person'].duties[':duty']['planned-end'];
type Grant = InferResponseType<typeof planned.$put, 200>;

/** On which day each duty of a person is meant to end; it is told 60 days ahead, and ends nothing by itself. */
export function PlannedEnds({ person }: { person: string }) {
  const words = usePeopleText();
  const { storehouse } = useHouse();
  const { data } = useQuery(dutiesQuery({ storehouse }));
  const held = (data?.duties ?? []).filter(
    ({ personId, endedAt }) => personId === person && endedAt === null,
  );
  if (held.length === 0) return null;
  return (
    <details>
      <summary>{words.plannedEnds}</summary>
      <div className="stack">
        <p className="soft">{words.plannedEndsSay}</p>
        {held.map((grant) => (
          <PlannedEnd key={`${grant.id} ${grant.endsOn}`} grant={grant} />
        ))}
      </div>
    </details>
  );
}

function PlannedEnd({ grant }: { grant: Grant }) {
  const words = usePeopleText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const { draft, change, forget } = useDraft(`planned-end.${grant.id}`, { endsOn: grant.endsOn ?? '' });
  const { endsOn } = draft;
  const saving = useMutation({
    mutationFn: () => {
      const param = { storehouse, person: grant.personId, duty: grant.duty };
      return ask(planned.$put({ param, json: { endsOn: endsOn === '' ? null : endsOn } }));
    },
    onSuccess: () => {
      forget();
      return queries.invalidateQueries({ queryKey: ['duties'] });
    },
  });
  const problems = problemsOf(saving.error);
  const duty = words.duties[grant.duty] ?? grant.duty;
  return (
    <Form onSend={() => saving.mutate()}>
      <Field
        label={words.meantToEndAs(duty)}
        type="date"
        value={endsOn}
        onChange={(event) => change({ endsOn: event.target.value })}
        problem={problems.endsOn}
      />
      {problems.endsOn ? null : <ProblemSaid error={saving.error} />}
      <div>
        <button type="submit" className="btn" disabled={saving.isPending || endsOn === (grant.endsOn ?? '')}>
          {words.saveEnd(duty)}
        </button>
      </div>
    </Form>
  );
}
