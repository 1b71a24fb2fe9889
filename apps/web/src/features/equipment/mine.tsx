import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { ask } from '../../api/client.ts';
import { problemsOf } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { State } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import type { Food } from '../buy/run-queries.ts';
import { FoodsThrough } from './foods-through.tsx';
import { KeptAhead } from './kept-ahead.tsx';
import { LeftBehind } from './left-behind.tsx';
import { type Booking, inside, ownBookingsQuery, ownLoansQuery, readAnew } from './queries.ts';
import { useRelayAnswer } from './relay-answer.tsx';
import { useEquipmentText } from './words.ts';

/** What one's own household has out, has booked, is offered, is asked to hand on, and waits for. */
export function Mine() {
  const words = useEquipmentText();
  const { storehouse, format } = useHouse();
  const loans = useQuery(ownLoansQuery({ storehouse }));
  const bookings = useQuery(ownBookingsQuery({ storehouse }));
  const stop = useAct((waiting) =>
    ask(inside['equipment-waiting'][':waiting'].$delete({ param: { storehouse, waiting } })),
  );
  return (
    <section className="stack">
      <h2>{words.mine}</h2>
      <Loaded reading={joined(loans, bookings)}>
        {([{ loans: out }, { bookings: booked, asked, waiting }]) => {
          const others = booked.filter(({ state }) => state !== 'out');
          if (out.length + others.length + asked.length + waiting.length === 0)
            return <p className="soft">{words.nothingMine}</p>;
          return (
            <ul className="list">
              <KeptAhead out={out} booked={others} />
              {out.map((loan) => (
                <li key={loan.id} className="row place">
                  <span>
                    {words.haveOut(loan.itemName, format.instant(loan.dueAt))}{' '}
                    {Date.parse(loan.dueAt) < Date.now() ? <State kind="wrong" word={words.late} /> : null}
                  </span>
                  <Link
                    className="btn go"
                    to="/s/$storehouse/equipment/$item/loans/$loan"
                    params={{ storehouse, item: loan.itemId, loan: loan.id }}
                  >
                    {words.bringBack}
                  </Link>
                </li>
              ))}
              {asked.map((booking) => (
                <Asked key={booking.id} booking={booking} />
              ))}
              {others.map((booking) => (
                <Booked key={booking.id} booking={booking} />
              ))}
              {waiting.map((wish) => (
                <li key={wish.id} className="row place">
                  <span>
                    {words.waiting(wish.itemName, format.instant(wish.startsAt), format.instant(wish.endsAt))}
                  </span>
                  <button type="button" className="btn" onClick={() => stop.mutate(wish.id)}>
                    {words.stopWaiting}
                  </button>
                </li>
              ))}
            </ul>
          );
        }}
      </Loaded>
      <ProblemSaid error={stop.error} />
    </section>
  );
}

/** Something done to one thing by its id, after which everything of equipment is read anew. */
function useAct(act: (id: string) => Promise<unknown>) {
  const queries = useQueryClient();
  return useMutation({ mutationFn: act, onSettled: () => readAnew(queries) });
}

function Booked({ booking }: { booking: Booking }) {
  const words = useEquipmentText();
  const { storehouse, format } = useHouse();
  const param = { storehouse, booking: booking.id };
  const cancel = useAct(() => ask(inside.bookings[':booking'].cancelling.$post({ param })));
  const [through, setThrough] = useState<readonly Food[]>([]);
  const json = { foodIds: through.map(({ id }) => id) };
  const accept = useAct(() => ask(inside.bookings[':booking'].acceptance.$post({ param, json })));
  const [from, until] = [format.instant(booking.startsAt), format.instant(booking.endsAt)];
  const isOffered = booking.state === 'offered';
  return (
    <li className="stack">
      <p>
        {isOffered
          ? words.offered(booking.itemName, from, until, format.instant(booking.offeredUntil ?? ''))
          : words.booked(booking.itemName, from, until)}
      </p>
      {booking.state === 'asked' ? <p className="soft">{words.waitsForYes}</p> : null}
      {booking.relayAgreedAt === null ? null : <p className="soft">{words.relayAgreed}</p>}
      {booking.outUntil !== null && Date.parse(booking.outUntil) < Date.now() ? (
        <p>
          <State kind="watch" word={words.late} /> {words.outAndLate(format.instant(booking.outUntil))}
        </p>
      ) : null}
      <LeftBehind booking={booking} />
      {isOffered && !booking.areFoodsTold ? (
        <FoodsThrough foods={through} onChange={setThrough} problem={problemsOf(accept.error).foodIds} />
      ) : null}
      <div className="actions">
        {isOffered ? (
          <button type="button" className="btn go" onClick={() => accept.mutate(booking.id)}>
            {words.accept}
          </button>
        ) : null}
        {booking.state === 'booked' ? (
          <Link
            className="btn"
            to="/s/$storehouse/equipment/$item/bookings/$booking"
            params={{ ...param, item: booking.itemId }}
          >
            {words.take}
          </Link>
        ) : null}
        <button type="button" className="btn" onClick={() => cancel.mutate(booking.id)}>
          {isOffered ? words.decline : words.giveBack}
        </button>
      </div>
      <ProblemSaid error={cancel.error ?? accept.error} />
    </li>
  );
}

/** Somebody asks to take it straight from here. */
function Asked({ booking }: { booking: Booking }) {
  const words = useEquipmentText();
  const { format } = useHouse();
  const answer = useRelayAnswer(booking);
  if (booking.relayAgreedAt !== null) return null;
  return (
    <li className="stack">
      <p>{words.asked(booking.itemName, format.instant(booking.startsAt))}</p>
      <p className="soft">{words.askedWords}</p>
      <div className="actions">
        <button type="button" className="btn go" onClick={() => answer.mutate(true)}>
          {words.yes}
        </button>
        <button type="button" className="btn" onClick={() => answer.mutate(false)}>
          {words.no}
        </button>
      </div>
      <ProblemSaid error={answer.error} />
    </li>
  );
}
