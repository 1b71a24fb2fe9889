import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { State } from '../../ui/pieces.tsx';
import { Searched } from '../../ui/searched.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { gives, type Pantry, pantriesQuery } from './queries.ts';
import { useGivingText } from './words.ts';

/** The pantries that the group knows, and how lately each was asked. */
export function Pantries() {
  const words = useGivingText();
  const house = useHouse();
  const { storehouse } = house;
  useTitle(words.pantries);
  return (
    <>
      <Link className="who" to="/s/$storehouse/giving" params={{ storehouse }}>
        <BackIcon />
        {words.title}
      </Link>
      <h1>{words.pantries}</h1>
      <Loaded reading={useQuery(pantriesQuery({ storehouse }))}>
        {({ pantries }) =>
          pantries.length === 0 ? (
            <p>{words.noPantries}</p>
          ) : (
            <Searched items={pantries} wordsOf={({ name, address }) => `${name} ${address}`}>
              {(shown) => (
                <ul className="list">
                  {shown.map((pantry) => (
                    <li key={pantry.id}>
                      <Link
                        to="/s/$storehouse/giving/pantries/$pantry"
                        params={{ storehouse, pantry: pantry.id }}
                      >
                        <span>
                          <b>{pantry.name}</b>
                          <br />
                          <span className="soft">{pantry.address}</span>
                        </span>
                        <AskedState pantry={pantry} />
                      </Link>
                    </li>
                  ))}
                </ul>
              )}
            </Searched>
          )
        }
      </Loaded>
      {gives(house) ? (
        <div className="actions">
          <Link className="btn go" to="/s/$storehouse/giving/pantries/new" params={{ storehouse }}>
            {words.addPantry}
          </Link>
        </div>
      ) : null}
    </>
  );
}

export function AskedState({ pantry }: { pantry: Pick<Pantry, 'isRetired' | 'isUnconfirmed' | 'card'> }) {
  const words = useGivingText();
  const { format } = useHouse();
  if (pantry.isRetired) return <State kind="watch" word={words.retired} />;
  return pantry.isUnconfirmed ? (
    <State kind="watch" word={words.unconfirmed} />
  ) : (
    <State kind="well" word={words.confirmed(format.day(pantry.card.confirmedOn))} />
  );
}
