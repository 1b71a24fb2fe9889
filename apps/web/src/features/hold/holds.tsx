import { spellCode } from '@sheafbook/units';
import { useQuery } from '@tanstack/react-query';
import { Link, useNavigate } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { State } from '../../ui/pieces.tsx';
import { Searched } from '../../ui/searched.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { FindByLabel } from '../scan/find-by-label.tsx';
import { HoldFood } from './hold-food.tsx';
import { HoldPlace } from './hold-place.tsx';
import { aboutOf, type Hold, holdsQuery } from './queries.ts';
import { useHoldText } from './words.ts';

/** What is on hold, newest first, and what was. */
export function Holds() {
  const words = useHoldText();
  const { storehouse, duties } = useHouse();
  const mayHold = duties.includes('coordinator') || duties.includes('packing_lead');
  const reading = useQuery(holdsQuery({ storehouse }));
  const navigate = useNavigate();
  // The way of a container or bag names the holds that stand on it.
  const trace = (code: string) =>
    void navigate({ to: '/s/$storehouse/trace', params: { storehouse }, search: { code } });
  useTitle(words.title);
  return (
    <Loaded isPage reading={reading}>
      {(holds) => {
        const standing = holds.filter(({ endedAt }) => endedAt === null).toReversed();
        const past = holds.filter(({ endedAt }) => endedAt !== null).toReversed();
        return (
          <>
            <h1>{standing.length === 0 ? words.none : words.standing(standing.length)}</h1>
            <p>{words.opening}</p>
            <p>
              <Link className="btn" to="/s/$storehouse/trace" params={{ storehouse }}>
                {words.toTrace}
              </Link>
            </p>
            <FindByLabel onCode={trace} />
            <HoldList holds={standing} />
            {mayHold ? (
              <>
                <HoldFood />
                <HoldPlace />
              </>
            ) : null}
            {past.length === 0 ? null : (
              <section>
                <h2>{words.past}</h2>
                <HoldList holds={past} />
              </section>
            )}
          </>
        );
      }}
    </Loaded>
  );
}

function HoldList({ holds }: { holds: readonly Hold[] }) {
  const words = useHoldText();
  const { storehouse, format } = useHouse();
  return (
    <Searched
      items={holds}
      wordsOf={(hold) => `${words.scopes[hold.scope]} ${aboutOf(hold, format)} ${hold.sentence}`}
    >
      {(shown) => (
        <ul className="list">
          {shown.map(({ id, scope, about, aboutEs, bagCode, sentence, heldAt, endedAt }) => (
            <li key={id}>
              <Link to="/s/$storehouse/holds/$hold" params={{ storehouse, hold: id }}>
                <span>
                  <b>
                    {words.scopes[scope]}{' '}
                    {bagCode === null ? aboutOf({ about, aboutEs }, format) : spellCode(bagCode)}
                  </b>{' '}
                  <span className="soft block">{sentence}</span>
                  <span className="soft block">{words.since(format.instant(heldAt))}</span>
                </span>
                {endedAt === null ? (
                  <State kind="wrong" word={words.stands} />
                ) : (
                  <State kind="well" word={words.ended} />
                )}
              </Link>
            </li>
          ))}
        </ul>
      )}
    </Searched>
  );
}
