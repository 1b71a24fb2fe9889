import { addDays, weekdayOf } from '@sheafbook/units';
import { useMutation, useQuery } from '@tanstack/react-query';
import { Link, useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { ask } from '../../api/client.ts';
import { Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { massTyped } from './card-draft.ts';
import { inside, type Pantry, pantriesQuery } from './queries.ts';
import { useGivingText } from './words.ts';

/** Which pantries can be driven to, when, and how much the car takes. */
export function MatchForm() {
  const words = useGivingText();
  const { storehouse } = useHouse();
  useTitle(words.matchTitle);
  return (
    <>
      <Link className="who" to="/s/$storehouse/giving" params={{ storehouse }}>
        <BackIcon />
        {words.title}
      </Link>
      <h1>{words.matchTitle}</h1>
      <p>{words.matchWords}</p>
      <Loaded reading={useQuery(pantriesQuery({ storehouse }))}>
        {({ pantries }) => {
          const open = pantries.filter(({ isRetired }) => !isRetired);
          return open.length === 0 ? <p>{words.noPantries}</p> : <Trips pantries={open} />;
        }}
      </Loaded>
    </>
  );
}

type Trip = { pantryId: string; onDay: string; capacity: string };

function Trips({ pantries }: { pantries: readonly Pantry[] }) {
  const words = useGivingText();
  const { storehouse, massDisplay, format } = useHouse();
  const navigate = useNavigate();
  const tripTo = (pantry: Pantry | undefined): Trip => ({
    ...{ pantryId: pantry?.id ?? '', capacity: massDisplay === 'lb' ? '200' : '100' },
    onDay: nextOpen(pantry, format.today()),
  });
  const {
    draft: { trips },
    change: keep,
    forget,
  } = useDraft(
    'gift-trips',
    { trips: pantries.slice(0, 2).map(tripTo) as readonly Trip[] },
    { rows: { trips: { pantryId: '', onDay: '', capacity: '' } } },
  );
  const [isTried, setIsTried] = useState(false);
  const read = trips.map(({ pantryId, onDay, capacity }) => {
    return { pantryId, onDay, capacityGrams: massTyped(capacity, massDisplay) };
  });
  const working = useMutation({
    mutationFn: (wished: { pantryId: string; onDay: string; capacityGrams: number }[]) =>
      ask(inside['gift-matchings'].$post({ param: { storehouse }, json: { trips: wished } })),
    onSuccess: (matching) => {
      forget();
      return navigate({
        to: '/s/$storehouse/giving/matchings/$matching',
        params: { storehouse, matching: matching.id },
      });
    },
  });
  const problems = problemsOf(working.error);
  const change = (at: number, part: Partial<Trip>) =>
    keep({ trips: trips.map((trip, position) => (position === at ? { ...trip, ...part } : trip)) });
  return (
    <Form
      label={words.matchTitle}
      onSend={() => {
        setIsTried(true);
        const wished = read.flatMap(({ capacityGrams, ...trip }) =>
          capacityGrams ? [{ ...trip, capacityGrams }] : [],
        );
        if (wished.length === trips.length) working.mutate(wished);
      }}
    >
      {trips.map((trip, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: trips have no other name than their place
        <fieldset key={at}>
          <legend>{words.tripNo(at + 1)}</legend>
          <Choice
            label={words.pantry}
            value={trip.pantryId}
            options={pantries.map(({ id, name }) => ({ value: id, name }))}
            problem={problems[`trips.${at}.pantryId`]}
            onChange={(pantryId) =>
              change(at, {
                pantryId,
                onDay: nextOpen(
                  pantries.find(({ id }) => id === pantryId),
                  format.today(),
                ),
              })
            }
          />
          <div className="pair">
            <Field
              label={words.day}
              type="date"
              value={trip.onDay}
              problem={problems[`trips.${at}.onDay`]}
              onChange={(event) => change(at, { onDay: event.target.value })}
            />
            <Field
              label={words.carries(massDisplay)}
              inputMode="decimal"
              value={trip.capacity}
              problem={isTried && !read[at]?.capacityGrams ? words.massProblem : undefined}
              onChange={(event) => change(at, { capacity: event.target.value })}
            />
          </div>
          {trips.length < 2 ? null : (
            <button
              type="button"
              className="btn quiet"
              onClick={() => keep({ trips: trips.filter((_, position) => position !== at) })}
            >
              {words.dropTrip(at + 1)}
            </button>
          )}
        </fieldset>
      ))}
      <ProblemSaid error={working.error} />
      <div className="actions">
        {trips.length >= 6 ? null : (
          <button
            type="button"
            className="btn"
            onClick={() => keep({ trips: [...trips, tripTo(pantries[0])] })}
          >
            {words.addTrip}
          </button>
        )}
        <button type="submit" className="btn go" disabled={working.isPending}>
          {words.work}
        </button>
      </div>
    </Form>
  );
}

/** The next day on which a pantry is open, today too. */
function nextOpen(pantry: Pantry | undefined, today: string): string {
  const open = new Set(pantry?.card.openings.map(({ weekday }) => weekday));
  const ahead = [0, 1, 2, 3, 4, 5, 6].map((days) => addDays(today, days));
  return ahead.find((day) => open.has(weekdayOf(day))) ?? today;
}
