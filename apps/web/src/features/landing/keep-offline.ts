let isAsked = false;

/**
 * Asks the browser to keep these pages and their readings, so that they open in a lorry park without a signal. A hall
 * without a certificate can't: there the open tab goes on, and only its reload needs the signal.
 */
export async function keepOffline(): Promise<void> {
  if (isAsked || !('serviceWorker' in navigator) || !navigator.onLine) return;
  isAsked = true;
  try {
    await navigator.serviceWorker.register('/offline.js');
    const { active } = await navigator.serviceWorker.ready;
    const made = performance.getEntriesByType('resource').map(({ name }) => name);
    active?.postMessage([...new Set(made)]);
  } catch {
    isAsked = false; // the next page tries again
  }
}
