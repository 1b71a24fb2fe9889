import { useMutation, useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { api, ask } from '../../api/client.ts';
import { useText } from '../../text/taste.ts';
import { useHouse, useOwnHousehold } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { Searched } from '../../ui/searched.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { OwnContact } from './contact.tsx';
import { Helpers } from './helpers.tsx';
import { Leaving } from './leaving.tsx';
import { usePeopleText } from './words.ts';

const households = api.storehouses[':storehouse'].households[':household'];

/** What is the household's own: who may see it, who looked, and how to take it along. */
export function Private() {
  const t = useText();
  const words = usePeopleText();
  const { storehouse, household } = useHouse();
  useTitle(words.privateLink);
  return (
    <>
      <Link className="who" to="/s/$storehouse/household" params={{ storehouse }}>
        <BackIcon />
        {t.household}
      </Link>
      <h1>{household === null ? t.noHousehold : words.privateTitle}</h1>
      {household === null ? null : (
        <div className="cols">
          <div className="stack">
            <OwnContact />
            <Helpers household={household} />
          </div>
          <div className="stack">
            <Looks />
            <TakeAlong />
            <OwnLeaving />
          </div>
        </div>
      )}
    </>
  );
}

function Looks() {
  const words = usePeopleText();
  const { format } = useHouse();
  const param = useOwnHousehold();
  const looks = useQuery({
    queryKey: ['private-reads', param],
    queryFn: async () =>
      (await ask(households['private-reads'].$get({ param, query: { limit: 'all' } }))).privateReads,
  });
  return (
    <section>
      <h2>{words.looks}</h2>
      <Loaded reading={looks}>
        {(privateReads) =>
          privateReads.length === 0 ? (
            <p>{words.noLooks}</p>
          ) : (
            <Searched
              items={privateReads}
              wordsOf={({ readerName, lookedAt, lookedFor }) => words.looked(readerName, lookedAt, lookedFor)}
            >
              {(shown) => (
                <ul className="list">
                  {shown.map((read) => (
                    <li key={read.id}>
                      {words.looked(read.readerName, read.lookedAt, read.lookedFor)}
                      <br />
                      <span className="soft">{format.instant(read.readAt)}</span>
                    </li>
                  ))}
                </ul>
              )}
            </Searched>
          )
        }
      </Loaded>
    </section>
  );
}

/** One JSON document; the book's API has each table as CSV as well. */
function TakeAlong() {
  const words = usePeopleText();
  const param = useOwnHousehold();
  const taking = useMutation({
    mutationFn: async () => {
      const taken = await ask(households['take-along'].$get({ param, query: {} }));
      const file = new Blob([JSON.stringify(taken, null, 2)], { type: 'application/json' });
      const anchor = document.createElement('a');
      anchor.href = URL.createObjectURL(file);
      anchor.download = 'sheafbook-household.json';
      anchor.click();
      URL.revokeObjectURL(anchor.href);
    },
  });
  return (
    <section className="stack">
      <h2>{words.takeAlong}</h2>
      <p>{words.takeAlongWords}</p>
      <ProblemSaid error={taking.error} />
      <div>
        <button type="button" className="btn" disabled={taking.isPending} onClick={() => taking.mutate()}>
          {words.download}
        </button>
      </div>
    </section>
  );
}

function OwnLeaving() {
  const param = useOwnHousehold();
  const own = useQuery({ queryKey: ['household', param], queryFn: () => ask(households.$get({ param })) });
  return (
    <Loaded reading={own}>{({ id, name, version }) => <Leaving household={{ id, name, version }} />}</Loaded>
  );
}
