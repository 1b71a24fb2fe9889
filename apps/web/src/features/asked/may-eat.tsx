import { spellCode } from '@sheafbook/units';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { coverageQuery } from '../../api/queries.ts';
import { Answer } from '../../ui/glance.tsx';
import { useHouse } from '../../ui/house.ts';
import { State } from '../../ui/pieces.tsx';
import { useNamed } from '../../ui/use-named.ts';
import { useFoodNames } from '../coverage/other-stock.tsx';
import type { Coverage } from '../home/coverage.ts';
import { type Queued, rotationQuery } from '../rotation/queries.ts';
import { eatersOfQuery } from '../shelf/queries.ts';
import { useAskedText } from './words.ts';

/** Question 9: who may not eat which food of all that is there, and of what is opened next also what its line ran before. */
export function MayEat() {
  const words = useAskedText();
  const { storehouse } = useHouse();
  const { data: coverage } = useQuery(coverageQuery({ storehouse }));
  const { data: rotation } = useQuery(rotationQuery({ storehouse }));
  if (!coverage) return null;
  const next = rotation?.queue.find(({ container }) => container !== null);
  return (
    <Answer ask={words.eat}>
      <OfAll coverage={coverage} />
      {next?.container ? <OfNext queued={next} container={next.container} /> : null}
    </Answer>
  );
}

function OfAll({ coverage }: { coverage: Coverage }) {
  const words = useAskedText();
  const nameOf = useFoodNames();
  const barred = coverage.eaters.flatMap(({ id, name }) => {
    const foods = coverage.byFood.filter(({ mayNotEat }) => mayNotEat.some((one) => one.id === id));
    return foods.length === 0 ? [] : [{ id, name, foods: foods.map(({ foodCode }) => nameOf(foodCode)) }];
  });
  if (barred.length === 0) return <State kind="well" word={words.allMay} />;
  return barred.map(({ id, name, foods }) => (
    <span key={id} className="block">
      <State kind="watch" word={words.mayNot(name, foods)} />
    </span>
  ));
}

type NextProps = { queued: Queued; container: NonNullable<Queued['container']> };

function OfNext({ queued, container }: NextProps) {
  const words = useAskedText();
  const { storehouse } = useHouse();
  const nameOf = useNamed();
  const { data } = useQuery(eatersOfQuery({ storehouse, container: container.id }));
  if (!data) return null;
  const { mayNotEat, mayHaveMet } = data;
  const said = [
    ...(mayNotEat.length === 0 ? [] : [words.notFor(mayNotEat.map(({ name }) => name))]),
    ...mayHaveMet.map(({ name, foods }) => words.careFor(name, foods.map(nameOf))),
  ];
  return (
    <span className="block">
      <Link to="/s/$storehouse/shelf/$container" params={{ storehouse, container: container.id }}>
        {words.nextOpen(`${nameOf(queued.food)}, ${spellCode(container.code)}`)}
      </Link>{' '}
      {said.length === 0 ? words.fine : said.join(' ')}
    </span>
  );
}
