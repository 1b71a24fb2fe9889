import { randomBytes } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import { serve } from '@hono/node-server';
import { createApp, openLog, readConfig } from '@sheafbook/api';
import type { BrowserContext, Page } from 'playwright-core';
import { build } from 'vite';
import { DEMO_PASSWORD } from '../../db/src/demo/people.ts';
import { tellStory } from '../../db/src/demo/story.ts';
import { openTeller } from '../../db/src/demo/teller.ts';
import { withThrowawayDatabase } from '../../db/src/demo/throwaway.ts';
import { openChromium } from './support/chromium.ts';

// `npm run pictures`: every page from the demo storehouse, at a phone's and at a desk's width, into pictures/.

const folder = fileURLToPath(new URL('../../pictures', import.meta.url));
const WIDTHS = { phone: { width: 390, height: 844 }, desk: { width: 1280, height: 860 } } as const;
const STORY_ENDS_AT = '2026-11-21T23:00:00Z';

type Shot = { readonly name: string; readonly path: string };

async function listShots(page: Page, storehouse: string): Promise<Shot[]> {
  const base = `/api/storehouses/${storehouse}`;
  const read = <Body>(path: string) =>
    page.evaluate<Body>(`fetch('${path}').then((answer) => answer.json())`);
  const { buys } = await read<{ buys: { id: string; name: string; stage: string }[] }>(`${base}/buys`);
  const root = `/s/${storehouse}`;
  const shots: Shot[] = [
    { name: 'home', path: root },
    { name: 'welcome', path: `${root}/welcome` },
    { name: 'buys', path: `${root}/buys` },
    { name: 'statement', path: `${root}/statement` },
    { name: 'household', path: `${root}/household` },
  ];
  for (const buy of buys) {
    const path = `${root}/buys/${buy.id}`;
    shots.push({ name: `buy-${buy.stage}`, path });
    const { lines } = await read<{ lines: { id: string }[] }>(`${base}/buys/${buy.id}`);
    const [line] = lines;
    if (line) shots.push({ name: `food-${buy.stage}`, path: `${path}/lines/${line.id}` });
  }
  return shots;
}

async function take(page: Page, name: string): Promise<void> {
  await page.locator('h1').first().waitFor();
  await page.waitForLoadState('networkidle');
  await page.waitForTimeout(400);
  const { width = 390, height = 844 } = page.viewportSize() ?? {};
  // As tall as the page, so that the bar stands at its foot and hides nothing.
  const whole = await page.evaluate<number>('document.documentElement.scrollHeight');
  await page.setViewportSize({ width, height: Math.max(whole, height) });
  await page.screenshot({ path: `${folder}/${name}.png` });
  await page.setViewportSize({ width, height });
}

async function takeAll(context: BrowserContext, kind: string): Promise<void> {
  const page = await context.newPage();
  for (const name of ['sign-in', 'set-up']) {
    await page.goto(`/${name}`);
    await take(page, `${name}-${kind}`);
  }
  await page.goto('/sign-in');
  await page.locator('input[name=email]').fill('beth@alder-row.example');
  await page.locator('input[name=password]').fill(DEMO_PASSWORD);
  await page.locator('button[type=submit]').click();
  await page.waitForURL(/\/s\//);
  const storehouse = new URL(page.url()).pathname.split('/')[2] ?? '';
  for (const { name, path } of await listShots(page, storehouse)) {
    await page.goto(path);
    await take(page, `${name}-${kind}`);
  }
}

await build({ root: fileURLToPath(new URL('../../apps/web', import.meta.url)), logLevel: 'warn' });
mkdirSync(folder, { recursive: true });
await withThrowawayDatabase(async (database) => {
  await tellStory(openTeller(database, () => undefined));
  const startedAt = Date.now();
  const now = () => new Date(Math.max(Date.now(), Date.parse(STORY_ENDS_AT) + Date.now() - startedAt));
  const app = createApp({
    outside: { ...database, now, randomBytes },
    config: readConfig({}),
    log: openLog('error'),
  });
  const server = serve({ fetch: app.fetch, port: 0, hostname: '127.0.0.1' });
  await new Promise((listening) => server.once('listening', () => listening(null)));
  const baseURL = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  const browser = await openChromium();
  for (const [kind, viewport] of Object.entries(WIDTHS)) {
    const shown = {
      baseURL,
      viewport,
      deviceScaleFactor: 1.5,
      locale: 'en-US',
      timezoneId: 'America/Chicago',
    };
    await takeAll(await browser.newContext({ ...shown, colorScheme: 'light' }), kind);
    if (kind === 'phone')
      await takeAll(await browser.newContext({ ...shown, colorScheme: 'dark', locale: 'es-MX' }), 'dark-es');
  }
  await browser.close();
  await new Promise((closed) => server.close(closed));
});
console.log(`Pictures of every page lie in ${folder}.`);
