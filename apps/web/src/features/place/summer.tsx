import { useQuery } from '@tanstack/react-query';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { Ledger } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { OfWhose } from './of-whose.tsx';
import { type HotPlaces, hotPlacesQuery, type Whose } from './queries.ts';
import { usePlaceText } from './words.ts';

type Hot = HotPlaces['places'][number];

/** What the last summer cost in each place, and what carrying food to a cooler one would give back. */
export function SummerPage() {
  const words = usePlaceText();
  useTitle(words.summer);
  return (
    <OfWhose
      back={{ to: '/s/$storehouse/places', name: words.title }}
      label={words.summerOf}
      owners={words.summerOwners}
    >
      {(of) => <HotPlacesOf of={of} />}
    </OfWhose>
  );
}

function HotPlacesOf({ of }: { of: Whose }) {
  const { storehouse } = useHouse();
  const reading = useQuery(hotPlacesQuery({ storehouse }, of));
  return (
    <Loaded isPage reading={reading}>
      {({ places }) => <Summer places={places} />}
    </Loaded>
  );
}

function Summer({ places }: { places: readonly Hot[] }) {
  const words = usePlaceText();
  const [worst] = places;
  const movable = places.filter(({ cooler, standing }) => cooler !== null && standing.count > 0);
  const isCostly = worst !== undefined && worst.lostDays > 0;
  return (
    <>
      <h1>{isCostly ? words.summerStands(worst.place?.name ?? '', worst.lostDays) : words.summerNothing}</h1>
      <p>{worst === undefined ? words.summerNone : words.summerWords}</p>
      {worst === undefined ? null : <Lost places={places} />}
      {movable.length === 0 ? null : (
        <section className="stack">
          <h2>{words.moving}</h2>
          {movable.map((hot) => (
            <Moving key={hot.place?.id} hot={hot} />
          ))}
          <p className="said">{words.liftCaution}</p>
        </section>
      )}
    </>
  );
}

function Lost({ places }: { places: readonly Hot[] }) {
  const words = usePlaceText();
  const { format } = useHouse();
  return (
    <Ledger
      caption={words.summer}
      columns={[
        { name: words.summerPlace },
        { name: words.summerUsed, isNumber: true },
        { name: words.summerLost, isNumber: true },
      ]}
      rows={places.map(({ place, startsOn, endsOn, isMeasured, usedDays, lostDays }) => ({
        key: place?.id ?? '',
        cells: [
          <span key="place">
            {place?.name}
            <span className="soft block">
              {isMeasured ? words.summerWhen(format.day(startsOn), format.day(endsOn)) : words.notRead}
            </span>
          </span>,
          format.count(usedDays),
          format.count(lostDays),
        ],
      }))}
    />
  );
}

function Moving({ hot: { place, cooler, gains } }: { hot: Hot }) {
  const words = usePlaceText();
  const { format } = useHouse();
  return (
    <>
      <h3>{words.movingTo(place?.name ?? '', cooler?.name ?? '')}</h3>
      {gains.length === 0 ? <p>{words.nothingToMove}</p> : null}
      <ul className="list">
        {gains.map(({ food, count, grams, leastDays, mostDays }) => (
          <li key={food.code}>
            <span>
              <b>{words.movingFood(nameIn(format.language, food), count, format.mass(grams))}</b>
              <span className="soft block">{words.gains(leastDays, mostDays)}</span>
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}
