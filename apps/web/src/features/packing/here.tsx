import type { LogAct } from './log-act.ts';
import type { LogQueue } from './use-log.ts';

/**
 * Ticks that a household stands at its line, so that its time is not given away; pressed again, it takes that back. It keeps its
 * hour where there is no signal.
 */
export function Here({
  log: { waiting, write },
  slot,
  household,
  label,
}: {
  log: LogQueue;
  slot: { id: string; cameAt: string | null };
  household: string;
  label: string;
}) {
  const ticked = waiting.findLast(
    ({ act, refusal }) => refusal === null && act.kind === 'here' && act.slot === slot.id,
  )?.act as Extract<LogAct, { kind: 'here' }> | undefined;
  const isHere = ticked?.json.isHere ?? slot.cameAt !== null;
  return (
    <button
      type="button"
      className="btn"
      aria-pressed={isHere}
      onClick={() =>
        write({
          ...{ kind: 'here', slot: slot.id, household },
          json: { isHere: !isHere, cameAt: new Date().toISOString() },
        })
      }
    >
      {label}
    </button>
  );
}
