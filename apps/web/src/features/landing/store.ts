import { useSyncExternalStore } from 'react';
import { EMPTY_QUEUE, type Event, isRefused, type Queue, step } from './queue.ts';

const listeners = new Set<() => void>();
const read = new Map<string, { text: string | null; queue: Queue }>();

type Whose = { readonly storehouse: string; readonly personId: string };

/** Each person's own, so that nothing is ever sent under another name. */
export const placeOf = ({ buy, ...whose }: Whose & { readonly buy: string }): string =>
  `${beginOf(whose)}${buy}.${whose.personId}`;
const beginOf = ({ storehouse }: Whose) => `sheafbook.landing.${storehouse}.`;

/** The queue as the browser keeps it. Another tab may have written since, so the kept text decides. */
export function queueAt(place: string): Queue {
  const text = localStorage.getItem(place);
  const known = read.get(place);
  if (known && known.text === text) return known.queue;
  const queue = text === null ? EMPTY_QUEUE : (JSON.parse(text) as Queue);
  read.set(place, { text, queue });
  return queue;
}

/** Keeps an event before anything else is done with it. Throws when the browser has no room, and changes nothing. */
export function tell(place: string, event: Event): void {
  localStorage.setItem(place, JSON.stringify(step(queueAt(place), event)));
  for (const listener of listeners) listener();
}

function listen(listener: () => void) {
  listeners.add(listener);
  addEventListener('storage', listener);
  return () => {
    listeners.delete(listener);
    removeEventListener('storage', listener);
  };
}

export const useQueue = (place: string): Queue => useSyncExternalStore(listen, () => queueAt(place));

/** The buys of which something waits on this phone. */
export function useBuysWaiting(
  whose: Whose,
): readonly { readonly buy: string; readonly isRefused: boolean }[] {
  const begin = beginOf(whose);
  const end = `.${whose.personId}`;
  const text = useSyncExternalStore(listen, () =>
    JSON.stringify(
      Object.keys(localStorage)
        .filter((place) => place.startsWith(begin) && place.endsWith(end))
        .toSorted()
        .flatMap((place) => {
          const queue = queueAt(place);
          const buy = place.slice(begin.length, place.length - end.length);
          return queue.written.length === 0 ? [] : [{ buy, isRefused: isRefused(queue) }];
        }),
    ),
  );
  return JSON.parse(text) as ReturnType<typeof useBuysWaiting>;
}

const unreached = new Set<string>();

/** Whether the last sending got an answer. A phone that has bars still may reach nobody. */
export function noteReached(place: string, isReached: boolean): void {
  if (isReached) unreached.delete(place);
  else unreached.add(place);
  for (const listener of listeners) listener();
}

export const useReached = (place: string): boolean =>
  useSyncExternalStore(listen, () => !unreached.has(place));
