import { assert } from '@sheafbook/units';

/** So many of the last containers tell where it jams (job map 3.3, question 3). */
const UNITS = 10;

/**
 * That so many containers wait in front of a station, as somebody there said.
 * Units: containers; milliseconds. Errors: none by itself.
 */
export type QueueWord = { readonly station: string; readonly waiting: number; readonly saidAtMs: number };

/**
 * The station with the longest queue over the last ten containers of a line. What was said of a station stands until the next
 * word about it, and no longer than ten containers: its queue is the mean of what stood when each of them was closed, and now.
 * Units: milliseconds in; containers out, to one decimal. Shape: null where nothing was said since, or nothing waits anywhere.
 * Ties: the station named first. Errors: AssertionError when a queue is below nothing.
 * Source: the trade's job map, 3.3, question 3; how long a word stands is common practice, no source.
 */
export function longestQueue(
  stations: readonly string[],
  said: readonly QueueWord[],
  closedAtMs: readonly number[],
): { readonly station: string; readonly waiting: number } | null {
  for (const { waiting } of said) assert(waiting >= 0, 'a queue is not below nothing');
  const last = closedAtMs.toSorted((a, b) => a - b).slice(-UNITS);
  const sinceMs = last.length < UNITS ? Number.NEGATIVE_INFINITY : (last[0] as number);
  const words = said
    .filter(({ saidAtMs }) => saidAtMs >= sinceMs)
    .toSorted((a, b) => a.saidAtMs - b.saidAtMs);
  const queues = stations.flatMap((station) => {
    const own = words.filter((word) => word.station === station);
    const stood = [...last, Number.POSITIVE_INFINITY].flatMap(
      (atMs) => own.findLast(({ saidAtMs }) => saidAtMs <= atMs)?.waiting ?? [],
    );
    const sum = stood.reduce((total, waiting) => total + waiting, 0);
    return sum === 0 ? [] : [{ station, waiting: Math.round((10 * sum) / stood.length) / 10 }];
  });
  return queues.reduce<(typeof queues)[number] | null>(
    (longest, queue) => (longest && longest.waiting >= queue.waiting ? longest : queue),
    null,
  );
}

/**
 * By how much one person more at a station brings the end of a line's run forward.
 * Units: seconds a container and containers in; whole minutes out, cut off, so that nobody is promised more than they get.
 * Shape: 0 where one more makes no container sooner, or none is left. Errors: none.
 */
export function soonerMinutes({
  cycleSeconds,
  oneMoreSeconds,
  containersLeft,
}: {
  readonly cycleSeconds: number;
  readonly oneMoreSeconds: number;
  readonly containersLeft: number;
}): number {
  return Math.floor((Math.max(0, cycleSeconds - oneMoreSeconds) * Math.max(0, containersLeft)) / 60);
}
