import { useState } from 'react';
import { Choice } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { useDraft } from '../../ui/use-draft.ts';
import type { LogAct, QueueTold } from './log-act.ts';
import type { LogBody, SessionFacts } from './queries.ts';
import { useLogQueue } from './use-log.ts';
import { usePackingText } from './words.ts';

type Said = LogBody['queues'][number];
type Day = Pick<SessionFacts, 'id' | 'lines' | 'stations'>;

/** So many may wait; the last is so many or more. Nobody counts further with gloves on. */
const COUNTS = [0, 1, 2, 5, 10] as const;

/** What this phone has told of queues and not sent yet. */
export const queuesWaiting = (
  waiting: readonly { readonly at: string; readonly act: LogAct; readonly refusal: string | null }[],
): Said[] =>
  waiting.flatMap(({ act, at, refusal }) =>
    act.kind === 'queue' && refusal === null ? [{ ...act.json, saidAt: act.json.saidAt ?? at }] : [],
  );

/** How many wait in front of each station: one tap a station, by anybody at the line, also without a signal. */
export function QueueTaps({
  day,
  said,
  onSay,
}: {
  day: Day;
  /** What was said so far, in its order. */
  said: readonly Said[];
  onSay: (act: LogAct) => void;
}) {
  const t = usePackingText();
  const { format } = useHouse();
  // Whoever stands at a line stays at it.
  const { draft, change } = useDraft(`queue-line.${day.id}`, { line: '1' });
  const line = Number(draft.line);
  return (
    <details className="stack queues">
      <summary>{t.queues}</summary>
      <p className="soft">{t.queuesSay}</p>
      {day.lines > 1 ? (
        <Choice
          label={t.lineOfQueue}
          value={draft.line}
          onChange={(chosen) => change({ line: chosen })}
          options={Array.from({ length: day.lines }, (_, at) => ({
            value: String(at + 1),
            name: String(at + 1),
          }))}
        />
      ) : null}
      {day.stations.map(({ name: station }) => {
        const last = said.findLast((one) => one.station === station && one.line === line);
        const named = t.stations[station as keyof typeof t.stations] ?? station;
        return (
          <fieldset key={station}>
            <legend>
              {t.queueBefore(named)}
              {last ? (
                <span className="soft"> {t.queueTold(last.waiting, format.hour(last.saidAt))}</span>
              ) : null}
            </legend>
            <div className="queue-keys">
              {COUNTS.map((waiting) => (
                <button
                  key={waiting}
                  type="button"
                  className="btn"
                  aria-pressed={last?.waiting === waiting}
                  onClick={() =>
                    onSay({
                      kind: 'queue',
                      json: {
                        ...{ line, waiting, saidAt: new Date().toISOString() },
                        station: station as QueueTold['station'], // the day's stations are of those that the API knows
                      },
                    })
                  }
                >
                  {waiting === COUNTS.at(-1) ? t.queueMost(waiting) : waiting}
                </button>
              ))}
            </div>
          </fieldset>
        );
      })}
    </details>
  );
}

/** For who helps without a duty: they read no log, and see what they said themselves. */
export function HelpersQueues({ day }: { day: Day }) {
  const log = useLogQueue(day.id);
  const [said, setSaid] = useState<readonly Said[]>([]);
  return (
    <section className="pour">
      <QueueTaps
        day={day}
        said={said}
        onSay={(act) => {
          log.write(act);
          if (act.kind === 'queue')
            setSaid((before) => [
              ...before,
              { ...act.json, saidAt: act.json.saidAt ?? new Date().toISOString() },
            ]);
        }}
      />
    </section>
  );
}
