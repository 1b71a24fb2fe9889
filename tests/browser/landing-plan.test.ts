import { afterAll, beforeAll, expect, test } from 'vitest';
import { anOrderedBuy, type TestGrainBuy } from '../support/fixed-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { listViolations, overflowOf, smallTargets } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { openSite, type Site } from './support/site.ts';

let site: Site;
let storehouse: TestStorehouse;
let buy: TestGrainBuy;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z');
  storehouse = await aStorehouse(site.app);
  buy = await anOrderedBuy(site.app, storehouse, { name: 'Autumn grain' });
}, 120_000);
afterAll(() => site.close());

test('a coordinator moves the landing of an ordered buy with the keyboard, its day and its place, and who pledged hears of it', async () => {
  const root = `/s/${storehouse.storehouseId}`;
  const { page, complaints } = await site.enter('coordinator@example.org');
  await page.goto(`${root}/buys/${buy.buyId}/run`);
  await settle(page);
  await page.getByText('Move the landing').focus();
  await page.keyboard.press('Enter');
  await page.getByText('The day on which it lands is open.').waitFor();
  const day = page.getByLabel('Lands on');
  const send = page.getByRole('button', { name: 'Move it and tell them' });
  expect(await send.isDisabled()).toBe(true); // nothing is moved yet
  await day.fill('2026-08-30');
  await send.press('Enter');
  await page.getByText('This day is over; nothing can land on it any more.').waitFor();
  expect(await day.getAttribute('aria-invalid')).toBe('true');
  await day.fill('2026-10-10');
  await day.press('Enter');
  await page.getByText('Moved. Whoever pledged is told.').waitFor();
  await page.getByText('It lands on', { exact: false }).waitFor();
  expect(await send.isDisabled()).toBe(true); // it stands as it was sent
  const place = page.getByLabel('Where it lands');
  await place.fill('Grange hall');
  await place.press('Enter');
  await page.getByText('Where: Grange hall').waitFor();
  await settle(page);
  expect(await listViolations(page)).toEqual([]);
  expect(await smallTargets(page)).toEqual([]);
  await page.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(page)).toBe(0);

  const member = await site.enter('dell@example.org');
  await member.page.goto(`${root}/notices`);
  await member.page.getByText(/Autumn grain now lands on .*10/).waitFor();
  await member.page.getByText('Autumn grain now lands here: Grange hall.').waitFor();
  await member.page.goto(`${root}/buys/${buy.buyId}/run`);
  await settle(member.page);
  expect(await member.page.getByText('Move the landing').count()).toBe(0);
  expect([...complaints, ...member.complaints]).toEqual([]);
}, 180_000);
