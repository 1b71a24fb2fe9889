import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { State } from '../../ui/pieces.tsx';
import { Searched } from '../../ui/searched.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { OfWhose } from '../place/of-whose.tsx';
import type { Whose } from '../place/queries.ts';
import { type Intakes, intakesQuery } from './queries.ts';
import { useIntakeText } from './words.ts';

/** What was given and taken in, with what is known of it; who gave it stands nowhere here. */
export function TakenInPage() {
  const words = useIntakeText();
  useTitle(words.title);
  return (
    <OfWhose
      back={{ to: '/s/$storehouse/shelf', name: words.shelf }}
      label={words.whose}
      owners={words.owners}
    >
      {(of) => <List of={of} />}
    </OfWhose>
  );
}

function List({ of }: { of: Whose }) {
  const words = useIntakeText();
  const { storehouse } = useHouse();
  const reading = useQuery(intakesQuery({ storehouse }, of));
  return (
    <Loaded isPage reading={reading}>
      {({ intakes }) => (
        <>
          <h1>{words.stands(intakes.length)}</h1>
          <p>{words.listWords}</p>
          <Link className="btn go" to="/s/$storehouse/intakes/new" params={{ storehouse }}>
            {words.begin}
          </Link>
          <Searched
            items={intakes}
            wordsOf={({ food, mark, note }) => `${food.nameEn} ${food.nameEs} ${mark ?? ''} ${note ?? ''}`}
          >
            {(shown) => (
              <ul className="list">
                {shown.map((one) => (
                  <TakenIn key={one.lotId} taken={one} />
                ))}
              </ul>
            )}
          </Searched>
        </>
      )}
    </Loaded>
  );
}

function TakenIn({ taken }: { taken: Intakes['intakes'][number] }) {
  const words = useIntakeText();
  const { format } = useHouse();
  const { food, packedOn, mark, reasons, verdict, note, takenAt } = taken;
  return (
    <li>
      <span>
        <b>{nameIn(format.language, food)}</b>{' '}
        {verdict === 'known' ? null : <State kind="watch" word={words.unknownHistory} />}
        <span className="soft block">
          {[
            words.takenOn(format.day(takenAt.slice(0, 10))),
            packedOn === null ? '' : words.packedOn(format.day(packedOn)),
            mark,
            ...reasons.map(({ say }) => say[format.language]),
            note,
          ]
            .filter(Boolean)
            .join(' · ')}
        </span>
      </span>
    </li>
  );
}
