import { useEffect } from 'react';

const AGAIN_MS = 8_000;

/**
 * Sends what a place of this browser keeps: at once and every few seconds so long as something waits there, and whenever the
 * signal is back.
 */
export function useSending(place: string, hasWaiting: boolean, send: () => Promise<unknown>): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is sent is read from the browser, not from this render
  useEffect(() => {
    const go = () => void send();
    if (hasWaiting) go();
    const timer = hasWaiting ? setInterval(go, AGAIN_MS) : undefined;
    addEventListener('online', go);
    return () => {
      clearInterval(timer);
      removeEventListener('online', go);
    };
  }, [place, hasWaiting]);
}
