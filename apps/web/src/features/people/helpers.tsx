import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { api, ask } from '../../api/client.ts';
import { personsQuery } from '../../api/queries.ts';
import { Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { usePeopleText } from './words.ts';

const helpersOf = api.storehouses[':storehouse'].households[':household'].helpers;

/** Who may act for a household, until when; the right always ends. */
export function Helpers({ household }: { household: string }) {
  const words = usePeopleText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const param = { storehouse, household };
  const list = useQuery({
    queryKey: ['helpers', param],
    queryFn: () => ask(helpersOf.$get({ param, query: { limit: 'all' } })),
  });
  const ending = useMutation({
    mutationFn: (helper: string) => ask(helpersOf[':helper'].$delete({ param: { ...param, helper } })),
    onSuccess: () => queries.invalidateQueries({ queryKey: ['helpers'] }),
  });
  return (
    <section className="stack">
      <h2>{words.helpers}</h2>
      <p>{words.helpersWords}</p>
      <ProblemSaid error={ending.error} />
      <Loaded reading={list}>
        {({ helpers }) => (
          <ul className="list">
            {helpers.length === 0 ? <li>{words.noHelpers}</li> : null}
            {helpers.map((grant) => (
              <li key={grant.id} className="row place">
                <span>
                  {grant.isInForce
                    ? words.helperUntil(grant.helperName, format.instant(grant.expiresAt))
                    : words.helperEnded(grant.helperName, format.instant(grant.endedAt ?? grant.expiresAt))}
                </span>
                {grant.isInForce ? (
                  <button type="button" className="btn" onClick={() => ending.mutate(grant.id)}>
                    {words.endHelp}
                  </button>
                ) : null}
              </li>
            ))}
          </ul>
        )}
      </Loaded>
      <AddHelper household={household} />
    </section>
  );
}

function AddHelper({ household }: { household: string }) {
  const words = usePeopleText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const persons = useQuery(personsQuery({ storehouse }));
  const others = (persons.data ?? []).filter(({ householdId }) => householdId !== household);
  const {
    draft: { personId, days, reason },
    change,
    reset,
  } = useDraft(`helper.${household}`, { personId: '', days: '30', reason: '' });
  const chosen = personId === '' ? (others[0]?.id ?? '') : personId;
  const naming = useMutation({
    mutationFn: () =>
      ask(
        helpersOf.$post({
          param: { storehouse, household },
          json: { personId: chosen, days: Number(days), reason },
        }),
      ),
    onSuccess: () => {
      reset();
      return queries.invalidateQueries({ queryKey: ['helpers'] });
    },
  });
  const problems = problemsOf(naming.error);
  return (
    <details>
      <summary>{words.addHelper}</summary>
      <Form onSend={() => naming.mutate()}>
        <Choice
          label={words.helper}
          value={chosen}
          options={others.map(({ id, name }) => ({ value: id, name }))}
          onChange={(personId) => change({ personId })}
          problem={problems.personId}
        />
        <div className="pair">
          <Field
            label={words.helperDays}
            inputMode="numeric"
            value={days}
            onChange={(event) => change({ days: event.target.value })}
            problem={problems.days && words.helperDaysProblem}
          />
          <Field
            label={words.helperWhy}
            value={reason}
            onChange={(event) => change({ reason: event.target.value })}
            problem={problems.reason}
          />
        </div>
        {Object.keys(problems).length > 0 ? null : <ProblemSaid error={naming.error} />}
        <button type="submit" className="btn" disabled={naming.isPending}>
          {words.addHelper}
        </button>
      </Form>
    </details>
  );
}
