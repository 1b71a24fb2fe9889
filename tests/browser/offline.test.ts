import { type AddressInfo, connect, createServer, type Socket } from 'node:net';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { A_PASSWORD, aStorehouse } from '../support/storehouse.ts';
import { settle } from './support/crawl.ts';
import { openSite, type Site } from './support/site.ts';

let site: Site;
beforeAll(async () => {
  site = await openSite();
  await aStorehouse(site.app);
}, 120_000);
afterAll(() => site.close());

/** A way to the server that can be cut, as a phone's is in a cellar. */
async function openCable(to: string) {
  const sockets = new Set<Socket>();
  const target = Number(new URL(to).port);
  let isCut = false;
  const server = createServer((near) => {
    if (isCut) {
      near.destroy();
      return;
    }
    const far = connect(target, '127.0.0.1');
    for (const [one, other] of [
      [near, far],
      [far, near],
    ] as const) {
      sockets.add(one);
      one.on('error', () => other.destroy());
      one.on('close', () => {
        other.destroy();
        sockets.delete(one);
      });
      one.pipe(other);
    }
  });
  await new Promise((listening) => server.listen(0, '127.0.0.1', () => listening(null)));
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    cut: () => {
      isCut = true;
      for (const socket of sockets) socket.destroy();
    },
    mend: () => {
      isCut = false;
    },
    close: () => new Promise((closed) => server.close(closed)),
  };
}

test('a page that was opened before opens without a signal, says since when it stood, and is gone with its person', async () => {
  const cable = await openCable(site.url);
  const { page, complaints } = await site.visit();
  await page.goto(`${cable.url}/sign-in`);
  await page.getByLabel('E-mail').fill('coordinator@example.org');
  await page.getByLabel('Password').fill(A_PASSWORD);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.waitForURL(/\/s\//);
  await settle(page);
  await page.evaluate('navigator.serviceWorker.ready.then(() => undefined)');
  await page.reload(); // now the worker stands between, and keeps what comes
  await settle(page);
  const before = await page.locator('h1').textContent();
  const home = page.url();

  cable.cut();
  await page.goto(home);
  await page.getByText(/^No signal\. This is how it stood/).waitFor();
  expect(await page.locator('h1').textContent()).toBe(before);
  await page.goto(`${home}/people`); // never opened with a signal
  await page.getByText('this page was never opened here before').waitFor();

  cable.mend();
  await page.goto(`${home}/household`);
  await settle(page);
  expect(await page.getByText('No signal').count()).toBe(0);
  expect(await keptReadings()).toBeGreaterThan(0);
  await page.getByRole('button', { name: 'Sign out here' }).click();
  await page.waitForURL(/\/sign-in/);
  expect(await keptReadings()).toBe(0);

  cable.cut();
  await page.goto(home);
  await page.getByRole('button', { name: 'Try again' }).waitFor();
  expect(await page.locator('h1').count()).toBe(0);
  expect(complaints).toEqual([]);
  await cable.close();

  function keptReadings(): Promise<number> {
    return page.evaluate<number>(
      `caches.keys().then(async (names) => {
        const kept = await Promise.all(names.filter((name) => name.includes('readings')).map(async (name) => (await (await caches.open(name)).keys()).length));
        return kept.reduce((sum, count) => sum + count, 0);
      })`,
    );
  }
}, 180_000);

test('the app can be put on a phone’s screen: its manifest and every picture that it names are there', async () => {
  const manifest = (await (await fetch(`${site.url}/manifest.webmanifest`)).json()) as {
    icons: { src: string; sizes: string; type: string; purpose: string }[];
  };
  expect(manifest.icons.map(({ sizes, purpose }) => `${sizes} ${purpose}`)).toEqual([
    'any any',
    '192x192 any',
    '512x512 any',
    '512x512 maskable',
  ]);
  for (const { src, sizes, type } of manifest.icons) {
    const answer = await fetch(`${site.url}${src}`);
    expect({ src, type: answer.headers.get('content-type')?.replace(/;.*/, '') }).toEqual({ src, type });
    if (type !== 'image/png') continue;
    const bytes = Buffer.from(await answer.arrayBuffer());
    // A PNG's width stands in bytes 16 to 19 (PNG specification, third edition, 11.2.1).
    expect(`${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}`).toBe(sizes);
  }
});
