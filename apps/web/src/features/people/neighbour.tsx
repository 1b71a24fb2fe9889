import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import type { InferRequestType } from 'hono/client';
import { useState } from 'react';
import { api, ask } from '../../api/client.ts';
import { personsQuery } from '../../api/queries.ts';
import { Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { PaperLinks } from '../paper/paper-links.tsx';
import { ReadContact } from './contact.tsx';
import { Helpers } from './helpers.tsx';
import { Leaving } from './leaving.tsx';
import { PlannedEnds } from './planned-ends.tsx';
import { usePeopleText } from './words.ts';

const inside = api.storehouses[':storehouse'];
const dutiesOf = inside.persons[':person'].duties;
type Duty = InferRequestType<typeof dutiesOf.$post>['json']['duty'];
const DUTIES: readonly Duty[] = ['coordinator', 'treasurer', 'packing_lead', 'equipment_keeper', 'reviewer'];
type Person = { id: string; name: string; householdId: string | null; duties: readonly string[] };

/** One household as its neighbours see it; the coordinator gives duties here. */
export function Neighbour() {
  const words = usePeopleText();
  const param = useParams({ from: '/s/$storehouse/people/$household' });
  const { duties, household: own, format } = useHouse();
  const household = useQuery({
    queryKey: ['household', param],
    queryFn: () => ask(inside.households[':household'].$get({ param })),
  });
  const persons = useQuery(personsQuery({ storehouse: param.storehouse }));
  useTitle(household.data?.name ?? words.title);
  const isCoordinator = duties.includes('coordinator');
  return (
    <>
      <Link className="who" to="/s/$storehouse/people" params={param}>
        <BackIcon />
        {words.toPeople}
      </Link>
      <Loaded isPage reading={joined(household, persons)}>
        {([found, people]) => {
          const members = people.filter(({ householdId }) => householdId === found.id);
          return (
            <>
              <h1>{words.householdStands(found.name, found.seat)}</h1>
              <p className="soft">
                {found.leftOn === null
                  ? words.joined(format.day(found.joinedOn))
                  : words.left(format.day(found.leftOn))}
              </p>
              <div className="stack">
                {members.map((person) => (
                  <Member key={person.id} person={person} mayGive={isCoordinator} />
                ))}
              </div>
              {own === found.id ? (
                <Link className="btn" to="/s/$storehouse/household/private" params={param}>
                  {words.privateLink}
                </Link>
              ) : (
                <ReadContact household={found.id} />
              )}
              {found.leftOn === null && (own === found.id || isCoordinator) ? (
                <PaperLinks papers={[{ kind: 'month', path: `households/${found.id}/month/paper` }]} />
              ) : null}
              {own === found.id || isCoordinator ? <Rename key={found.version} household={found} /> : null}
              {isCoordinator && own !== found.id && found.leftOn === null ? (
                <>
                  <Helpers household={found.id} />
                  <Leaving household={{ id: found.id, name: found.name, version: found.version }} />
                </>
              ) : null}
            </>
          );
        }}
      </Loaded>
    </>
  );
}

function Member({ person, mayGive }: { person: Person; mayGive: boolean }) {
  const words = usePeopleText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const free = DUTIES.filter((duty) => !person.duties.includes(duty));
  const [duty, setDuty] = useState<Duty | ''>('');
  const param = { storehouse, person: person.id };
  const changing = useMutation({
    mutationFn: async (change: { give: Duty } | { end: string }): Promise<unknown> =>
      'give' in change
        ? ask(dutiesOf.$post({ param, json: { duty: change.give } }))
        : ask(dutiesOf[':duty'].$delete({ param: { ...param, duty: change.end } })),
    onSuccess: () => {
      setDuty('');
      return Promise.all(['persons', 'duties'].map((key) => queries.invalidateQueries({ queryKey: [key] })));
    },
  });
  const chosen = duty === '' ? free[0] : duty;
  return (
    <section className="stack">
      <h2>{person.name}</h2>
      {person.duties.length === 0 || mayGive ? null : (
        <p>{person.duties.map((held) => words.duties[held] ?? held).join(', ')}</p>
      )}
      {mayGive ? (
        <>
          <div className="actions">
            {person.duties.map((held) => (
              <button key={held} type="button" className="btn" onClick={() => changing.mutate({ end: held })}>
                {words.takeBack(words.duties[held] ?? held)}
              </button>
            ))}
          </div>
          <PlannedEnds person={person.id} />
          {chosen === undefined ? null : (
            <details>
              <summary>{words.giveDuty(person.name)}</summary>
              <div className="stack">
                <Choice
                  label={words.duty}
                  value={chosen}
                  options={free.map((value) => ({ value, name: words.duties[value] ?? value }))}
                  onChange={(value) => setDuty(value as Duty)}
                />
                <p className="soft">{words.hasLogin}</p>
                <button
                  type="button"
                  className="btn"
                  disabled={changing.isPending}
                  onClick={() => changing.mutate({ give: chosen })}
                >
                  {words.give}
                </button>
              </div>
            </details>
          )}
          <ProblemSaid error={changing.error} />
        </>
      ) : null}
    </section>
  );
}

function Rename({ household }: { household: { id: string; name: string; version: number } }) {
  const t = usePeopleText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { name },
    change,
    forget,
  } = useDraft(`household-name.${household.id}`, { name: household.name }, { version: household.version });
  const renaming = useMutation({
    mutationFn: () =>
      ask(
        inside.households[':household'].$put({
          param: { storehouse, household: household.id },
          json: { version: household.version, name },
        }),
      ),
    onSuccess: () => {
      forget();
      return Promise.all(
        ['household', 'households', 'persons'].map((key) => queries.invalidateQueries({ queryKey: [key] })),
      );
    },
  });
  const problems = problemsOf(renaming.error);
  return (
    <details>
      <summary>{t.rename}</summary>
      <Form onSend={() => renaming.mutate()}>
        <Field
          label={t.name}
          value={name}
          onChange={(event) => change({ name: event.target.value })}
          problem={problems.name && t.nameNeeded}
        />
        {Object.keys(problems).length > 0 ? null : <ProblemSaid error={renaming.error} />}
        <button type="submit" className="btn" disabled={renaming.isPending}>
          {t.rename}
        </button>
      </Form>
    </details>
  );
}
