import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { State } from '../../ui/pieces.tsx';
import { Searched } from '../../ui/searched.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { sayDegrees } from './degrees.ts';
import { keepsStore, type Place, placesQuery } from './queries.ts';
import { usePlaceText } from './words.ts';

/** One's own places and the store's, each with how warm it is on the whole. */
export function Places() {
  const words = usePlaceText();
  const house = useHouse();
  const { storehouse, household } = house;
  const reading = useQuery(placesQuery({ storehouse }));
  useTitle(words.title);
  return (
    <>
      {household === null ? null : (
        <Link className="who" to="/s/$storehouse/shelf" params={{ storehouse }}>
          <BackIcon />
          {words.shelf}
        </Link>
      )}
      <h1>{words.title}</h1>
      <p>{words.opening}</p>
      <Loaded reading={reading}>
        {({ places }) => (
          <>
            <PlaceList title={words.own} places={places.filter(({ isStores }) => !isStores)} />
            <PlaceList title={words.stores} places={places.filter(({ isStores }) => isStores)} />
            {places.length === 0 ? <p className="soft">{words.none}</p> : null}
          </>
        )}
      </Loaded>
      {household === null && !keepsStore(house) ? null : (
        <div className="actions">
          <Link className="btn go" to="/s/$storehouse/places/new" params={{ storehouse }}>
            {words.add}
          </Link>
          <Link className="btn" to="/s/$storehouse/places/summer" params={{ storehouse }}>
            {words.summer}
          </Link>
        </div>
      )}
    </>
  );
}

function PlaceList({ title, places }: { title: string; places: readonly Place[] }) {
  const words = usePlaceText();
  const { storehouse } = useHouse();
  if (places.length === 0) return null;
  return (
    <section>
      <h2>{title}</h2>
      <Searched items={places} wordsOf={({ name, kind }) => `${name} ${words.kinds[kind] ?? kind}`}>
        {(shown) => (
          <ul className="list">
            {shown.map((place) => (
              <li key={place.id}>
                <Link to="/s/$storehouse/places/$place" params={{ storehouse, place: place.id }}>
                  <span>
                    <b>{place.name}</b>
                    <br />
                    <span className="soft">{words.kinds[place.kind] ?? place.kind}</span>
                  </span>
                  <WarmthState place={place} />
                </Link>
              </li>
            ))}
          </ul>
        )}
      </Searched>
    </section>
  );
}

/** How warm a place is, with a mark and a word: known and cool, warm, or not known. */
export function WarmthState({ place: { warmth } }: { place: Pick<Place, 'warmth'> }) {
  const words = usePlaceText();
  const { format } = useHouse();
  const degrees = sayDegrees(warmth.agesLikeTenths, format);
  if (warmth.unknownDays > 0) return <State kind="watch" word={words.notKnown} />;
  return warmth.isWarm ? (
    <State kind="watch" word={words.warm(degrees)} />
  ) : (
    <State kind="well" word={words.cool(degrees)} />
  );
}
