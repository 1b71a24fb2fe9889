import { useSyncExternalStore } from 'react';
import { newKey } from './new-key.ts';
import { listenOutside, noteOutside } from './outside.ts';
import { ApiProblem, isLastWord } from './problem.ts';

/** Something that happened where there may be no signal. Its id is the key that makes it count once. */
export type Waiting<Act> = {
  readonly id: string;
  readonly at: string;
  readonly act: Act;
  /** Why the book refused it; it stays until somebody throws it away. */
  readonly refusal: string | null;
  /** What else the refusal told, such as what would fit instead. */
  readonly facts?: Readonly<Record<string, unknown>>;
};

const read = new Map<string, { text: string | null; waiting: readonly Waiting<never>[] }>();
const sendingNow = new Set<string>();

/** What waits at a place of this browser, oldest first. Another tab may have written since, so the kept text decides. */
function waitingAt<Act>(place: string): readonly Waiting<Act>[] {
  const text = localStorage.getItem(place);
  const known = read.get(place);
  if (known && known.text === text) return known.waiting;
  const waiting = text === null ? [] : (JSON.parse(text) as Waiting<never>[]);
  read.set(place, { text, waiting });
  return waiting;
}

function keep<Act>(place: string, waiting: readonly Waiting<Act>[]): void {
  if (waiting.length === 0) localStorage.removeItem(place);
  else localStorage.setItem(place, JSON.stringify(waiting));
  noteOutside();
}

/** Kept first, sent after: a phone that dies between the two loses nothing. Throws when the browser has no room. */
export function put<Act>(place: string, act: Act): void {
  const one = { id: newKey(), at: new Date().toISOString(), act, refusal: null };
  keep(place, [...waitingAt<Act>(place), one]);
}

export function throwAway(place: string, id: string): void {
  keep(
    place,
    waitingAt(place).filter((one) => one.id !== id),
  );
}

/** What was refused, said otherwise or once more: in its own place, since others may wait behind it, and as a new command. */
export function putRight<Act>(place: string, id: string, act: Act): void {
  keep(
    place,
    waitingAt<Act>(place).map(({ at, ...one }) =>
      one.id === id ? { id: newKey(), at, act, refusal: null } : { ...one, at },
    ),
  );
}

/** What waits, told otherwise than it was written: by what was sent before it. Each keeps its key. */
export function changeActs<Act>(place: string, change: (act: Act) => Act): void {
  keep(
    place,
    waitingAt<Act>(place).map((one) => ({ ...one, act: change(one.act) })),
  );
}

/** What was refused, once more as it is: since a refusal wrote nothing, its key still makes it count once. */
export function sendAgain(place: string, id: string): void {
  keep(
    place,
    waitingAt(place).map(({ at, act, ...one }) =>
      one.id === id ? { id, at, act, refusal: null } : { ...one, at, act },
    ),
  );
}

/**
 * Sends what waits, oldest first, until nothing waits or the signal is gone. What was refused stays and is passed over, and so
 * is what needs it (`isHeld`). Gives how many were sent.
 */
export async function sendWaiting<Act>(
  place: string,
  send: (act: Act, key: string) => Promise<unknown>,
  isHeld: (one: Waiting<Act>, all: readonly Waiting<Act>[]) => boolean = () => false,
): Promise<number> {
  if (sendingNow.has(place)) return 0;
  sendingNow.add(place);
  let count = 0;
  try {
    for (;;) {
      const all = waitingAt<Act>(place);
      const next = all.find((one) => one.refusal === null && !isHeld(one, all));
      if (!next) return count;
      const refusal = await refusalOf(() => send(next.act, next.id));
      if (refusal === 'no signal') return count;
      if (refusal === null) {
        throwAway(place, next.id);
        count += 1;
      } else
        keep(
          place,
          waitingAt<Act>(place).map((one) => (one.id === next.id ? { ...one, ...refusal } : one)),
        );
    }
  } finally {
    sendingNow.delete(place);
  }
}

/** Null when it was taken; the words of the refusal; or that nobody answered. */
async function refusalOf(
  send: () => Promise<unknown>,
): Promise<Required<Pick<Waiting<never>, 'refusal' | 'facts'>> | 'no signal' | null> {
  try {
    await send();
    return null;
  } catch (error) {
    if (!(error instanceof ApiProblem) || !isLastWord(error.status)) return 'no signal';
    const said = [error.message, ...error.fields.map(({ message }) => message)];
    return { refusal: [...new Set(said)].join(' '), facts: error.facts };
  }
}

export const useWaiting = <Act>(place: string): readonly Waiting<Act>[] =>
  useSyncExternalStore(listenOutside, () => waitingAt<Act>(place));

/** What stands between the two in the names of the places at which something waits, such as the sessions. */
export function usePlaces({ prefix, suffix }: { prefix: string; suffix: string }): readonly string[] {
  const text = useSyncExternalStore(listenOutside, () =>
    JSON.stringify(
      Object.keys(localStorage)
        .filter((place) => place.startsWith(prefix) && place.endsWith(suffix))
        .map((place) => place.slice(prefix.length, place.length - suffix.length))
        .toSorted(),
    ),
  );
  return JSON.parse(text) as string[];
}
