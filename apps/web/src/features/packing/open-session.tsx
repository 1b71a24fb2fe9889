import { instantOfWallTime, isWallTime, parseMoney } from '@sheafbook/units';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { Link, useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { ask } from '../../api/client.ts';
import { Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { packingApi } from './queries.ts';
import { usePackingText } from './words.ts';
import './packing.css';

const START = {
  name: '',
  place: '',
  on: '',
  from: '09:00',
  until: '13:00',
  lines: '1',
  people: '6',
  fee: '0',
};

/** Opens a packing day; everyone is told. */
export function OpenSession() {
  const t = usePackingText();
  const { storehouse, format } = useHouse();
  useTitle(t.open);
  const navigate = useNavigate();
  const queries = useQueryClient();
  const [isAsked, setIsAsked] = useState(false);
  const { draft, change, forget } = useDraft(`packing.${storehouse}`, START);
  const startsAt = instantOf(draft.on, draft.from, format.timeZone);
  const endsAt = instantOf(draft.on, draft.until, format.timeZone);
  const fee = parseMoney(draft.fee, format.currency);
  const opening = useMutation({
    mutationFn: (times: { startsAt: string; endsAt: string; lineFeeMinorUnits: number }) =>
      ask(
        packingApi.$post({
          param: { storehouse },
          json: {
            ...{ name: draft.name, place: draft.place, ...times },
            ...{ lines: Number(draft.lines), peopleALine: Number(draft.people) },
          },
        }),
      ),
    onSuccess: async ({ id }) => {
      forget();
      await queries.invalidateQueries({ queryKey: ['packing'] });
      await navigate({ to: '/s/$storehouse/packing/$session', params: { storehouse, session: id } });
    },
  });
  const problems = problemsOf(opening.error);
  return (
    <>
      <Link className="who" to="/s/$storehouse/packing" params={{ storehouse }}>
        <BackIcon />
        {t.packing}
      </Link>
      <h1>{t.openTitle}</h1>
      <Form
        onSend={() => {
          setIsAsked(true);
          if (startsAt && endsAt && 'minorUnits' in fee)
            opening.mutate({ startsAt, endsAt, lineFeeMinorUnits: fee.minorUnits });
        }}
      >
        <div className="pair">
          <Field
            label={t.name}
            value={draft.name}
            onChange={(event) => change({ name: event.target.value })}
            problem={problems.name}
          />
          <Field
            label={t.place}
            value={draft.place}
            onChange={(event) => change({ place: event.target.value })}
            problem={problems.place}
          />
        </div>
        <div className="pair three">
          <Field
            label={t.on}
            type="date"
            min={format.today()}
            value={draft.on}
            onChange={(event) => change({ on: event.target.value })}
            problem={isAsked && draft.on === '' ? t.dayProblem : problems.startsAt}
          />
          <Field
            label={t.from}
            type="time"
            value={draft.from}
            onChange={(event) => change({ from: event.target.value })}
          />
          <Field
            label={t.until}
            type="time"
            value={draft.until}
            onChange={(event) => change({ until: event.target.value })}
            problem={problems.endsAt}
          />
        </div>
        <div className="pair three">
          <Field
            label={t.lines}
            inputMode="numeric"
            value={draft.lines}
            onChange={(event) => change({ lines: event.target.value })}
            problem={problems.lines}
          />
          <Field
            label={t.people}
            inputMode="numeric"
            value={draft.people}
            onChange={(event) => change({ people: event.target.value })}
            problem={problems.peopleALine}
          />
          <Field
            label={t.fee(format.currency)}
            inputMode="decimal"
            value={draft.fee}
            onChange={(event) => change({ fee: event.target.value })}
            problem={isAsked && !('minorUnits' in fee) ? t.moneyProblem : problems.lineFeeMinorUnits}
          />
        </div>
        <p className="soft">{t.openSays}</p>
        {Object.keys(problems).length > 0 ? null : <ProblemSaid error={opening.error} />}
        <div className="actions">
          <button type="submit" className="btn go" disabled={opening.isPending}>
            {t.openIt}
          </button>
        </div>
      </Form>
    </>
  );
}

function instantOf(on: string, at: string, timeZone: string): string | null {
  const wall = `${on}T${at}`;
  return isWallTime(wall) ? new Date(instantOfWallTime(wall, timeZone)).toISOString() : null;
}
