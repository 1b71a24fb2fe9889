// Keeps the built app and the last readings, so that a page that was opened before opens without a signal too.
// Nothing that changes the book goes through here, and whoever signs out takes their readings with them.

const APP = 'sheafbook-app-1';
const READINGS = 'sheafbook-readings-1';
const KEPT_AT = 'Sheafbook-Kept';
const MOST_READINGS = 300;
const PAGE = '/';
/** Answers that are not for keeping: secrets of a link, and a household's whole data. */
const PASSING = /\/(invitations|take-along|archive|docs)(\/|$)|\/api\/(health|openapi)/;

self.addEventListener('install', (event) => {
  event.waitUntil(keepApp().then(() => self.skipWaiting()));
});

self.addEventListener('activate', (event) => {
  const dropOld = async () => {
    const names = await caches.keys();
    const old = names.filter((name) => name.startsWith('sheafbook-') && name !== APP && name !== READINGS);
    await Promise.all(old.map((name) => caches.delete(name)));
    await self.clients.claim();
  };
  event.waitUntil(dropOld());
});

self.addEventListener('message', (event) => {
  if (event.data?.keep) event.waitUntil(keepFiles(event.data.keep));
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (url.origin !== self.location.origin) return;
  const isReading = url.pathname.startsWith('/api/');
  if (isReading && request.method !== 'GET') return event.respondWith(change(request, url));
  if (request.method !== 'GET') return;
  if (isReading) {
    // What a helper reads of a neighbour has the same address as their own, so it is never kept.
    if (request.headers.has('Sheafbook-For-Household')) return;
    if (!PASSING.test(url.pathname)) event.respondWith(read(request, event));
    return;
  }
  if (url.pathname.startsWith('/assets/')) return event.respondWith(asset(request, event));
  if (request.mode === 'navigate' && !url.pathname.startsWith('/docs'))
    event.respondWith(page(request, event));
});

/** The page and the files that it names itself; each build's files carry their own print in their names. */
async function keepApp() {
  const answer = await fetch(PAGE, { cache: 'no-cache', headers: { Accept: 'text/html' } });
  if (!answer.ok) return;
  const text = await answer.clone().text();
  const cache = await caches.open(APP);
  await cache.put(PAGE, answer);
  await keepFiles([...text.matchAll(/"(\/assets\/[^"]+)"/g)].map(([, path]) => path));
}

async function keepFiles(paths) {
  const cache = await caches.open(APP);
  const keep = async (path) => {
    if (await cache.match(path)) return;
    const answer = await fetch(path);
    if (answer.ok) await cache.put(path, answer);
  };
  await Promise.all(paths.filter((path) => path.startsWith('/assets/')).map(keep));
}

async function asset(request, event) {
  const cache = await caches.open(APP);
  const kept = await cache.match(request.url);
  if (kept) return kept;
  const answer = await fetch(request);
  if (answer.ok) event.waitUntil(cache.put(request.url, answer.clone()));
  return answer;
}

async function page(request, event) {
  const cache = await caches.open(APP);
  try {
    const answer = await fetch(request);
    if (answer.ok) event.waitUntil(cache.put(PAGE, answer.clone()));
    return answer;
  } catch (error) {
    const kept = await cache.match(PAGE);
    if (kept) return kept;
    throw error;
  }
}

/** The network first, always: what is kept answers only where no server does. */
async function read(request, event) {
  const cache = await caches.open(READINGS);
  try {
    const answer = await fetch(request);
    if (answer.status === 401) event.waitUntil(caches.delete(READINGS)); // the session has ended, perhaps elsewhere
    const isKept = answer.ok && answer.headers.get('Content-Type')?.startsWith('application/json');
    if (isKept) event.waitUntil(keepReading(cache, request.url, answer.clone()));
    return answer;
  } catch (error) {
    const kept = await cache.match(request.url, { ignoreVary: true });
    if (kept) return kept;
    throw error;
  }
}

async function keepReading(cache, address, answer) {
  const headers = new Headers(answer.headers);
  headers.set(KEPT_AT, new Date().toISOString());
  await cache.put(address, new Response(await answer.blob(), { status: 200, headers }));
  const kept = await cache.keys(); // in the order of their keeping
  await Promise.all(kept.slice(0, Math.max(0, kept.length - MOST_READINGS)).map((old) => cache.delete(old)));
}

/** A change is sent as it is. Whoever signs in, joins or signs out must not find another person's readings. */
async function change(request, url) {
  const answer = await fetch(request);
  if (answer.ok && /^\/api\/(sessions?|invitations\/.*|set-up)$/.test(url.pathname))
    await caches.delete(READINGS);
  return answer;
}
