import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { Check, Choice, Field } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { Cautions } from './cautions.tsx';
import { LeftBehind } from './left-behind.tsx';
import { PhotosOfGone } from './photos-of-item.tsx';
import { type Booking, type Item, itemBookingsQuery, itemQuery } from './queries.ts';
import { Swap } from './swap.tsx';
import { type Ticked, Ticks, ticksOf } from './ticks.tsx';
import { useCounter } from './use-counter.ts';
import { useEquipmentText } from './words.ts';
import { WrittenDown } from './written-down.tsx';

/** A booked thing goes out, from the store or straight from whoever has it: its parts are counted by who takes it. */
export function HandOut() {
  const words = useEquipmentText();
  const { storehouse, item, booking } = useParams({
    from: '/s/$storehouse/equipment/$item/bookings/$booking',
  });
  const counter = useCounter(booking);
  const reading = joined(
    useQuery(itemQuery({ storehouse, item })),
    useQuery(itemBookingsQuery({ storehouse, item })),
  );
  return (
    <Loaded isPage reading={reading}>
      {([thing, { bookings }]) => {
        const mine = bookings.find(({ id }) => id === booking);
        return (
          <>
            <Link className="who" to="/s/$storehouse/equipment/$item" params={{ storehouse, item }}>
              <BackIcon />
              {thing.name}
            </Link>
            {counter.waits ? (
              <WrittenDown />
            ) : mine?.state === 'booked' ? (
              <GoingForm item={thing} booking={mine} counter={counter} />
            ) : (
              <>
                <h1>{mine?.state === 'out' ? words.gone : words.nothingOwed}</h1>
                {mine?.state === 'out' ? <PhotosOfGone {...{ item, booking }} /> : null}
              </>
            )}
          </>
        );
      }}
    </Loaded>
  );
}

type Typed = {
  readonly ticked: Ticked;
  readonly takenBy: string;
  readonly broughtBy: string;
  readonly isCleaned: boolean;
  readonly depositFrom: string;
};
type GoingProps = { item: Item; booking: Booking; counter: ReturnType<typeof useCounter> };

function GoingForm({ item, booking, counter }: GoingProps) {
  const words = useEquipmentText();
  const { format, duties, personName, household } = useHouse();
  const isRelay = booking.relayAgreedAt !== null;
  const keeps = duties.includes('equipment_keeper') || duties.includes('coordinator');
  const {
    draft: typed,
    change,
    forget,
  } = useDraft<Typed>(`loan-out.${booking.id}`, {
    ...{ ticked: {}, takenBy: booking.household?.id === household ? personName : '' },
    ...{ broughtBy: '', isCleaned: false, depositFrom: 'balance' },
    ...(counter.refused?.act.typed as Partial<Typed> | undefined),
  });
  const { ticked, takenBy, broughtBy, isCleaned, depositFrom } = typed;
  const [isAsked, setIsAsked] = useState(false);
  const parts = item.parts.map(({ id, name, pieces }) => ({ id, name, most: pieces }));
  const ticks = ticksOf(parts, ticked);
  const isReady =
    ticks !== null && takenBy.trim() !== '' && (!isRelay || (broughtBy.trim() !== '' && isCleaned));
  const write = () => {
    if (ticks === null) return;
    const act = { itemId: item.id, thing: item.name, of: booking.id, typed };
    const json = { parts: ticks, takenBy, happenedAt: new Date().toISOString() };
    forget();
    counter.write(
      isRelay
        ? { ...act, kind: 'on', json: { ...json, broughtBy, isCleaned: true } }
        : {
            ...act,
            kind: 'out',
            json: { ...json, depositFrom: depositFrom as 'balance' | 'cash' | 'bank' },
          },
    );
  };
  const title = isRelay ? words.relayTitle(item.name) : words.handOutTitle(item.name);
  useTitle(title);
  const isStillOut = counter.refused?.facts?.code === 'equipment-unfit' && !isRelay;
  return (
    <Form
      onSend={() => {
        setIsAsked(true);
        if (isReady) write();
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
      {booking.areFoodsTold ? null : <p className="said watch-said">{words.foodsUntold}</p>}
      <LeftBehind booking={booking} />
      {parts.length === 0 ? null : <h2>{words.tickOut}</h2>}
      <Ticks parts={parts} ticked={ticked} onChange={(ticked) => change({ ticked })} />
      <Field
        label={words.takenBy}
        value={takenBy}
        onChange={(event) => change({ takenBy: event.target.value })}
        problem={isAsked && takenBy.trim() === '' ? words.nameProblem : undefined}
      />
      {isRelay ? (
        <>
          <Field
            label={words.broughtBy}
            value={broughtBy}
            onChange={(event) => change({ broughtBy: event.target.value })}
            problem={isAsked && broughtBy.trim() === '' ? words.nameProblem : undefined}
          />
          <Check label={words.isCleaned} isOn={isCleaned} onChange={(isCleaned) => change({ isCleaned })} />
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
              onChange={(depositFrom) => change({ depositFrom })}
            />
          ) : null}
        </>
      ) : null}
      <div>
        <button type="submit" className="btn go">
          {isRelay ? words.handOn : words.handOut}
        </button>
      </div>
      {isStillOut ? <Swap booking={booking} /> : null}
    </Form>
  );
}
