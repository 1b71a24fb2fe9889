import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { aLandedBuy, type TestLandedBuy } from '../support/landed-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { openSite, type Site } from './support/site.ts';

let site: Site;
let storehouse: TestStorehouse;
let buy: TestLandedBuy;
let root: string;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z');
  storehouse = await aStorehouse(site.app);
  buy = await aLandedBuy(site.app, storehouse);
  root = `/s/${storehouse.storehouseId}/books`;
});
afterAll(() => site.close());

const money = (minorUnits: number) => (minorUnits / 100).toFixed(2);

test('the desk says whether the bank pays what is due within two weeks, as the API reckons it', async () => {
  const forecast = async () =>
    bodyOf(await buy.treasurer.get(`${storehouse.path}/bank/forecast?on=2026-09-15`));
  const { page } = await site.enter('birchall@example.org', { width: 1280 });
  const before = await forecast();
  expect(before.shortMinorUnits).toBeGreaterThan(0);
  await page.goto(root);
  await page.getByText(`${money(before.shortMinorUnits)} is short by 15 Sept 2026.`).waitFor();
  const gift = { minorUnits: before.shortMinorUnits + 100, till: 'bank' };
  bodyOf(await buy.treasurer.post(`${storehouse.path}/fund-receipts`, gift), 201);
  await page.reload();
  await page.getByText('1.00 is left after all that is due by 15 Sept 2026.').waitFor();
}, 180_000);

test('a deposit and a claim of the desk open what is behind them', async () => {
  const { page } = await site.enter('birchall@example.org', { width: 1280 });
  await page.goto(root);
  const deposits = page.getByRole('region', { name: 'Deposits held' });
  await deposits.getByRole('link', { name: 'Dell' }).click();
  await page.getByRole('heading', { name: /Entries behind/ }).waitFor();
  await page.getByText('Deposit received').first().waitFor();
  await page.goto(root);
  await page.getByRole('region', { name: 'Claims outstanding' }).getByRole('link').first().click();
  await page.getByRole('heading', { name: /was claimed of/ }).waitFor();
}, 180_000);

test('a bill says what it posts in all while its amounts are typed', async () => {
  const { page } = await site.enter('birchall@example.org', { width: 1280 });
  await page.goto(`${root}/bills`);
  await page.getByText('A bill came in').click();
  await page.getByLabel('Freight').fill('12.50');
  await page.getByLabel('Other costs').fill('2');
  await page.getByText('Posts 14.50, amount by amount: debit 2200 Buy clearing').waitFor();
}, 180_000);
