import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { ask } from '../../api/client.ts';
import { Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { degreesTyped, degreeUnitOf } from './degrees.ts';
import { inside, type PlaceRecord } from './queries.ts';
import { usePlaceText } from './words.ts';

const MONTHS = ['01', '02', '03', '04', '05', '06', '07', '08', '09', '10', '11', '12'] as const;
const year = (text: string) => (/^(19[5-9]\d|2[01]\d\d)$/.test(text.trim()) ? Number(text) : null);

/** A usual year typed once and written into as many years as it was so; months left empty are left alone. */
export function MonthsForm({ place }: { place: PlaceRecord }) {
  const words = usePlaceText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const thisMonth = format.today().slice(0, 7);
  const unit = degreeUnitOf(format);
  const {
    draft: { from, to, typed },
    change,
    reset,
  } = useDraft(
    `place-months.${place.id}`,
    { from: thisMonth.slice(0, 4), to: thisMonth.slice(0, 4), typed: {} as Readonly<Record<string, string>> },
    { rows: { typed: '' } },
  );
  const [isAsked, setIsAsked] = useState(false);
  const [first, last] = [year(from), year(to)];
  const isSpan = first !== null && last !== null && first <= last && last - first < 100;
  const degrees = MONTHS.map((month) => ({ month, tenths: degreesTyped(typed[month] ?? '', unit) }));
  const isWrong = degrees.some(({ tenths }) => tenths === undefined);
  const months = isSpan
    ? Array.from({ length: last - first + 1 }, (_, at) => first + at)
        .flatMap((of) =>
          degrees.map(({ month, tenths }) => ({ month: `${of}-${month}`, tenthsCelsius: tenths })),
        )
        .flatMap(({ month, tenthsCelsius }) =>
          typeof tenthsCelsius === 'number' && month <= thisMonth ? [{ month, tenthsCelsius }] : [],
        )
    : [];
  const saving = useMutation({
    mutationFn: () =>
      ask(inside.places[':place'].months.$put({ param: { storehouse, place: place.id }, json: { months } })),
    onSuccess: () => {
      reset();
      return queries.invalidateQueries({ queryKey: ['places'] });
    },
  });
  const refused = Object.values(problemsOf(saving.error))[0];
  return (
    <details>
      <summary>{words.typeIt}</summary>
      <Form
        label={words.typeIt}
        onSend={() => {
          setIsAsked(true);
          if (!isWrong && months.length > 0) saving.mutate();
        }}
      >
        <p>{words.typeWords}</p>
        <div className="pair">
          <Field
            label={words.fromYear}
            inputMode="numeric"
            value={from}
            onChange={(event) => change({ from: event.target.value })}
            problem={isAsked && !isSpan ? words.yearsProblem : undefined}
          />
          <Field
            label={words.toYear}
            inputMode="numeric"
            value={to}
            onChange={(event) => change({ to: event.target.value })}
          />
        </div>
        <div className="pair">
          {degrees.map(({ month, tenths }) => (
            <Field
              key={month}
              label={words.monthIn(format.monthName(`2025-${month}-01`), unit)}
              value={typed[month] ?? ''}
              onChange={(event) => change({ typed: { ...typed, [month]: event.target.value } })}
              problem={isAsked && tenths === undefined ? words.degreesProblem : undefined}
            />
          ))}
        </div>
        <p>{months.length > 0 ? words.typeSays(months.length) : words.typeNothing}</p>
        {refused ? (
          <p className="problem" role="alert">
            {format.sentence(refused)}
          </p>
        ) : (
          <ProblemSaid error={saving.error} />
        )}
        {saving.isSuccess ? <p role="status">{words.saved}</p> : null}
        <div>
          <button type="submit" className="btn" disabled={saving.isPending}>
            {words.writeIt}
          </button>
        </div>
      </Form>
    </details>
  );
}
