import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { personsQuery } from '../../api/queries.ts';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { Searched } from '../../ui/searched.tsx';
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
    <Loaded isPage reading={joined(households, persons)}>
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
  const said = (person: Person) => [person.name, ...person.duties.map((duty) => words.duties[duty] ?? duty)];
  const rows = [
    ...households.map((household) => ({
      household,
      members: people.filter(({ householdId }) => householdId === household.id),
    })),
    ...people
      .filter(({ householdId }) => householdId === null)
      .map((person) => ({ household: null, members: [person] })),
  ];
  return (
    <Searched
      items={rows}
      wordsOf={({ household, members }) => [household?.name ?? '', ...members.flatMap(said)].join(' ')}
      find={words.find}
      none={words.nothingFound}
    >
      {(shown) => (
        <ul className="list">
          {shown.map(({ household, members }) => {
            const who = members.map((person) => said(person).join(', ')).join('; ');
            return household === null ? (
              <li key={members[0]?.id}>
                <p>
                  <b>{words.noHousehold}</b>
                  <br />
                  <span className="soft">{who}</span>
                </p>
              </li>
            ) : (
              <li key={household.id}>
                <Link to="/s/$storehouse/people/$household" params={{ storehouse, household: household.id }}>
                  <span>
                    <b>{household.name}</b>
                    <br />
                    <span className="soft">{who}</span>
                  </span>
                  <span className="soft">{words.seat(household.seat)}</span>
                </Link>
              </li>
            );
          })}
        </ul>
      )}
    </Searched>
  );
}
