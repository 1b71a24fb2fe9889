import { useSyncExternalStore } from 'react';

/** The name of the header in which the service worker says since when it has kept an answer. */
const HEADER = 'Sheafbook-Kept';

let since: string | null = null;
const listeners = new Set<() => void>();

/** Notes whether an answer came from the server or is one that was kept, and then from when. */
export function noteKept(headers: Headers): void {
  const found = headers.get(HEADER);
  // Several readings of one page: the oldest says how the page stood.
  const next = found === null ? null : since !== null && since < found ? since : found;
  if (next === since) return;
  since = next;
  for (const tell of listeners) tell();
}

const listen = (tell: () => void) => {
  listeners.add(tell);
  return () => listeners.delete(tell);
};

/** The instant from which what is shown was kept; null while the server answers. */
export const useKeptSince = (): string | null => useSyncExternalStore(listen, () => since);
