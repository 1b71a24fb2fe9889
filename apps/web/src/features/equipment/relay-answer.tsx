import { mayStillVeto } from '@sheafbook/booking';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { ask } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { type Booking, inside, readAnew } from './queries.ts';
import { useEquipmentText } from './words.ts';

/** Yes or no to a thing being handed straight on. */
export function useRelayAnswer(booking: Booking) {
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (agrees: boolean) =>
      ask(
        inside.bookings[':booking']['relay-answer'].$post({
          param: { storehouse, booking: booking.id },
          json: { version: booking.version, agrees },
        }),
      ),
    onSettled: () => readAnew(queries),
  });
}

/** The keeper's no: to what was asked, and to what the two have agreed until a day before. */
export function Veto({ booking }: { booking: Booking }) {
  const words = useEquipmentText();
  const answer = useRelayAnswer(booking);
  const isAsked = booking.state === 'asked';
  const isAgreed = booking.state === 'booked' && booking.relayAgreedAt !== null;
  const inTime = mayStillVeto({ startMs: Date.parse(booking.startsAt) }, Date.now());
  if (!isAsked && !(isAgreed && inTime)) return null;
  return (
    <>
      <button type="button" className="btn" onClick={() => answer.mutate(false)}>
        {words.veto}
      </button>
      <ProblemSaid error={answer.error} />
    </>
  );
}
