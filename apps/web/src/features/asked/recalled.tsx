import { spellCode, sumOf } from '@sheafbook/units';
import { useQueries, useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { Answer } from '../../ui/glance.tsx';
import { useHouse } from '../../ui/house.ts';
import { State } from '../../ui/pieces.tsx';
import { aboutOf, type Hold, holdsQuery, type OwnPart, ownPartQuery } from '../hold/queries.ts';
import { useAskedText } from './words.ts';

/** Question 7, of every hold that stands: by its way, so bags, cans and one's kitchen alike. */
export function Recalled() {
  const words = useAskedText();
  const { storehouse } = useHouse();
  const { data } = useQuery(holdsQuery({ storehouse }));
  const standing = (data ?? []).filter(({ endedAt }) => endedAt === null);
  const parts = useQueries({ queries: standing.map(({ id }) => ownPartQuery({ storehouse, hold: id })) });
  if (!data || parts.some(({ data: part }) => part === undefined)) return null;
  const concerning = standing.flatMap((hold, at) => {
    const part = parts[at]?.data;
    return part?.isConcerned ? [{ hold, part }] : [];
  });
  return (
    <Answer ask={words.recall}>
      {concerning.length === 0 ? (
        <State kind="well" word={standing.length === 0 ? words.noRecall : words.notOurs(standing.length)} />
      ) : (
        concerning.map(({ hold, part }) => <Ours key={hold.id} hold={hold} part={part} />)
      )}
    </Answer>
  );
}

function Ours({ hold, part }: { hold: Hold; part: OwnPart }) {
  const words = useAskedText();
  const { storehouse, format } = useHouse();
  const grams = sumOf(part.held.map((one) => one.grams));
  const codes = part.held.map(({ code }) => (code === '' ? words.ourKitchen : spellCode(code))).join(', ');
  const about = hold.bagCode === null ? aboutOf(hold, format) : spellCode(hold.bagCode);
  return (
    <span className="block">
      <Link to="/s/$storehouse/holds/$hold" params={{ storehouse, hold: hold.id }}>
        {grams === 0 ? (
          words.wasOurs(about)
        ) : (
          <State kind="wrong" word={words.ours(about, format.mass(grams), codes)} />
        )}
      </Link>
    </span>
  );
}
