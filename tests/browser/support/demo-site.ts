import { randomBytes } from 'node:crypto';
import type { AddressInfo } from 'node:net';
import { serve } from '@hono/node-server';
import { createApp, openLog, readConfig } from '@sheafbook/api';
import type { Db } from '@sheafbook/db';
import type { BrowserContextOptions, Page } from 'playwright-core';
import type { Sql } from 'postgres';
import { DEMO_PASSWORD } from '../../../db/src/demo/people.ts';
import { openChromium } from './chromium.ts';

/** Who of the story looks at the pages; between them they hold every duty that has pages of its own. */
export const LOOKERS = {
  member: 'hugh',
  coordinator: 'cora',
  treasurer: 'ned',
  'packing-lead': 'joan',
  'equipment-keeper': 'gwen',
  reviewer: 'beth',
} as const;
export type Looker = keyof typeof LOOKERS;
/** Anybody else of the story, when who it is comes out only as it is told. */
export type Neighbour = { readonly firstName: string };

export type DemoSite = {
  readonly url: string;
  /** The storehouse's own root among the pages. */
  readonly root: string;
  /** A browser of one person of the story, signed in, with the story's day on its calendar; null is a stranger. */
  visit(looker: Looker | Neighbour | null, options?: BrowserContextOptions): Promise<Page>;
  close(): Promise<void>;
};

/** The evening on which the story ends. Server and browsers both stand there, so that every run shows the same. */
const STORY_ENDS_AT = '2026-11-21T23:00:00Z';

/** Serves a database in which the demo's story was told to real browsers on a real port. */
export async function openDemoSite(database: { db: Db; sql: Sql }, storehouseId: string): Promise<DemoSite> {
  const startedAt = Date.now();
  const now = () => new Date(Date.parse(STORY_ENDS_AT) + Date.now() - startedAt);
  const outside = { ...database, now, randomBytes };
  const app = createApp({ outside, config: readConfig({}), log: openLog('error') });
  const server = serve({ fetch: app.fetch, port: 0, hostname: '127.0.0.1' });
  await new Promise((listening) => server.once('listening', () => listening(null)));
  const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  const browser = await openChromium();

  /** Signed in beside the browser, and without an end of the cookie: the browser's own clock knows no story. */
  async function cookieOf(looker: Looker | Neighbour) {
    const name = typeof looker === 'string' ? LOOKERS[looker] : looker.firstName.toLowerCase();
    const answer = await app.request('/api/session', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', 'Idempotency-Key': crypto.randomUUID() },
      body: JSON.stringify({ email: `${name}@alder-row.example`, password: DEMO_PASSWORD }),
    });
    const [pair = ''] = (answer.headers.getSetCookie().at(-1) ?? '').split(';');
    const [cookie = '', value = ''] = pair.split('=');
    if (!answer.ok) throw new Error(`${name} could not sign in: ${await answer.text()}`);
    return { name: cookie, value, url };
  }

  return {
    url,
    root: `/s/${storehouseId}`,
    async visit(looker, options = {}) {
      const context = await browser.newContext({
        baseURL: url,
        viewport: { width: 390, height: 844 },
        locale: 'en-US',
        timezoneId: 'America/Chicago',
        reducedMotion: 'reduce',
        ...options,
      });
      if (looker) await context.addCookies([await cookieOf(looker)]);
      const page = await context.newPage();
      page.setDefaultTimeout(40_000);
      await page.clock.setFixedTime(STORY_ENDS_AT);
      return page;
    },
    async close() {
      await browser.close();
      await new Promise((closed) => server.close(closed));
    },
  };
}
