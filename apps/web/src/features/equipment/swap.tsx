import { queryOptions, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { ask } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { type Booking, inside, readAnew } from './queries.ts';
import { useEquipmentText } from './words.ts';

/** The one before has it still: the same kind of piece that is here, or when one is free next. */
export function Swap({ booking }: { booking: Booking }) {
  const words = useEquipmentText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const param = { storehouse, booking: booking.id };
  const shown = useQuery(
    queryOptions({
      queryKey: ['equipment', 'swap', param],
      queryFn: () => ask(inside.bookings[':booking'].swap.$get({ param })),
    }),
  );
  const swap = useMutation({
    mutationFn: () =>
      ask(inside.bookings[':booking'].swap.$post({ param, json: { version: booking.version } })),
    onSettled: () => readAnew(queries),
  });
  return (
    <section className="stack">
      <h2>{words.swapTitle}</h2>
      <Loaded reading={shown}>
        {({ swap: other, freeTimes }) =>
          other ? (
            <>
              <p>{words.swapOther(other.unitNo, other.code)}</p>
              <div>
                <button type="button" className="btn go" onClick={() => swap.mutate()}>
                  {words.swapTake}
                </button>
              </div>
            </>
          ) : (
            <>
              <p>{freeTimes.length > 0 ? words.swapNone : words.swapNever}</p>
              <ul>
                {freeTimes.map(({ startsAt, endsAt, unitNo }) => (
                  <li key={`${startsAt} ${unitNo}`}>
                    {words.freeFrom(format.instant(startsAt), format.instant(endsAt))}
                  </li>
                ))}
              </ul>
            </>
          )
        }
      </Loaded>
      <ProblemSaid error={swap.error} />
    </section>
  );
}
