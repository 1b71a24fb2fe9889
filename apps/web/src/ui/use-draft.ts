import { useContext, useState } from 'react';
import { actingHere } from '../api/acting.ts';
import { changesTo, draftText, type Rows, readDraft, type Version } from './draft-kept.ts';
import { HouseContext } from './house.ts';

const PLACE = 'sheafbook.draft.';

/** Where drafts stand in the browser; those of a newcomer belong to nobody yet. */
function usePlaces(): (name: string) => string {
  const house = useContext(HouseContext);
  return (name) =>
    `${PLACE}${[house?.storehouse, house?.personId, actingHere()?.household].map((id) => id ?? '').join('.')}.${name}`;
}

type Options<Draft> = {
  /** Of the thing that the form changes. */
  readonly version?: Version;
  readonly rows?: Rows<Draft>;
};

/**
 * A form that outlives a closed tab or a dead battery. It is kept by storehouse, by who types, by the neighbour it is typed
 * for, and by its name, which names the thing and the form: `pantry.<id>`. Passwords are never part of a draft.
 *
 * Only what the person changed is kept; the other fields show what `start` says at the time, so a form of a thing follows the
 * book. A form that changes a thing gives the thing's `version`: once a newer one is served, a draft begun from the older is
 * dropped, kept or on the screen, since it would cover what somebody else has saved. A draft that no longer fits the form
 * (`readDraft`) is dropped too. Call `reset` when it was sent, or `forget` where the form leaves the screen by that.
 */
export function useDraft<Draft extends object>(
  name: string,
  start: Draft,
  { version = 0, rows = {} }: Options<Draft> = {},
) {
  const place = usePlaces()(name);
  const read = () => {
    const typed = readDraft(localStorage.getItem(place), { start, version, rows });
    if (Object.keys(typed).length === 0) localStorage.removeItem(place);
    return { place, version, typed };
  };
  const [last, setHeld] = useState(read);
  let held = last;
  if (held.place !== place || held.version !== version) {
    held = read();
    setHeld(held);
  }
  const change = (part: Partial<Draft>) =>
    setHeld((before) => {
      const typed = changesTo(start, { ...before.typed, ...part });
      if (Object.keys(typed).length === 0) localStorage.removeItem(before.place);
      else localStorage.setItem(before.place, draftText(before.version, typed));
      return { ...before, typed };
    });
  const forget = () => localStorage.removeItem(place);
  /** Begins anew, from `start` or with something in it already that nobody has typed. */
  const reset = (to: Partial<Draft> = {}) => {
    forget();
    setHeld({ place, version, typed: changesTo(start, to) });
  };
  const isTouched = Object.keys(held.typed).length > 0;
  return { draft: { ...start, ...held.typed }, isTouched, change, forget, reset };
}

/** For what is sent from elsewhere than its form, which may be gone by the answer. */
export function useForgetDraft(): (name: string) => void {
  const placeOf = usePlaces();
  return (name) => localStorage.removeItem(placeOf(name));
}

/** Whoever signs out leaves nothing typed to the next person at this screen. */
export function forgetDrafts(): void {
  for (const place of Object.keys(localStorage)) if (place.startsWith(PLACE)) localStorage.removeItem(place);
}
