// Keeps what a lorry park needs on the phone, so that the page of the lorry opens without a signal too: the app's own
// files, and the last readings of who is here and of what has landed. With a signal the server's word always comes first.
// Signing out takes all of it off the phone.
const SHELF = 'sheafbook-offline-1';
const HOUSE = '/api/storehouses/[^/]+';
const READINGS = [
  '/api/session',
  HOUSE,
  `${HOUSE}/persons`,
  `${HOUSE}/buys/[^/]+`,
  `${HOUSE}/buys/[^/]+/(?:landing|deliveries|bags)`,
  `${HOUSE}/holds`,
].map((path) => new RegExp(`^${path}$`));

const isAsset = ({ pathname }) => pathname.startsWith('/assets/');
const isReading = ({ pathname }) => READINGS.some((reading) => reading.test(pathname));

addEventListener('install', () => self.skipWaiting());
addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));

addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (url.origin !== location.origin) return;
  if (request.method === 'DELETE' && /^\/api\/sessions?$/.test(url.pathname)) {
    event.waitUntil(caches.delete(SHELF));
    return;
  }
  if (request.method !== 'GET') return;
  if (request.mode === 'navigate') event.respondWith(serverFirst(request, '/'));
  else if (isAsset(url)) event.respondWith(shelfFirst(request));
  else if (isReading(url)) event.respondWith(serverFirst(request, request.url));
});

// The page names what it was made of before this file was there to see it fetched.
addEventListener('message', (event) => {
  const urls = event.data.map((text) => new URL(text, location.origin));
  const wanted = urls.filter((url) => url.origin === location.origin && (isAsset(url) || isReading(url)));
  event.waitUntil(Promise.all([keep('/'), ...wanted.map((url) => keep(url.href))]));
});

async function keep(address) {
  const answer = await fetch(address, address === '/' ? { headers: { Accept: 'text/html' } } : {});
  if (answer.ok) await (await caches.open(SHELF)).put(address, answer);
}

async function serverFirst(request, address) {
  try {
    const answer = await fetch(request);
    if (answer.status === 401) await caches.delete(SHELF);
    else if (answer.ok) await (await caches.open(SHELF)).put(address, answer.clone());
    return answer;
  } catch (error) {
    const kept = await caches.match(address);
    if (kept) return kept;
    throw error;
  }
}

async function shelfFirst(request) {
  const kept = await caches.match(request);
  if (kept) return kept;
  const answer = await fetch(request);
  if (answer.ok) await (await caches.open(SHELF)).put(request, answer.clone());
  return answer;
}
