import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useNavigate, useParams } from '@tanstack/react-router';
import type { InferRequestType } from 'hono/client';
import { useState } from 'react';
import { ask } from '../../api/client.ts';
import { Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { DayFields, dayDraftOf, dayFactsOf } from './day-fields.tsx';
import { type SessionFacts, sessionApi, sessionQuery } from './queries.ts';
import { usePackingText } from './words.ts';
import './packing.css';

type SessionEdit = InferRequestType<typeof sessionApi.$put>['json'];

/** Changes a day that has not begun, or calls it off; everyone is told of either. */
export function ChangeSession() {
  const t = usePackingText();
  const { session } = useParams({ from: '/s/$storehouse/packing/$session/change' });
  const { storehouse } = useHouse();
  const reading = useQuery(sessionQuery({ storehouse, session }));
  return (
    <Loaded isPage reading={reading}>
      {(page) => (
        <>
          <Link className="who" to="/s/$storehouse/packing/$session" params={{ storehouse, session }}>
            <BackIcon />
            {page.session.name}
          </Link>
          <h1>{page.session.stage === 'open' ? t.changeTitle(page.session.name) : t.changeNever}</h1>
          {page.session.stage === 'open' ? (
            <>
              <Change session={page.session} />
              <CallOff session={page.session} />
            </>
          ) : null}
        </>
      )}
    </Loaded>
  );
}

/** Reads everything of packing days anew, and goes back to the day. */
function useBackToDay(session: SessionFacts) {
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const navigate = useNavigate();
  return async () => {
    await queries.invalidateQueries({ queryKey: ['packing'] });
    await navigate({ to: '/s/$storehouse/packing/$session', params: { storehouse, session: session.id } });
  };
}

function Change({ session }: { session: SessionFacts }) {
  const t = usePackingText();
  const { storehouse, format } = useHouse();
  useTitle(t.changeTitle(session.name));
  const queries = useQueryClient();
  const back = useBackToDay(session);
  const [isAsked, setIsAsked] = useState(false);
  const { id, version } = session;
  const start = {
    ...dayDraftOf(session, format),
    seconds: Object.fromEntries(session.stations.map((one) => [one.name, String(one.secondsPerUnit)])),
  };
  const { draft, change, forget } = useDraft(`packing-day.${id}`, start, {
    version,
    rows: { seconds: '' },
  });
  const facts = dayFactsOf(draft, format);
  const stations = session.stations.map((station) => ({
    ...station,
    secondsPerUnit: Number(draft.seconds[station.name]),
  })) as SessionEdit['stations'];
  const changing = useMutation({
    mutationFn: (day: NonNullable<typeof facts>) =>
      ask(
        sessionApi.$put({
          param: { storehouse, session: id },
          json: { ...day, stations, version },
        }),
      ),
    onSuccess: () => {
      forget();
      return back();
    },
    onError: () => queries.invalidateQueries({ queryKey: ['packing'] }),
  });
  const problems = problemsOf(changing.error);
  return (
    <Form
      onSend={() => {
        setIsAsked(true);
        if (facts) changing.mutate(facts);
      }}
    >
      <p className="soft">{t.changeSays}</p>
      <DayFields {...{ draft, change, problems, isAsked }} />
      <details open={Object.keys(problems).some((field) => field.startsWith('stations'))}>
        <summary>{t.stationSeconds}</summary>
        <div className="pair">
          {session.stations.map(({ name }, at) => (
            <Field
              key={name}
              label={t.stations[name as keyof typeof t.stations] ?? name}
              inputMode="numeric"
              value={draft.seconds[name] ?? ''}
              onChange={(event) => change({ seconds: { ...draft.seconds, [name]: event.target.value } })}
              problem={problems[`stations.${at}.secondsPerUnit`]}
            />
          ))}
        </div>
      </details>
      {Object.keys(problems).length > 0 ? null : <ProblemSaid error={changing.error} />}
      <div className="actions">
        <button type="submit" className="btn go" disabled={changing.isPending}>
          {t.keepChange}
        </button>
      </div>
    </Form>
  );
}

function CallOff({ session }: { session: SessionFacts }) {
  const t = usePackingText();
  const { storehouse } = useHouse();
  const back = useBackToDay(session);
  const { draft, change, forget } = useDraft(`packing-off.${session.id}`, { because: '' });
  const ending = useMutation({
    mutationFn: (json: { because: string }) =>
      ask(sessionApi['calling-off'].$post({ param: { storehouse, session: session.id }, json })),
    onSuccess: () => {
      forget();
      return back();
    },
  });
  const problems = problemsOf(ending.error);
  return (
    <section className="stack">
      <h2>{t.callOff}</h2>
      <Form onSend={() => ending.mutate({ because: draft.because })}>
        <p className="soft">{t.callOffSays}</p>
        <Field
          label={t.callOffWhy}
          value={draft.because}
          onChange={(event) => change({ because: event.target.value })}
          problem={problems.because}
        />
        {Object.keys(problems).length > 0 ? null : <ProblemSaid error={ending.error} />}
        <div className="actions">
          <button type="submit" className="btn" disabled={ending.isPending}>
            {t.callOffNow(session.name)}
          </button>
        </div>
      </Form>
    </section>
  );
}
