import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { aFixedBuy, GRAIN_DEPOSITS } from '../support/fixed-buy.ts';
import { aSharedBuy, type TestSharedBuy } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { listViolations, overflowOf, smallTargets } from './support/checks.ts';
import { openSite, type Site } from './support/site.ts';

let site: Site;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
let root: string;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z');
  storehouse = await aStorehouse(site.app);
  buy = await aSharedBuy(site.app, storehouse);
  root = `/s/${storehouse.storehouseId}/books`;
});
afterAll(() => site.close());

const desk = async (name: string) => (await site.enter(`${name}@example.org`, { width: 1280 })).page;
const money = (minorUnits: number) => (minorUnits / 100).toFixed(2);
const entries = async (query: string) =>
  bodyOf(await buy.treasurer.get(`${storehouse.path}/entries?limit=200&${query}`)).entries as {
    entryNo: number;
  }[];

test('the whole journal is searched by word, kind and day, and what was looked for stands in the address', async () => {
  const page = await desk('birchall');
  await page.goto(`${root}/entries`);
  await page.getByLabel('Find by word, name or number').fill('corran');
  await page.getByRole('button', { name: 'Find' }).click();
  await page.waitForURL(/words=corran/);
  const ofCorran = await entries('words=corran');
  expect(ofCorran.length).toBeGreaterThan(0);
  expect(ofCorran.length).toBeLessThan((await entries('')).length);
  await expect.poll(() => page.locator('tbody tr').count(), { timeout: 40_000 }).toBe(ofCorran.length);
  await page.getByLabel('What', { exact: true }).selectOption({ label: 'Deposit received' });
  await page.waitForURL(/what=/);
  await expect
    .poll(() => page.locator('tbody tr').count(), { timeout: 40_000 })
    .toBe((await entries('words=corran&what=deposit,deposit-received')).length);
  await page.getByLabel('To the day').fill('2020-01-01');
  await page.getByText('No entry of the book has that.').waitFor();
  expect(await listViolations(page)).toEqual([]);
  expect(await smallTargets(page)).toEqual([]);
  await page.setViewportSize({ width: 320, height: 700 });
  expect(await overflowOf(page)).toBe(0);
}, 180_000);

test('a coordinator at the desk’s address is told whose it is, with the pages that are theirs', async () => {
  const page = await desk('coordinator');
  for (const path of [root, `${root}/owing`, `${root}/clearing/${buy.buyId}`]) {
    await page.goto(path);
    await page
      .getByRole('heading', { name: 'The books are read by the treasurer and the reviewer.' })
      .waitFor();
  }
  await page
    .getByRole('navigation', { name: 'Books' })
    .getByRole('link', { name: 'Year', exact: true })
    .waitFor();
  expect(await listViolations(page)).toEqual([]);
}, 180_000);

test('after a part of a deposit came in the form offers what is open now, and what is held goes back', async () => {
  await aFixedBuy(site.app, storehouse, { households: buy.households });
  const page = await desk('birchall');
  await page.goto(`${root}/deposits`);
  const dell = page.locator('li.claim').filter({ hasText: 'Dell' });
  await dell.getByText('A deposit came in').click();
  expect(await dell.getByLabel('Received').inputValue()).toBe(money(GRAIN_DEPOSITS.Dell));
  await dell.getByLabel('Received').fill('20.00');
  await dell.getByRole('button', { name: 'Post' }).first().click();
  await expect.poll(() => dell.getByLabel('Received').inputValue(), { timeout: 40_000 }).toBe('3.00');
  await dell.getByText('Give back').click();
  expect(await dell.getByLabel('Amount').inputValue()).toBe('20.00');
  await dell.getByText('Posts 20.00 out of the deposit of Dell.').waitFor();
  await dell.getByRole('button', { name: 'Post' }).last().click();
  await expect.poll(() => dell.getByLabel('Received').inputValue(), { timeout: 40_000 }).toBe('23.00');
  expect((await entries('what=deposit-refunded')).length).toBe(1);
}, 180_000);

test('a payment is entered by keys alone', async () => {
  const page = await desk('birchall');
  await page.goto(`${root}/owing`);
  await page.getByLabel('Find a household').focus();
  await page.keyboard.type('dell');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await page.getByLabel('Received').waitFor();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  expect(await page.evaluate('document.activeElement.textContent')).toBe('By bank');
  await page.keyboard.press('Enter');
  await page.getByText('from Dell is posted.').waitFor();
  const { balanceMinorUnits } = bodyOf(
    await buy.treasurer.get(`${storehouse.path}/households/${buy.households.Dell.householdId}/balance`),
  );
  expect(balanceMinorUnits).toBe(0);
}, 180_000);
