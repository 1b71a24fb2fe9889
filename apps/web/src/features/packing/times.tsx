import { useHouse } from '../../ui/house.ts';
import { Here } from './here.tsx';
import type { PlanBody } from './queries.ts';
import { useLogQueue } from './use-log.ts';
import { usePackingText } from './words.ts';

/** Whose time is when, and who of them stands at the line. */
export function Times({ plan }: { plan: PlanBody }) {
  const t = usePackingText();
  const { format } = useHouse();
  const { slots, session } = plan;
  const log = useLogQueue(session.id);
  if (slots.length === 0) return null;
  const isOn = session.stage === 'open' || session.stage === 'running';
  return (
    <section className="stack">
      <h2>{t.bookedTimes}</h2>
      <ToMove plan={plan} />
      <p className="soft">{t.timeLapses}</p>
      <ul className="list">
        {slots.map((slot) => (
          <li key={slot.id} className="row">
            <span>
              {slot.household}
              <span className="soft block">
                {[
                  `${format.hour(slot.startsAt)}–${format.hour(slot.endsAt)}`,
                  slot.line === null ? '' : t.line(slot.line),
                  slot.isHere ? t.handStates.came : t.slotStates[slot.state as keyof typeof t.slotStates],
                ]
                  .filter(Boolean)
                  .join(' · ')}
              </span>
            </span>
            {isOn && (slot.cameAt !== null || !slot.isHere) ? (
              <span className="actions">
                <Here log={log} slot={slot} household={slot.household} label={t.tick.came} />
              </span>
            ) : null}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Where more want a line at once than there are: whom to ask for another time, so that the others all have theirs. */
function ToMove({ plan: { toMove, linesNeeded, session, slots } }: { plan: PlanBody }) {
  const t = usePackingText();
  if (session.stage !== 'open' || linesNeeded <= session.lines) return null;
  if (!slots.some(({ state }) => state === 'waiting')) return null;
  return (
    <p className="said watch-said">
      {toMove
        ? t.askToMove(toMove.household, session.lines, linesNeeded)
        : t.moreLines(session.lines, linesNeeded)}
    </p>
  );
}
