import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { aBuy } from '../support/buy.ts';
import { readCalendar } from '../support/calendar.ts';
import { aHousehold } from '../support/household.ts';
import { aStorehouse } from '../support/storehouse.ts';
import { listViolations, overflowOf, smallTargets } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { openSite, type Site, type Visit } from './support/site.ts';

let site: Site;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z');
  const storehouse = await aStorehouse(site.app);
  await aHousehold(site.app, storehouse, 'Dell');
  await aBuy(site.app, storehouse, { name: 'Autumn grain' });
}, 120_000);
afterAll(() => site.close());

async function openCalendar({ page }: Visit): Promise<void> {
  await page.goto('/');
  await page.waitForURL(/\/s\//);
  await settle(page);
  await page.goto(`${page.url()}/household`);
  await page.getByRole('link', { name: /^(Calendar|Calendario)$/ }).click();
  await page.waitForURL(/\/calendar$/);
  await settle(page);
}

/** What a calendar program gets from an address that the page shows; the page's own address has another port here. */
async function read(address: string) {
  const answer = await fetch(`${site.url}${new URL(address).pathname}`);
  return { status: answer.status, text: await answer.text() };
}
const addressOn = (page: Page) => page.getByLabel('Address', { exact: true }).inputValue();

test('a member has the storehouse’s days in their own calendar, and a new address when the old one got about', async () => {
  const visit = await site.enter('dell@example.org');
  const { page } = visit;
  await openCalendar(visit);
  await page.getByRole('heading', { name: '2 days and hours lie ahead.' }).waitFor();
  expect(await page.getByRole('listitem').first().textContent()).toContain('Autumn grain: gathering closes');
  await page.getByRole('button', { name: 'Make an address' }).click();
  await page.getByText('shown this once').waitFor();
  const first = await addressOn(page);
  expect(await page.getByRole('link', { name: /device’s calendar/ }).getAttribute('href')).toBe(
    first.replace('http:', 'webcal:'),
  );
  const { events } = readCalendar((await read(first)).text);
  expect(events.map(({ summary }) => summary)).toEqual([
    'Autumn grain: gathering closes',
    'Autumn grain: order day',
  ]);
  expect(await listViolations(page)).toEqual([]);
  expect(await smallTargets(page)).toEqual([]);

  await page.reload();
  await settle(page);
  expect(await page.getByLabel('Address', { exact: true }).count()).toBe(0); // not shown again
  await page.getByRole('button', { name: 'New address' }).click();
  await page.getByText('shown this once').waitFor();
  const second = await addressOn(page);
  expect([(await read(first)).status, (await read(second)).status]).toEqual([404, 200]);
  await page.getByRole('button', { name: 'End it' }).click();
  await page.getByText('You have made none.').waitFor();
  expect((await read(second)).status).toBe(404);
  expect(visit.complaints).toEqual([]);
});

test('one day is saved as a file, from the page of its buy too', async () => {
  const { page } = await site.enter('dell@example.org');
  await page.goto('/');
  await page.waitForURL(/\/s\//);
  await page.goto(`${page.url()}/buys`);
  await page
    .getByRole('link', { name: /Autumn grain/ })
    .first()
    .click();
  await page.getByText('Its days in a calendar').click();
  const saving = page.waitForEvent('download');
  await page.getByRole('link', { name: /Autumn grain: order day/ }).click();
  const file = await saving;
  expect(file.suggestedFilename()).toBe('storehouse.ics');
  let text = '';
  for await (const part of await file.createReadStream()) text += part;
  expect(readCalendar(text).events).toMatchObject([
    { summary: 'Autumn grain: order day', day: '2026-09-24' },
  ]);
  expect(await listViolations(page)).toEqual([]);
});

test('the calendar reads in Spanish on a narrow phone and by keyboard', async () => {
  const visit = await site.enter('dell@example.org', { width: 320, language: 'es' });
  const { page } = visit;
  await openCalendar(visit);
  await page.getByRole('heading', { name: 'Hay 2 fechas y horas por delante.' }).waitFor();
  await page.getByText('Autumn grain: día del pedido', { exact: true }).waitFor();
  expect(await overflowOf(page)).toBe(0);
  await page.getByLabel('Muestra').focus();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await page.getByText('se muestra solo esta vez').waitFor();
  expect(await overflowOf(page)).toBe(0);
  expect(await listViolations(page)).toEqual([]);
  const { text } = await read(await page.getByLabel('Dirección', { exact: true }).inputValue());
  expect(readCalendar(text).events.map(({ summary }) => summary)).toContain('Autumn grain: día del pedido');
});
