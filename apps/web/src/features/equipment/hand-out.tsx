import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { askOnce } from '../../api/client.ts';
import { ApiProblem } from '../../api/problem.ts';
import { Check, Choice, Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { Cautions } from './cautions.tsx';
import { type Booking, type Item, inside, itemBookingsQuery, itemQuery, readAnew } from './queries.ts';
import { Swap } from './swap.tsx';
import { type Ticked, Ticks, ticksOf } from './ticks.tsx';
import { useEquipmentText } from './words.ts';

/** A booked thing goes out, from the store or straight from whoever has it: its parts are counted by who takes it. */
export function HandOut() {
  const words = useEquipmentText();
  const { storehouse, item, booking } = useParams({
    from: '/s/$storehouse/equipment/$item/bookings/$booking',
  });
  const reading = joined(
    useQuery(itemQuery({ storehouse, item })),
    useQuery(itemBookingsQuery({ storehouse, item })),
  );
  return (
    <Loaded reading={reading}>
      {([thing, { bookings }]) => {
        const mine = bookings.find(({ id }) => id === booking);
        return (
          <>
            <Link className="who" to="/s/$storehouse/equipment/$item" params={{ storehouse, item }}>
              <BackIcon />
              {thing.name}
            </Link>
            {mine?.state === 'booked' ? (
              <GoingForm item={thing} booking={mine} />
            ) : (
              <h1>{mine?.state === 'out' ? words.gone : words.nothingOwed}</h1>
            )}
          </>
        );
      }}
    </Loaded>
  );
}

function GoingForm({ item, booking }: { item: Item; booking: Booking }) {
  const words = useEquipmentText();
  const { storehouse, format, duties, personName, household } = useHouse();
  const queries = useQueryClient();
  const isRelay = booking.relayAgreedAt !== null;
  const keeps = duties.includes('equipment_keeper') || duties.includes('coordinator');
  const [ticked, setTicked] = useState<Ticked>({});
  const [takenBy, setTakenBy] = useState(booking.household?.id === household ? personName : '');
  const [broughtBy, setBroughtBy] = useState('');
  const [isCleaned, setIsCleaned] = useState(false);
  const [depositFrom, setDepositFrom] = useState('balance');
  const [isAsked, setIsAsked] = useState(false);
  const parts = item.parts.map(({ id, name, pieces }) => ({ id, name, most: pieces }));
  const ticks = ticksOf(parts, ticked);
  const isReady =
    ticks !== null && takenBy.trim() !== '' && (!isRelay || (broughtBy.trim() !== '' && isCleaned));
  const param = { storehouse, booking: booking.id };
  const going = useMutation({
    mutationFn: async () => {
      if (ticks === null) return;
      if (isRelay) {
        const json = { parts: ticks, takenBy, broughtBy, isCleaned: true as const };
        await askOnce(`relay ${booking.id}`, json, (header) =>
          inside.bookings[':booking'].relay.$post({ param, json }, { headers: header }),
        );
      } else {
        const json = { parts: ticks, takenBy, depositFrom: depositFrom as 'balance' | 'cash' | 'bank' };
        await askOnce(`loan ${booking.id}`, json, (header) =>
          inside.bookings[':booking'].loan.$post({ param, json }, { headers: header }),
        );
      }
    },
    onSuccess: () => readAnew(queries),
  });
  const title = isRelay ? words.relayTitle(item.name) : words.handOutTitle(item.name);
  useTitle(title);
  const isStillOut = going.error instanceof ApiProblem && going.error.code === 'equipment-unfit' && !isRelay;
  return (
    <form
      className="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        setIsAsked(true);
        if (isReady) going.mutate();
      }}
    >
      <h1>{title}</h1>
      <p>
        {words.forWhom(
          booking.household?.name ?? words.somebody,
          format.instant(booking.startsAt),
          format.instant(booking.endsAt),
        )}
        {' · '}
        {words.unitCode(booking.unitNo, booking.unitCode)}
      </p>
      <Cautions item={item} />
      {parts.length === 0 ? null : <h2>{words.tickOut}</h2>}
      <Ticks parts={parts} ticked={ticked} onChange={setTicked} />
      <Field
        label={words.takenBy}
        value={takenBy}
        onChange={(event) => setTakenBy(event.target.value)}
        problem={isAsked && takenBy.trim() === '' ? words.nameProblem : undefined}
      />
      {isRelay ? (
        <>
          <Field
            label={words.broughtBy}
            value={broughtBy}
            onChange={(event) => setBroughtBy(event.target.value)}
            problem={isAsked && broughtBy.trim() === '' ? words.nameProblem : undefined}
          />
          <Check label={words.isCleaned} isOn={isCleaned} onChange={setIsCleaned} />
        </>
      ) : null}
      {item.depositMinorUnits > 0 ? (
        <>
          <p>{words.depositIs(`${format.money(item.depositMinorUnits)} ${format.currency}`)}</p>
          {keeps && !isRelay ? (
            <Choice
              label={words.depositFrom}
              value={depositFrom}
              options={Object.entries(words.money).map(([value, name]) => ({ value, name }))}
              onChange={setDepositFrom}
            />
          ) : null}
        </>
      ) : null}
      <ProblemSaid error={going.error} />
      <div>
        <button type="submit" className="btn go" disabled={going.isPending}>
          {isRelay ? words.handOn : words.handOut}
        </button>
      </div>
      {isStillOut ? <Swap booking={booking} /> : null}
    </form>
  );
}
