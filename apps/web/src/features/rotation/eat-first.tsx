import { spellCode } from '@sheafbook/units';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import { useEatFirstText } from './eat-first-words.ts';
import { rotationQuery } from './queries.ts';

/** What a household should eat first, in one line with the way to the rest. */
export function EatFirst() {
  const words = useEatFirstText();
  const { storehouse, format } = useHouse();
  const { data } = useQuery(rotationQuery({ storehouse }));
  const first = data?.queue[0];
  if (!data || !first) return null;
  const name = nameIn(format.language, first.food);
  const what =
    first.container === null ? words.ofKitchen(name) : `${name}, ${spellCode(first.container.code)}`;
  return (
    <section>
      <h2>{words.eatFirst}</h2>
      <p>
        <b>{what}</b>{' '}
        <span className="soft">
          {[
            format.mass(first.grams),
            first.place?.name,
            first.daysLeft === null ? null : words.keeps(first.daysLeft, first.pastDays),
          ]
            .filter(Boolean)
            .join(' · ')}
        </span>
      </p>
      {data.risk.grams === 0 ? null : <p>{words.atRisk(format.mass(data.risk.grams))}</p>}
      <Link className="btn" to="/s/$storehouse/rotation" params={{ storehouse }}>
        {words.seeAll}
      </Link>
    </section>
  );
}
