import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { aHall, aPackingSession, aPourBody, bringWheat, type TestHall } from '../support/packing.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { listViolations, overflowOf, smallTargets } from './support/checks.ts';
import { openSite, type Site } from './support/site.ts';

let site: Site;
let storehouse: TestStorehouse;
let hall: TestHall;
let day: string;
let page: Page;
let jars: { id: string; code: string }[];
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z');
  storehouse = await aStorehouse(site.app);
  hall = await aHall(site.app, storehouse);
  site.app.clock.now = new Date('2026-12-05T14:00:00Z');
  day = await aPackingSession(storehouse, hall, { name: 'Jar day' });
  bodyOf(await hall.lead.caller.post(`${day}/start`));
  await bringWheat(hall, day, 'Birchall');
  const jar = { containerKindId: hall.shelves.kinds['jar-quart'], treatment: 'vacuum', targetGrams: 700 };
  const body = { ...aPourBody(hall, { name: 'Birchall', grams: Array<number>(4).fill(700), ...jar }) };
  jars = bodyOf(await hall.lead.caller.post(`${day}/pours`, body), 201).containers;
});
afterAll(() => site.close());

const widths = async () => {
  expect(await listViolations(page)).toEqual([]);
  await page.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(page)).toBe(0);
  expect(await smallTargets(page)).toEqual([]);
  await page.setViewportSize({ width: 390, height: 844 });
};

test('before a day is over the page says from when each lid tells something, and asks for nothing', async () => {
  page = (await site.enter('birchall@example.org')).page;
  await page.goto(`/s/${storehouse.storehouseId}/shelf/lids`);
  await page.getByRole('heading', { name: '4 lids tell nothing yet' }).waitFor();
  expect(await page.getByRole('button', { name: /held/ }).count()).toBe(0);
  await widths();
}, 180_000);

test('a day later one of four is ticked, a slip in a typed code is told at once, and the rest held', async () => {
  site.app.clock.now = new Date('2026-12-06T18:00:00Z');
  await page.reload();
  await page.getByRole('heading', { name: '4 lids to press' }).waitFor();
  await page.getByRole('button', { name: 'All 4 held' }).waitFor();
  const codes = page.getByLabel(/^Or type their codes/);
  await codes.fill('K7M 4QV9');
  await page.getByText('One of these is no code; look at the label again.').waitFor();
  await codes.fill('');
  await page.getByRole('checkbox').first().check();
  await page.reload(); // what was ticked is still there
  await page.getByRole('button', { name: '3 held, 1 did not' }).waitFor();
  await widths();
  await page.getByRole('button', { name: '3 held, 1 did not' }).click();
  await page.getByRole('heading', { name: '1 lid did not hold' }).waitFor();
  await page.getByText(/^If the food is dry and smells right/).waitFor();
  await widths();
}, 180_000);

test('the jar’s own page says so and leads there, and closing it again begins its day anew', async () => {
  const { lids } = bodyOf(await hall.buy.households.Birchall.caller.get(`${storehouse.path}/lids`));
  expect(lids).toHaveLength(1);
  await page.goto(`/s/${storehouse.storehouseId}/shelf/${lids[0].id}`);
  await page.getByText('Its lid did not hold.').waitFor();
  await page.getByRole('link', { name: 'To the lids' }).click();
  await page.getByRole('button', { name: /^Closed again now/ }).click();
  await page.getByRole('heading', { name: '1 lid tells nothing yet' }).waitFor();
}, 180_000);

test('whoever leads the packing answers on the day’s page of seals', async () => {
  site.app.clock.now = new Date('2026-12-07T19:00:00Z');
  page = (await site.enter('pat-corran@example.org')).page;
  await page.goto(`/s/${storehouse.storehouseId}/packing/${day.split('/').at(-1)}/seals`);
  await page.getByRole('heading', { name: 'Lids of jars: 1 lid to press' }).waitFor();
  await page.getByText(/Birchall’s/).waitFor();
  await widths();
  await page.getByRole('button', { name: 'It held' }).click();
  await expect
    .poll(async () => bodyOf(await hall.lead.caller.get(`${storehouse.path}/lids?of=common`)).lids)
    .toEqual([]);
  expect(jars).toHaveLength(4);
}, 180_000);
