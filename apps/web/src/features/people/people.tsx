import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { personsQuery } from '../../api/queries.ts';
import { Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { type Household, householdsQuery } from '../buy/run-queries.ts';
import { PaperHousehold } from './paper-household.tsx';
import { usePeopleText } from './words.ts';

type Person = { id: string; name: string; householdId: string | null; duties: readonly string[] };

/** Everyone who belongs here, household by household, with their duties. */
export function People() {
  const words = usePeopleText();
  const { storehouse, duties } = useHouse();
  useTitle(words.title);
  const households = useQuery(householdsQuery({ storehouse }));
  const persons = useQuery(personsQuery({ storehouse }));
  const isCoordinator = duties.includes('coordinator');
  return (
    <Loaded reading={joined(households, persons)}>
      {([all, people]) => {
        const here = all.filter(({ leftOn }) => leftOn === null);
        return (
          <>
            <h1>{words.stands(here.length, people.length)}</h1>
            <div className="actions">
              {isCoordinator ? (
                <Link className="btn go" to="/s/$storehouse/people/invitations" params={{ storehouse }}>
                  {words.invite}
                </Link>
              ) : null}
              <Link className="btn" to="/s/$storehouse/people/duties" params={{ storehouse }}>
                {words.dutyHistory}
              </Link>
              {isCoordinator || duties.includes('treasurer') ? (
                <Link className="btn" to="/s/$storehouse/handover" params={{ storehouse }}>
                  {words.handOver}
                </Link>
              ) : null}
              {isCoordinator || duties.includes('treasurer') ? (
                <Link className="btn" to="/s/$storehouse/settings" params={{ storehouse }}>
                  {words.settings}
                </Link>
              ) : null}
            </div>
            <PeopleList households={here} people={people} />
            {isCoordinator ? <PaperHousehold /> : null}
            {isCoordinator ? (
              <p>
                <Link to="/s/$storehouse/import" params={{ storehouse }}>
                  {words.fromSpreadsheets}
                </Link>
              </p>
            ) : null}
          </>
        );
      }}
    </Loaded>
  );
}

function PeopleList({ households, people }: { households: readonly Household[]; people: readonly Person[] }) {
  const words = usePeopleText();
  const { storehouse } = useHouse();
  const [wanted, setWanted] = useState('');
  const said = (person: Person) => [person.name, ...person.duties.map((duty) => words.duties[duty] ?? duty)];
  const rows = households.map((household) => {
    const members = people.filter(({ householdId }) => householdId === household.id);
    return { household, members, text: [household.name, ...members.flatMap(said)].join(' ').toLowerCase() };
  });
  const shown = rows.filter(({ text }) => text.includes(wanted.trim().toLowerCase()));
  const outside = people.filter(
    (person) =>
      person.householdId === null &&
      said(person).join(' ').toLowerCase().includes(wanted.trim().toLowerCase()),
  );
  return (
    <>
      <Field
        label={words.find}
        type="search"
        value={wanted}
        onChange={(event) => setWanted(event.target.value)}
      />
      {shown.length + outside.length === 0 ? <p role="status">{words.nothingFound}</p> : null}
      <ul className="list">
        {shown.map(({ household, members }) => (
          <li key={household.id}>
            <Link to="/s/$storehouse/people/$household" params={{ storehouse, household: household.id }}>
              <span>
                <b>{household.name}</b>
                <br />
                <span className="soft">{members.map((person) => said(person).join(', ')).join('; ')}</span>
              </span>
              <span className="soft">{words.seat(household.seat)}</span>
            </Link>
          </li>
        ))}
        {outside.map((person) => (
          <li key={person.id}>
            <p>
              <b>{words.noHousehold}</b>
              <br />
              <span className="soft">{said(person).join(', ')}</span>
            </p>
          </li>
        ))}
      </ul>
    </>
  );
}
