import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { serve } from '@hono/node-server';
import type { Page } from 'playwright-core';
import { cookieOf, openTestApp, type TestApp } from '../../support/app.ts';
import { A_PASSWORD } from '../../support/storehouse.ts';
import { type Browsing, openChromium } from './chromium.ts';

export type Site = {
  readonly app: TestApp;
  readonly url: string;
  /** A browser of one person with nothing kept, in a phone's width unless asked otherwise. */
  visit(options?: { width?: number; language?: string }): Promise<Visit>;
  /**
   * The same, signed in already, with the app's own day on its calendar: for pages of a storehouse that lives at another
   * time than this machine. The cookie has no end, since the browser's own clock knows nothing of that.
   */
  enter(email: string, options?: { width?: number; language?: string }): Promise<Visit>;
  /** Takes the server out of reach, or back: every connection to it breaks, whoever in the browser opened it. */
  cut(isCut: boolean): void;
  /** The same, and the browser of a page is told that it has no signal. */
  loseSignal(page: Page, isLost: boolean): Promise<void>;
  /** A tab that is opened some minutes later, with a signal, by whoever closed this one. */
  openLater(page: Page, minutes: number, path: string): Promise<Page>;
  close(): Promise<void>;
};

export type Visit = {
  readonly page: Page;
  /** Addresses that were asked of any host but this one. */
  readonly strays: readonly string[];
  /** Bytes of script, as they came over the wire with gzip. */
  scriptBytes(): number;
  /** What the browser complained of: refused by the content security policy, or thrown. */
  readonly complaints: readonly string[];
};

/** The real application on a real port, and a real browser to open it with. */
export async function openSite(
  startsAt = new Date().toISOString(),
  browserArgs: readonly string[] = [],
): Promise<Site> {
  const app = await openTestApp(startsAt);
  const server = serve({ fetch: app.app.fetch, port: 0, hostname: '127.0.0.1' }) as Server;
  let isOutOfReach = false;
  server.on('connection', (socket) => {
    if (isOutOfReach) socket.destroy();
  });
  await new Promise((listening) => server.once('listening', () => listening(null)));
  const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  const browser = await openChromium(browserArgs);
  const cut = (isCut: boolean) => {
    isOutOfReach = isCut;
    if (isCut) server.closeAllConnections();
  };
  const loseSignal = async (page: Page, isLost: boolean) => {
    cut(isLost);
    await page.context().setOffline(isLost);
  };
  return {
    app,
    url,
    visit: (options) => visit(browser, url, options),
    ...{ cut, loseSignal },
    openLater: async (closing, minutes, path) => {
      await closing.close();
      app.clock.now = new Date(app.clock.now.getTime() + minutes * 60_000);
      await loseSignal(closing, false);
      const page = await closing.context().newPage();
      page.setDefaultTimeout(40_000);
      await page.clock.setFixedTime(app.clock.now);
      await page.goto(path);
      return page;
    },
    enter: async (email, options) => {
      const answer = await app.as().post('/api/session', { email, password: A_PASSWORD });
      const [name = '', value = ''] = cookieOf(answer).split('=');
      const visiting = await visit(browser, url, options);
      await visiting.page.context().addCookies([{ name, value, url }]);
      await visiting.page.clock.setFixedTime(app.clock.now);
      return visiting;
    },
    close: async () => {
      await browser.close();
      await new Promise((closed) => server.close(closed));
      await app.close();
    },
  };
}

async function visit(
  browser: Browsing,
  url: string,
  { width = 390, language = 'en-US' }: { width?: number; language?: string } = {},
): Promise<Visit> {
  const context = await browser.newContext({
    baseURL: url,
    viewport: { width, height: 844 },
    locale: language,
    timezoneId: 'America/Chicago',
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  page.setDefaultTimeout(40_000);
  const strays: string[] = [];
  const complaints: string[] = [];
  const bytes = new Map<string, number>(); // by address: what the browser kept is not fetched again
  page.on('request', (request) => {
    if (!request.url().startsWith(url)) strays.push(request.url());
  });
  page.on('response', async (response) => {
    if (response.request().resourceType() !== 'script') return;
    const headers = await response.allHeaders().catch(() => null); // the page may be gone before they are told
    if (headers) bytes.set(response.url(), Number(headers['content-length'] ?? Number.NaN));
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (/Content Security Policy/.test(message.text())) complaints.push(message.text());
  });
  return {
    page,
    strays,
    complaints,
    scriptBytes: () => [...bytes.values()].reduce((sum, some) => sum + some, 0),
  };
}
