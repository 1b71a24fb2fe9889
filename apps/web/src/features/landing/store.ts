import { useSyncExternalStore } from 'react';
import { usePlaces } from '../../api/outbox.ts';
import { listenOutside, noteOutside } from '../../api/outside.ts';
import { EMPTY_QUEUE, type Event, type Queue, step } from './queue.ts';

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
  noteOutside();
}

export const useQueue = (place: string): Queue => useSyncExternalStore(listenOutside, () => queueAt(place));

/** The buys of which this phone has written something down, sent or not. */
export const useBuysWritten = (whose: Whose): readonly string[] =>
  usePlaces({ prefix: beginOf(whose), suffix: `.${whose.personId}` });

const unreached = new Set<string>();

/** Whether the last sending got an answer. A phone that has bars still may reach nobody. */
export function noteReached(place: string, isReached: boolean): void {
  if (isReached) unreached.delete(place);
  else unreached.add(place);
  noteOutside();
}

export const useReached = (place: string): boolean =>
  useSyncExternalStore(listenOutside, () => !unreached.has(place));
