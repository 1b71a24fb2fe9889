import { useState } from 'react';

/** A form that outlives a closed tab or a dead battery. Passwords are never part of a draft. */
export function useDraft<Draft extends object>(name: string, start: Draft) {
  const place = `sheafbook.draft.${name}`;
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
