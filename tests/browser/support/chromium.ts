import { existsSync, mkdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium } from 'playwright-core';

const SYSTEM_PATHS = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** Quiet flags: a browser under test asks no other host for anything. */
const ARGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** A browser as one file of tests sees it: what is opened by it closes with it. */
export type Browsing = {
  newContext(options?: BrowserContextOptions): Promise<BrowserContext>;
  close(): Promise<void>;
};

let kept: Promise<Browser> | undefined;

/** One process for all files of a worker, since each start of it costs a second; with arguments besides, one of its own. */
export async function openChromium(besides: readonly string[] = []): Promise<Browsing> {
  if (besides.length > 0) return launch(besides);
  const before = await kept?.catch(() => undefined);
  const opening = before?.isConnected() ? Promise.resolve(before) : launch([]); // the first, or one in place of a crashed one
  kept = opening;
  const browser = await opening;
  const contexts: BrowserContext[] = [];
  return {
    async newContext(options) {
      const context = await browser.newContext(options);
      contexts.push(context);
      return context;
    },
    close: async () => {
      await Promise.all(contexts.map((context) => context.close()));
    },
  };
}

/** Ends the kept process, for whoever is no worker of the tests, which end it with themselves. */
export async function stopChromium(): Promise<void> {
  await (await kept)?.close();
  kept = undefined;
}

/** The system's Chromium where there is one, else the pinned one, unpacked into a folder of its own. */
async function launch(besides: readonly string[]): Promise<Browser> {
  const executablePath = SYSTEM_PATHS.find((path) => existsSync(path)) ?? (await unpack());
  return chromium.launch({ executablePath, args: [...ARGS, ...besides], headless: true });
}

/** It unpacks into the temp folder and takes what lies there for its own, so it gets one that is nobody else's. */
async function unpack(): Promise<string> {
  const before = process.env.TMPDIR;
  const folder = join(tmpdir(), 'sheafbook-chromium-143');
  mkdirSync(folder, { recursive: true });
  process.env.TMPDIR = folder;
  try {
    const { default: pinned } = await import('@sparticuz/chromium');
    return await pinned.executablePath();
  } finally {
    if (before === undefined) delete process.env.TMPDIR;
    else process.env.TMPDIR = before;
  }
}
