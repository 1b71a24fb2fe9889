import { useHouse } from '../../ui/house.ts';
import { WrongMark } from '../../ui/icons.tsx';
import { Ledger } from '../../ui/pieces.tsx';
import { kindNamed, type Matching, named } from './queries.ts';
import { useGivingText } from './words.ts';
import './matching.css';

type Lot = Matching['lots'][number];
type Trip = Matching['trips'][number];

/** What goes where as a grid: what each trip takes of each food, drawn can by can, or every rule of the card that says no. */
export function MatchingGrid({ matching }: { matching: Matching }) {
  const words = useGivingText();
  const { format } = useHouse();
  const { lots, trips } = matching;
  if (lots.length === 0) return null;
  const leftGrams = lots.reduce((sum, lot) => sum + lot.left * lot.containerGrams, 0);
  return (
    <section className="stack matching-grid">
      <h2>{words.why}</h2>
      <Ledger
        caption={words.why}
        columns={[
          { name: words.food },
          ...trips.map(({ pantry, onDay }) => ({ name: `${pantry}, ${format.shortDay(onDay)}` })),
          { name: words.stays },
        ]}
        rows={[
          ...lots.map((lot, at) => ({
            key: lot.containers[0]?.id ?? '',
            cells: [
              <span key="what">
                {named(lot, format.language)}
                <span className="soft block">
                  {lot.containers.length} × {kindNamed(lot, format.language)}
                </span>
                {lot.eatFirstOn === null ? null : (
                  <span className="soft block">{words.eatFirstBy(format.day(lot.eatFirstOn))}</span>
                )}
              </span>,
              ...trips.map((trip, tripNo) => (
                <OnTrip key={`${trip.pantryId} ${trip.onDay}`} lot={lot} at={at} trip={trip} no={tripNo} />
              )),
              lot.left === 0 ? '' : <Cans key="left" count={lot.left} grams={lot.containerGrams} isLeft />,
            ],
          })),
          {
            key: 'sum',
            isSum: true,
            cells: [
              words.total,
              ...trips.map(({ grams, roomGrams }) =>
                words.ofRoom(format.mass(grams), format.mass(roomGrams)),
              ),
              format.mass(leftGrams),
            ],
          },
        ]}
      />
    </section>
  );
}

function OnTrip({ lot, at, trip, no }: { lot: Lot; at: number; trip: Trip; no: number }) {
  const words = useGivingText();
  const refusals = lot.refusals[no] ?? [];
  const count = trip.loads.find((load) => load.lot === at)?.containers.length ?? 0;
  if (count > 0) return <Cans count={count} grams={lot.containerGrams} />;
  if (refusals.length === 0)
    return <span className="soft">{lot.left > 0 ? words.noRoom : words.notNeeded}</span>;
  return (
    <ul className="refusals">
      {refusals.map((refusal) => (
        <li key={refusal}>
          <WrongMark />
          {words.refusals[refusal] ?? refusal}
        </li>
      ))}
    </ul>
  );
}

type CansProps = { count: number; grams: number; isLeft?: boolean };

/** So many containers as one sees them on the shelf; more than a row of them takes are told by the figures alone. */
function Cans({ count, grams, isLeft = false }: CansProps) {
  const words = useGivingText();
  const { format } = useHouse();
  return (
    <span className={isLeft ? 'cans left' : 'cans'}>
      <b>{format.mass(count * grams)}</b>
      <span className="soft block">{words.containers(count)}</span>
      {count > MOST_DRAWN ? null : (
        <span className="marks" aria-hidden="true">
          {Array.from({ length: count }, (_, position) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: one mark is like the other
            <i key={position} />
          ))}
        </span>
      )}
    </span>
  );
}

const MOST_DRAWN = 24;
