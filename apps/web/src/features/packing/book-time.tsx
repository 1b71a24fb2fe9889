import { instantOfWallTime, isWallTime, wallTimeInZone } from '@sheafbook/units';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { ask } from '../../api/client.ts';
import { ApiProblem } from '../../api/problem.ts';
import { Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { NextStep } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { Here } from './here.tsx';
import { freeTimesQuery, ofSession, type SessionPage, sessionApi } from './queries.ts';
import { type LogQueue, useLogQueue } from './use-log.ts';
import { usePackingText } from './words.ts';

type Slot = SessionPage['slots'][number];

/** The household's time on a line: its own, or when one could be. */
export function BookTime({ page, own }: { page: SessionPage; own: Slot | undefined }) {
  const t = usePackingText();
  const { storehouse, format, householdName } = useHouse();
  const queries = useQueryClient();
  const param = { storehouse, session: page.session.id };
  const giving = useMutation({
    mutationFn: (slot: string) =>
      ask(sessionApi.slots[':slot']['giving-back'].$post({ param: { ...param, slot } })),
    onSuccess: () => queries.invalidateQueries({ queryKey: ofSession(param) }),
  });
  const log = useLogQueue(param.session);
  const { stage } = page.session;
  const isRunning = stage === 'running';
  if (!own) {
    if (page.missed && isRunning) return <Missed log={log} slot={page.missed} />;
    return stage === 'open' ? <ChooseTime page={page} /> : null;
  }
  const [from, until] = [format.hour(own.startsAt), format.hour(own.endsAt)];
  return (
    <NextStep title={t.time}>
      <p>{own.line === null ? t.waiting(from, until) : t.booked(from, until, own.line)}</p>
      <p className="soft">{t.bring}</p>
      {isRunning ? <p className="soft">{t.timeLapses}</p> : null}
      {stage === 'open' || isRunning ? (
        <div className="actions">
          {isRunning ? <Here log={log} slot={own} household={householdName} label={t.weAreHere} /> : null}
          <button
            type="button"
            className="btn"
            disabled={giving.isPending}
            onClick={() => giving.mutate(own.id)}
          >
            {t.giveBack}
          </button>
        </div>
      ) : null}
      <ProblemSaid error={giving.error} />
    </NextStep>
  );
}

/** A time that went to others because nobody came; who comes late gets the next one. */
function Missed({ log, slot }: { log: LogQueue; slot: Slot }) {
  const t = usePackingText();
  const { format, householdName } = useHouse();
  return (
    <NextStep title={t.time}>
      <p>{t.missed(format.hour(slot.startsAt))}</p>
      <div className="actions">
        <Here log={log} slot={slot} household={householdName} label={t.weAreHere} />
      </div>
    </NextStep>
  );
}

function ChooseTime({ page }: { page: SessionPage }) {
  const t = usePackingText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const param = { storehouse, session: page.session.id };
  const free = useQuery(freeTimesQuery(param));
  const wallOf = (iso: string) => wallTimeInZone(Date.parse(iso), format.timeZone);
  const {
    draft: { typed },
    change,
    reset,
  } = useDraft(`session-time.${param.session}`, { typed: '' });
  const booking = useMutation({
    mutationFn: (json: { startsAt: string; orWait: boolean }) => ask(sessionApi.slots.$post({ param, json })),
    onSuccess: () => {
      reset();
      return queries.invalidateQueries({ queryKey: ofSession(param) });
    },
    onError: () => queries.invalidateQueries({ queryKey: freeTimesQuery(param).queryKey }),
  });
  const isTaken = booking.error instanceof ApiProblem && booking.error.code === 'line-taken';
  return (
    <NextStep title={t.time}>
      <Loaded reading={free}>
        {({ minutes, starts }) => {
          const [first] = starts;
          const at =
            typed || (first ? wallOf(first.from).slice(11) : wallOf(page.session.startsAt).slice(11));
          const wall = `${wallOf(page.session.startsAt).slice(0, 10)}T${at}`;
          const startsAt = isWallTime(wall)
            ? new Date(instantOfWallTime(wall, format.timeZone)).toISOString()
            : null;
          const book = (orWait: boolean) => startsAt !== null && booking.mutate({ startsAt, orWait });
          return (
            <Form onSend={() => book(false)}>
              <p>{t.takes(minutes)}</p>
              <p className="soft">
                {starts.length === 0
                  ? t.noneFree
                  : t.freeFrom(
                      starts
                        .map(({ from, until }) => `${format.hour(from)}–${format.hour(until)}`)
                        .join(', '),
                    )}
              </p>
              <Field
                label={t.startAt}
                type="time"
                value={at}
                onChange={(event) => change({ typed: event.target.value })}
                problem={startsAt === null ? t.timeProblem : problemsOf(booking.error).startsAt}
              />
              {booking.error && !isTaken && !problemsOf(booking.error).startsAt ? (
                <ProblemSaid error={booking.error} />
              ) : null}
              <div className="actions">
                <button type="submit" className="btn go" disabled={booking.isPending}>
                  {t.book}
                </button>
                {isTaken || starts.length === 0 ? (
                  <button
                    type="button"
                    className="btn"
                    disabled={booking.isPending}
                    onClick={() => book(true)}
                  >
                    {t.wait}
                  </button>
                ) : null}
              </div>
            </Form>
          );
        }}
      </Loaded>
    </NextStep>
  );
}
