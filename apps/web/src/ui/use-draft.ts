import { useState } from 'react';
import { actingHere } from '../api/acting.ts';

/**
 * A form that outlives a closed tab or a dead battery. Passwords are never part of a draft, and what is typed for a
 * neighbour is a draft of its own.
 */
export function useDraft<Draft extends object>(name: string, start: Draft) {
  const place = `sheafbook.draft.${actingHere()?.household ?? ''}${name}`;
  const [draft, setDraft] = useState<Draft>(() => ({
    ...start,
    ...(JSON.parse(localStorage.getItem(place) ?? '{}') as Partial<Draft>),
  }));
  const change = (part: Partial<Draft>) =>
    setDraft((before) => {
      const after = { ...before, ...part };
      localStorage.setItem(place, JSON.stringify(after));
      return after;
    });
  const forget = () => localStorage.removeItem(place);
  const reset = (to: Draft) => {
    forget();
    setDraft(to);
  };
  return { draft, change, forget, reset };
}
