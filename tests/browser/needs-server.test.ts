import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { aHall, aPackingSession, cansOf, type TestHall } from '../support/packing.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { settle } from './support/crawl.ts';
import { openSite, type Site } from './support/site.ts';

// What stands on what the book has counted, or hands out what there is once, is not put off: it says so at once.
let site: Site;
let storehouse: TestStorehouse;
let hall: TestHall;
let day: string;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z');
  storehouse = await aStorehouse(site.app);
  hall = await aHall(site.app, storehouse);
  day = await aPackingSession(storehouse, hall, { name: 'Autumn canning' });
  const wishes = [cansOf(hall, { containers: 3, gramsEach: 2000, treatment: 'none' })];
  bodyOf(await hall.buy.households.Dell.caller.put(`${day}/wishes`, { wishes }));
}, 120_000);
afterAll(() => site.close());

const ofDay = (path = '') => `/s/${storehouse.storehouseId}/packing/${day.split('/').at(-1)}${path}`;
const SAID = 'No signal. Nothing was sent; try again when you have one.';
const kept = (page: Page) =>
  page.evaluate<number>(
    `Object.keys(localStorage).filter((place) => place.startsWith('sheafbook.log.')).length`,
  );

test('a time on a line is not booked without a signal; what was typed stays', async () => {
  const { page } = await site.enter('dell@example.org');
  await page.goto(ofDay());
  await page.getByLabel('Begin at').fill('12:10');
  await settle(page);
  await site.loseSignal(page, true);
  await page.getByRole('button', { name: 'Book this time' }).click();
  await page.getByText(SAID).waitFor();
  expect(await kept(page)).toBe(0);
  await site.loseSignal(page, false);
  await page.reload();
  expect(await page.getByLabel('Begin at').inputValue()).toBe('12:10');
  expect(bodyOf(await hall.lead.caller.get(`${day}/plan`)).slots).toEqual([]);
}, 180_000);

test('no day begins and no label is made without a signal: their codes are the book’s', async () => {
  const { page } = await site.enter('pat-corran@example.org');
  await page.goto(ofDay('/labels'));
  await page.getByRole('button', { name: 'Make the labels' }).waitFor();
  await settle(page);
  await page.goto(ofDay());
  await page.getByRole('button', { name: 'Begin the day' }).waitFor();
  await settle(page);
  await site.loseSignal(page, true);
  await page.getByRole('button', { name: 'Begin the day' }).click();
  await page.getByText(SAID).waitFor();
  await page.getByRole('link', { name: 'Labels ahead' }).click();
  await page.getByLabel('How many labels').fill('4');
  await page.getByRole('button', { name: 'Make the labels' }).click();
  await page.getByText(SAID).waitFor();
  expect(await kept(page)).toBe(0);
  await site.loseSignal(page, false);
  await page.reload();
  expect(await page.getByLabel('How many labels').inputValue()).toBe('4');
  expect(bodyOf(await hall.lead.caller.get(day)).session.stage).toBe('open');
}, 180_000);
