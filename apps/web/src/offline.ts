/**
 * Lets pages that were opened before open without a signal. Browsers allow it over HTTPS and on this very machine alone;
 * in a hall without a certificate the app works as before, and needs its server.
 */
export async function keepForOffline(): Promise<void> {
  if (!import.meta.env.PROD || !isSecureContext || !('serviceWorker' in navigator)) return;
  await navigator.serviceWorker.register('/worker.js').catch(() => undefined); // a browser may forbid it
  const { active } = await navigator.serviceWorker.ready;
  // What this page fetched before the worker stood; later fetches it keeps by itself.
  const fetched = performance.getEntriesByType('resource').map(({ name }) => new URL(name).pathname);
  active?.postMessage({ keep: fetched.filter((path) => path.startsWith('/assets/')) });
}
