import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { settle } from './support/crawl.ts';
import type { DemoSite } from './support/demo-site.ts';

// The few pictures that the README shows, small enough to lie in the repository.

const folder = fileURLToPath(new URL('../../apps/web/pictures', import.meta.url));
const PHONE = { viewport: { width: 390, height: 844 }, deviceScaleFactor: 1.5 };
const DESK = { viewport: { width: 1280, height: 860 } };

async function keep(page: Page, name: string): Promise<void> {
  await settle(page);
  await page.waitForTimeout(500); // the last of the drawings, and the price of what stands on the beam
  const browser = await page.context().newCDPSession(page);
  const { data } = await browser.send('Page.captureScreenshot', { format: 'webp', quality: 70 });
  writeFileSync(`${folder}/${name}.webp`, data, 'base64');
}

export async function takeForReadme(site: DemoSite): Promise<void> {
  mkdirSync(folder, { recursive: true });
  const phone = await site.visit('member', PHONE);
  await phone.goto(site.root);
  await keep(phone, 'home');
  await phone.goto(`${site.root}/buys`);
  await phone.getByRole('link', { name: /Winter grain/ }).click();
  await phone.locator('main a[href*="/lines/"]').first().click();
  await phone.locator('.beam').waitFor();
  await keep(phone, 'pledge');
  await phone.context().close();
  const desk = await site.visit('treasurer', DESK);
  await desk.goto(`${site.root}/books`);
  await keep(desk, 'treasurer');
  await desk.context().close();
}
