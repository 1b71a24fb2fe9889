import { useSyncExternalStore } from 'react';
import { actingHere } from './acting.ts';

const listeners = new Set<() => void>();

/** Tells whatever shows it that something was kept in this browser, or left it. */
export function noteOutside(): void {
  for (const listener of listeners) listener();
}

export function listenOutside(listener: () => void) {
  listeners.add(listener);
  addEventListener('storage', listener);
  return () => {
    listeners.delete(listener);
    removeEventListener('storage', listener);
  };
}

/** What a browser keeps of a shed door, a line, a shop and a lorry, and of photos taken there; the places are called so. */
const KINDS = ['loans', 'log', 'bought', 'landing', 'photos'];

type Kept = readonly { readonly refusal: unknown }[] | { readonly written: Kept };
const listed = (kept: Kept): readonly { readonly refusal: unknown }[] =>
  'written' in kept ? listed(kept.written) : kept;

/**
 * Whether something that a person wrote down without a signal waits in this browser, or was refused: all that every page must
 * know, so that the parts that show and send it come only where they are needed. What was written for a neighbour's household
 * waits until somebody acts for it again.
 */
export function useOutside({ storehouse, personId }: { storehouse: string; personId: string }) {
  const acting = actingHere();
  // A counter's place ends with a point where nobody acts for another.
  const ends = acting ? [`.${personId}.${acting.household}`] : [`.${personId}`, `.${personId}.`];
  const isOwn = (place: string) =>
    KINDS.some((kind) => place.startsWith(`sheafbook.${kind}.${storehouse}.`)) &&
    ends.some((end) => place.endsWith(end));
  return useSyncExternalStore(listenOutside, () => {
    const kept = Object.keys(localStorage)
      .filter(isOwn)
      .flatMap((place) => listed(JSON.parse(localStorage.getItem(place) ?? '[]') as Kept));
    if (kept.length === 0) return 'nothing';
    return kept.some(({ refusal }) => refusal !== null) ? 'refused' : 'waits';
  });
}
