import { useHouse } from '../../ui/house.ts';
import type { Booking, Desk } from './queries.ts';
import { useEquipmentText } from './words.ts';

/** Each thing as one line from hand to hand: who has it from when, fetched at the store or handed straight on. */
export function HandToHand({ desk }: { desk: Desk }) {
  const words = useEquipmentText();
  const lines = linesOf(desk);
  if (lines.length === 0) return null;
  return (
    <section className="stack">
      <h2>{words.linesTitle}</h2>
      <p className="soft">{words.linesWords}</p>
      {lines.map(({ name, chain }) => (
        <div key={name}>
          <h3>{name}</h3>
          <Chain chain={chain} />
        </div>
      ))}
    </section>
  );
}

function Chain({ chain }: { chain: readonly Booking[] }) {
  const words = useEquipmentText();
  const { format } = useHouse();
  const nameOf = (booking: Booking | undefined) => booking?.household?.name ?? words.somebody;
  return (
    <ol className="chain">
      {chain.map((booking, at) => {
        const before = chain[at - 1];
        const after = chain[at + 1];
        const isHanded = booking.relayAgreedAt !== null && booking.relayFromId === before?.id;
        const goesOn = after?.relayAgreedAt !== null && after?.relayFromId === booking.id;
        return (
          <li key={booking.id}>
            {isHanded
              ? words.fromHand(nameOf(before), nameOf(booking), format.instant(booking.startsAt))
              : words.fromStore(nameOf(booking), format.instant(booking.startsAt))}
            {goesOn ? null : `; ${words.toStore(nameOf(booking), format.instant(booking.endsAt))}`}
          </li>
        );
      })}
    </ol>
  );
}

/** Pieces that pass through more than one pair of hands, the earliest first. */
function linesOf(desk: Desk): { name: string; chain: Booking[] }[] {
  const byUnit = new Map<string, Booking[]>();
  for (const booking of desk.bookings)
    if (booking.purpose === 'loan' && (booking.state === 'booked' || booking.state === 'out'))
      byUnit.set(booking.unitId, [...(byUnit.get(booking.unitId) ?? []), booking]);
  return [...byUnit.values()]
    .filter((chain) => chain.length > 0)
    .map((chain) => ({ name: `${chain[0]?.itemName} ${chain[0]?.unitNo}`, chain }));
}
