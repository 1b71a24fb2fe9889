import { existsSync, mkdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';

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

/** The system's Chromium where there is one, else the pinned one, unpacked into a folder of its own. */
export async function openChromium(besides: readonly string[] = []): Promise<Browser> {
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
