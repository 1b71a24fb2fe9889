import { assignLines, freeTimes, type Interval, isFree, moveToFit } from '@sheafbook/booking';
import type { Tx } from '@sheafbook/db';
import type { PackingSessionRow, PackingSlotRow } from '@sheafbook/db/tables';
import { fieldProblem } from '../../platform/problem.ts';
import { listSlots, type SlotOf } from './queries.ts';

const NO_BUFFER = { preMs: 0, postMs: 0 };
const MINUTE_MS = 60_000;

const intervalOf = ({ startsAt, endsAt }: { startsAt: Date; endsAt: Date }): Interval => ({
  startMs: startsAt.getTime(),
  endMs: endsAt.getTime(),
});

type Hours = Pick<PackingSessionRow, 'startsAt' | 'endsAt' | 'setupMinutes' | 'cleanDownMinutes'>;

/** When a line may fill: between setting up and cleaning down, which nobody books. */
export const fillingHours = ({ startsAt, endsAt, setupMinutes, cleanDownMinutes }: Hours): Interval => ({
  startMs: startsAt.getTime() + setupMinutes * MINUTE_MS,
  endMs: endsAt.getTime() - cleanDownMinutes * MINUTE_MS,
});

const bookedOn = (slots: readonly SlotOf[], line: number) =>
  slots
    .filter(({ slot }) => slot.state === 'booked' && slot.line === line)
    .map(({ slot }) => ({ ...intervalOf(slot), ...NO_BUFFER }));

/**
 * The line that serves a time: of those that are free then the one that has been free longest, the lowest of those that
 * tie. Null when all are taken.
 */
export function lineFor(
  session: PackingSessionRow,
  slots: readonly SlotOf[],
  wished: Interval,
): number | null {
  const free = Array.from({ length: session.lines }, (_, at) => at + 1)
    .map((line) => ({ line, booked: bookedOn(slots, line) }))
    .filter(({ booked }) => isFree({ ...wished, ...NO_BUFFER }, booked))
    .map(({ line, booked }) => {
      const before = booked.filter(({ endMs }) => endMs <= wished.startMs).map(({ endMs }) => endMs);
      return { line, freeSinceMs: Math.max(fillingHours(session).startMs, ...before) };
    });
  const [best] = free.toSorted((a, b) => a.freeSinceMs - b.freeSinceMs || a.line - b.line);
  return best?.line ?? null;
}

/** When a slot of so many minutes may begin, over all lines: each stretch from the first to the last start. */
export function freeStarts(
  session: PackingSessionRow,
  slots: readonly SlotOf[],
  minutes: number,
): Interval[] {
  const lastMs = minutes * 60_000;
  const window = fillingHours(session);
  if (window.endMs <= window.startMs) return [];
  const starts = Array.from({ length: session.lines }, (_, at) => bookedOn(slots, at + 1)).flatMap((booked) =>
    freeTimes(window, booked, { ...NO_BUFFER, leastMs: lastMs }).map(({ startMs, endMs }) => ({
      startMs,
      endMs: endMs - lastMs,
    })),
  );
  return joined(starts);
}

/** Stretches of starts, of which a single moment is one too, without what another covers. */
function joined(starts: readonly Interval[]): Interval[] {
  const result: Interval[] = [];
  for (const next of starts.toSorted((a, b) => a.startMs - b.startMs || a.endMs - b.endMs)) {
    const last = result.at(-1);
    if (last && next.startMs <= last.endMs)
      result[result.length - 1] = { ...last, endMs: Math.max(last.endMs, next.endMs) };
    else result.push(next);
  }
  return result;
}

const requestOf = ({ slot }: SlotOf) => ({ requestId: slot.packingSlotId, ...intervalOf(slot) });

/** The fewest lines that all slots and wishes for one would need. */
export const linesNeeded = (slots: readonly SlotOf[]): number => assignLines(slots.map(requestOf)).lines;

/**
 * Which one household to ask for another time, so that everybody else who wants a line has one (job map 7.6): the shortest, then
 * whoever asked last. Null when all fit, or when it takes more than one.
 */
export function slotToMove(slots: readonly SlotOf[], lines: number): SlotOf | null {
  const slotId = moveToFit(slots.map(requestOf), lines);
  return slots.find(({ slot }) => slot.packingSlotId === slotId) ?? null;
}

export type Promotion = { slot: PackingSlotRow; line: number; startsAt: Date; endsAt: Date };

/** Who waits and now has a line, in the order in which they asked; a later one may fit where an earlier one does not. */
export function promotable(session: PackingSessionRow, slots: readonly SlotOf[], now: Date): Promotion[] {
  let standing = [...slots];
  const promoted: Promotion[] = [];
  for (const waiting of slots.filter(({ slot }) => slot.state === 'waiting')) {
    const place = placeFor(session, standing, waiting.slot, now);
    if (place === null) continue;
    promoted.push({ slot: waiting.slot, ...place });
    standing = standing.map((row) =>
      row === waiting ? { ...row, slot: { ...row.slot, ...place, state: 'booked' } } : row,
    );
  }
  return promoted;
}

/** A line at the time that was asked for, or at the first one that is left once that has begun. Null when there is none. */
function placeFor(session: PackingSessionRow, slots: readonly SlotOf[], asked: PackingSlotRow, now: Date) {
  if (asked.startsAt < now) return nextPlace(session, slots, minutesIn(asked), now);
  const line = lineFor(session, slots, intervalOf(asked));
  return line === null ? null : { line, startsAt: asked.startsAt, endsAt: asked.endsAt };
}

export const minutesIn = ({ startsAt, endsAt }: { startsAt: Date; endsAt: Date }): number =>
  Math.round((endsAt.getTime() - startsAt.getTime()) / MINUTE_MS);

/** The first time from now on at which a line is free for so many minutes. Null when the day has none left. */
export function nextPlace(
  session: PackingSessionRow,
  slots: readonly SlotOf[],
  minutes: number,
  now: Date,
): Omit<Promotion, 'slot'> | null {
  const nowMs = Math.ceil(now.getTime() / MINUTE_MS) * MINUTE_MS;
  const stretch = freeStarts(session, slots, minutes).find(({ endMs }) => endMs >= nowMs);
  if (stretch === undefined) return null;
  const startMs = Math.max(stretch.startMs, nowMs);
  const place = { startMs, endMs: startMs + minutes * MINUTE_MS };
  const line = lineFor(session, slots, place);
  return line === null ? null : { line, startsAt: new Date(startMs), endsAt: new Date(place.endMs) };
}

/** How much later a session's lines are ready than they were: its slots move along by that. Units: milliseconds. */
export const movedBy = (before: Hours, after: Hours): number =>
  fillingHours(after).startMs - fillingHours(before).startMs;

/** A session can't shrink beneath the slots that stand, once they have moved along with it. */
export async function refuseSlotsOutside(
  tx: Tx,
  session: PackingSessionRow,
  wish: Hours & { lines: number },
): Promise<void> {
  const { slots } = await listSlots(tx, session.storehouseId, session.packingSessionId);
  const booked = slots.filter(({ slot }) => slot.state === 'booked');
  const { endMs } = fillingHours(wish);
  const by = movedBy(session, wish);
  const late = booked.find(({ slot }) => slot.endsAt.getTime() + by > endMs);
  if (late) throw fieldProblem('in-use', 'endsAt', `${late.household.name} has a time outside these hours.`);
  const beyond = booked.find(({ slot }) => (slot.line ?? 0) > wish.lines);
  if (beyond)
    throw fieldProblem('in-use', 'lines', `${beyond.household.name} has a time on line ${beyond.slot.line}.`);
}
