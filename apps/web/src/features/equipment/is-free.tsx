import { isWithin } from '@sheafbook/booking';
import { addDays, daysBetween } from '@sheafbook/units';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { Choice } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { State } from '../../ui/pieces.tsx';
import { instantIn } from '../buy/instant-in.ts';
import { freeForQuery, itemsQuery } from './queries.ts';
import { SpanFields } from './span-fields.tsx';
import { useEquipmentText } from './words.ts';

type Lent = { readonly id: string; readonly name: string };

/** Whether a thing can be had for a time: answered as the time is picked, cleaning and what is booked reckoned in. */
export function IsFree() {
  const words = useEquipmentText();
  const { storehouse } = useHouse();
  return (
    <section className="stack">
      <h2>{words.isFreeTitle}</h2>
      <Loaded reading={useQuery(itemsQuery({ storehouse }))}>
        {({ items }) => {
          const lent = items.filter(({ units }) => units.some(({ condition }) => condition !== 'retired'));
          return lent.length === 0 ? <p className="soft">{words.none}</p> : <Asked lent={lent} />;
        }}
      </Loaded>
    </section>
  );
}

function Asked({ lent }: { lent: readonly Lent[] }) {
  const words = useEquipmentText();
  const { format } = useHouse();
  const tomorrow = addDays(format.today(), 1);
  const [asked, setAsked] = useState({
    ...{ item: lent[0]?.id ?? '', fromDay: tomorrow, fromTime: '09:00' },
    ...{ untilDay: tomorrow, untilTime: '18:00' },
  });
  const change = (part: Partial<typeof asked>) => setAsked({ ...asked, ...part });
  const isWhole = [asked.fromDay, asked.fromTime, asked.untilDay, asked.untilTime].every(Boolean);
  const wish = isWhole
    ? {
        startMs: Date.parse(instantIn(format.timeZone, `${asked.fromDay}T${asked.fromTime}`)),
        endMs: Date.parse(instantIn(format.timeZone, `${asked.untilDay}T${asked.untilTime}`)),
      }
    : null;
  const isInOrder = wish !== null && wish.startMs < wish.endMs;
  return (
    <>
      <Choice
        label={words.whichThing}
        value={asked.item}
        options={lent.map(({ id, name }) => ({ value: id, name }))}
        onChange={(item) => change({ item })}
      />
      <SpanFields
        span={asked}
        change={change}
        problems={{ until: isInOrder ? undefined : isWhole ? words.endsBefore : words.timeProblem }}
      />
      {isInOrder ? (
        <Told item={asked.item} days={{ from: asked.fromDay, until: asked.untilDay }} wish={wish} />
      ) : null}
    </>
  );
}

/** How far past the time that was asked for the next free one is looked for; the server looks 100 days ahead at most. */
const LOOK_PAST_DAYS = 14;
const MOST_DAYS = 100;
const MOST_MINUTES = 20_160;

type ToldProps = {
  item: string;
  days: { readonly from: string; readonly until: string };
  wish: { readonly startMs: number; readonly endMs: number };
};

function Told({ item, days, wish }: ToldProps) {
  const words = useEquipmentText();
  const { storehouse, format } = useHouse();
  const param = { storehouse, item };
  const reading = useQuery(
    freeForQuery(param, {
      fromDay: days.from,
      days: String(Math.min(MOST_DAYS, daysBetween(days.from, days.until) + 1 + LOOK_PAST_DAYS)),
      leastMinutes: String(
        Math.min(MOST_MINUTES, Math.max(15, Math.floor((wish.endMs - wish.startMs) / 60_000))),
      ),
    }),
  );
  return (
    <div role="status">
      <Loaded reading={reading}>
        {({ free, late }) => {
          const spans = free.map(({ startsAt, endsAt }) => ({
            ...{ startMs: Date.parse(startsAt), endMs: Date.parse(endsAt), startsAt, endsAt },
          }));
          const isFree = spans.some((span) => isWithin(wish, span));
          const next = spans.find(({ endMs }) => endMs > wish.startMs);
          return (
            <p>
              <State kind={isFree ? 'well' : 'watch'} word={isFree ? words.isFree : words.isTaken} />{' '}
              {isFree
                ? null
                : next
                  ? words.freeNext(format.instant(next.startsAt), format.instant(next.endsAt))
                  : late[0]
                    ? words.outAndLate(format.instant(late[0].dueAt))
                    : words.freeNever}{' '}
              <Link to="/s/$storehouse/equipment/$item" params={param}>
                {words.bookTitle}
              </Link>
            </p>
          );
        }}
      </Loaded>
    </div>
  );
}
