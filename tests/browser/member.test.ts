import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestDatabase, type TestDatabase } from '../support/database.ts';
import { listViolations } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { type DemoSite, openDemoSite } from './support/demo-site.ts';

let database: TestDatabase;
let site: DemoSite;
beforeAll(async () => {
  database = await openTestDatabase();
  site = await openDemoSite(database);
}, 240_000);
afterAll(async () => {
  await site.close();
  await database.close();
});

test('four places stand in a phone’s bar, and a drawer that keys open and close holds the rest', async () => {
  const page = await site.visit('member');
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (/Content Security Policy/.test(message.text())) complaints.push(message.text());
  });
  await page.goto(site.root);
  await settle(page);
  const bar = page.locator('.tabs');
  expect(await bar.getByRole('link').count()).toBe(4);
  await bar.getByRole('button', { name: 'More' }).focus();
  await page.keyboard.press('Enter');
  const drawer = page.getByRole('dialog', { name: 'More places' });
  await drawer.waitFor();
  expect(await listViolations(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await drawer.waitFor({ state: 'detached' });
  expect(await page.evaluate<string>('document.activeElement.textContent')).toBe('More');
  expect(complaints).toEqual([]);
});
