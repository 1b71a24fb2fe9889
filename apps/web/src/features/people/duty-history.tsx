import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { Ledger } from '../../ui/pieces.tsx';
import { Searched } from '../../ui/searched.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { dutiesQuery } from './queries.ts';
import { usePeopleText } from './words.ts';

/** Who held which duty from when to when; its dates are kept when it ends. */
export function DutyHistory() {
  const words = usePeopleText();
  const { storehouse, format } = useHouse();
  useTitle(words.dutyHistory);
  const list = useQuery(dutiesQuery({ storehouse }));
  return (
    <>
      <Link className="who" to="/s/$storehouse/people" params={{ storehouse }}>
        <BackIcon />
        {words.toPeople}
      </Link>
      <h1>{words.dutiesTitle}</h1>
      <Loaded reading={list}>
        {({ duties: held }) =>
          held.length === 0 ? (
            <p>{words.noDuties}</p>
          ) : (
            <Searched
              items={held}
              wordsOf={({ personName, duty }) => `${personName} ${words.duties[duty] ?? duty}`}
            >
              {(shown) => (
                <Ledger
                  caption={words.dutiesTitle}
                  columns={[
                    { name: words.person },
                    { name: words.duty },
                    { name: words.from },
                    { name: words.to },
                  ]}
                  rows={shown.map((grant) => ({
                    key: grant.id,
                    cells: [
                      grant.personName,
                      words.duties[grant.duty] ?? grant.duty,
                      format.day(grant.grantedAt.slice(0, 10)),
                      grant.endedAt === null
                        ? [words.today, grant.endsOn && words.meantToEnd(format.day(grant.endsOn))]
                            .filter(Boolean)
                            .join('; ')
                        : format.day(grant.endedAt.slice(0, 10)),
                    ],
                  }))}
                />
              )}
            </Searched>
          )
        }
      </Loaded>
    </>
  );
}
