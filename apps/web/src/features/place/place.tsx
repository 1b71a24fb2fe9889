import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { ask } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { Figures, Ledger } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { Searched } from '../../ui/searched.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { sayDegrees } from './degrees.ts';
import { LogForm } from './log-form.tsx';
import { MonthsForm } from './months-form.tsx';
import { PlaceForm } from './place-form.tsx';
import { WarmthState } from './places.tsx';
import { inside, keepsStore, type PlaceRecord, placeQuery } from './queries.ts';
import { usePlaceText } from './words.ts';

/** A place: how warm it is, what is known of it by the month, and where that comes from. */
export function PlacePage() {
  const words = usePlaceText();
  const param = useParams({ from: '/s/$storehouse/places/$place' });
  const reading = useQuery(placeQuery(param));
  return (
    <>
      <Link className="who" to="/s/$storehouse/places" params={param}>
        <BackIcon />
        {words.title}
      </Link>
      <Loaded isPage reading={reading}>
        {(place) => <Sheet place={place} />}
      </Loaded>
    </>
  );
}

function Sheet({ place }: { place: PlaceRecord }) {
  const words = usePlaceText();
  const house = useHouse();
  const { format } = house;
  useTitle(place.name);
  const { warmth } = place;
  const mayChange = !place.isStores || keepsStore(house);
  const degrees = sayDegrees(warmth.agesLikeTenths, format);
  return (
    <>
      <div className="row">
        <h1>{place.name}</h1>
        <WarmthState place={place} />
      </div>
      <p>{warmth.unknownDays > 0 ? words.takenAs(degrees) : words.agesLike(degrees)}</p>
      <Figures
        rows={[
          { name: words.kind, value: words.kinds[place.kind] ?? place.kind },
          { name: words.readDays, value: words.ofTheYear(warmth.readDays) },
          ...loadFigures(place, words, format),
        ]}
      />
      {warmth.gapDays > 0 ? <p className="soft">{words.gaps(warmth.gapDays)}</p> : null}
      <Cautions place={place} />
      {mayChange ? (
        <>
          <MonthsForm place={place} />
          <LogForm place={place} />
        </>
      ) : null}
      <Months place={place} />
      <Logs place={place} mayChange={mayChange} />
      {mayChange ? (
        <details>
          <summary>{words.change}</summary>
          <PlaceForm key={place.version} place={place} />
        </details>
      ) : null}
    </>
  );
}

/** What its shelves carry; what stands there, and the room left, for whoever keeps it. */
function loadFigures(
  { mostGrams, loadGrams }: PlaceRecord,
  words: ReturnType<typeof usePlaceText>,
  format: ReturnType<typeof useHouse>['format'],
) {
  const carries = mostGrams === null ? [] : [{ name: words.carries, value: format.mass(mostGrams) }];
  const stands = loadGrams === null ? [] : [{ name: words.standsThere, value: format.mass(loadGrams) }];
  const hasRoom = mostGrams !== null && loadGrams !== null && loadGrams <= mostGrams;
  return [
    ...carries,
    ...stands,
    ...(hasRoom ? [{ name: words.room, value: format.mass(mostGrams - loadGrams) }] : []),
  ];
}

const isOverLoad = ({ mostGrams, loadGrams }: PlaceRecord) =>
  mostGrams !== null && loadGrams !== null && loadGrams > mostGrams;

/** What harms food in a place, said where it is so or where nobody knows. */
function Cautions({ place }: { place: PlaceRecord }) {
  const words = usePlaceText();
  const said = [
    ...(isOverLoad(place) ? [words.overLoad] : []),
    ...(place.warmth.isWarm && place.warmth.unknownDays === 0 ? [words.tooWarm] : []),
    ...(place.isDamp ? [words.damp] : []),
    ...(place.isLit ? [words.lit] : []),
    ...(place.isRodentProof === false ? [words.rodents] : []),
  ];
  return said.map((text) => (
    <p key={text} className="said watch-said">
      {text}
    </p>
  ));
}

type Month = PlaceRecord['months'][number];
const hasSpread = ({ coldestTenths, warmestTenths }: Month) => coldestTenths !== warmestTenths;

function Months({ place }: { place: PlaceRecord }) {
  const words = usePlaceText();
  const { format } = useHouse();
  if (place.months.length === 0) return null;
  const newest = [...place.months].reverse();
  const nameOf = ({ month }: Month) => format.monthOf(month);
  const hasEnds = newest.some(hasSpread); // a typed month is one figure
  const spreadOf = ({ coldestTenths, warmestTenths }: Month) =>
    `${sayDegrees(coldestTenths, format)} – ${sayDegrees(warmestTenths, format)}`;
  return (
    <section className="stack">
      <h2>{words.record}</h2>
      <Searched items={newest} wordsOf={(row) => `${row.month} ${nameOf(row)}`}>
        {(shown) => (
          <Ledger
            caption={words.record}
            columns={[
              { name: words.month },
              { name: words.agesLikeShort, isNumber: true },
              ...(hasEnds ? [{ name: words.ends, isNumber: true }] : []),
            ]}
            rows={shown.map((row) => ({
              key: row.month,
              cells: [
                <span key="month">
                  {nameOf(row)}
                  <span className="soft block">
                    {row.isTyped ? words.typed : words.readings(format.count(row.readings))}
                  </span>
                </span>,
                sayDegrees(row.agesLikeTenths, format),
                ...(hasEnds ? [hasSpread(row) ? spreadOf(row) : ''] : []),
              ],
            }))}
          />
        )}
      </Searched>
    </section>
  );
}

function Logs({ place, mayChange }: { place: PlaceRecord; mayChange: boolean }) {
  const words = usePlaceText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const removing = useMutation({
    mutationFn: (log: string) =>
      ask(inside.places[':place'].logs[':log'].$delete({ param: { storehouse, place: place.id, log } })),
    onSuccess: () => queries.invalidateQueries({ queryKey: ['places'] }),
  });
  if (place.logs.length === 0) return null;
  return (
    <section className="stack">
      <h2>{words.files}</h2>
      <ul className="list">
        {place.logs.map((log) => (
          <li key={log.id} className="row">
            <span>
              <b>{log.fileName}</b>
              <br />
              <span className="soft">
                {words.fileSays(
                  format.count(log.readings),
                  format.day(log.firstOn),
                  format.day(log.lastOn),
                  log.badLines,
                )}
              </span>
            </span>
            {mayChange ? (
              <button
                type="button"
                className="btn quiet"
                disabled={removing.isPending}
                aria-label={words.takeBackNamed(log.fileName)}
                onClick={() => removing.mutate(log.id)}
              >
                {words.takeBack}
              </button>
            ) : null}
          </li>
        ))}
      </ul>
      <ProblemSaid error={removing.error} />
    </section>
  );
}
