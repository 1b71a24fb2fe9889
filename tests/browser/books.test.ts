import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { aSharedBuy, type TestSharedBuy } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { openSite, type Site, type Visit } from './support/site.ts';

let site: Site;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
let reviewer: TestHousehold;
let root: string;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z');
  storehouse = await aStorehouse(site.app);
  buy = await aSharedBuy(site.app, storehouse);
  reviewer = await aHousehold(site.app, storehouse, 'Quill', { duties: ['reviewer'] });
  root = `/s/${storehouse.storehouseId}/books`;
});
afterAll(() => site.close());

const enter = (name: string): Promise<Visit> => site.enter(`${name}@example.org`, { width: 1280 });

const balanceOf = async (name: 'Corran' | 'Dell') =>
  bodyOf(await buy.treasurer.get(`${storehouse.path}/households/${buy.households[name].householdId}/balance`))
    .balanceMinorUnits as number;
const money = (minorUnits: number) => (minorUnits / 100).toFixed(2);

test('a payment is entered in two taps, shown as it posts, and taken back again', async () => {
  const { page } = await enter('birchall');
  await page.goto(`${root}/owing`);
  const before = await balanceOf('Corran');
  expect(before).toBeGreaterThan(0);
  await page.getByRole('button', { name: /^Corran/ }).click(); // one
  await page.getByText(`Posts ${money(before)}`).waitFor();
  await page.getByRole('button', { name: 'By bank' }).click(); // two
  await page.getByText(`${money(before)} from Corran is posted.`).waitFor();
  expect(await balanceOf('Corran')).toBe(0);
  await page.getByRole('button', { name: 'Take it back' }).click();
  await page.getByText(`Posts ${money(before)}`).waitFor();
  expect(await balanceOf('Corran')).toBe(before);
}, 60_000);

test('an amount that is none keeps the payment from being posted, and says so at its field', async () => {
  const { page } = await enter('birchall');
  await page.goto(`${root}/owing`);
  await page.getByRole('button', { name: /^Dell/ }).click();
  const field = page.getByLabel('Received');
  await field.fill('twelve');
  await page.getByText('Write an amount, such as 41.20.').waitFor();
  expect(await field.getAttribute('aria-invalid')).toBe('true');
  expect(await page.getByRole('button', { name: 'By bank' }).isDisabled()).toBe(true);
}, 60_000);

test('the clearing account comes down as stairs to what the API says is left', async () => {
  const { page } = await enter('birchall');
  await page.goto(root);
  await page.getByRole('link', { name: /2200 Buy clearing, / }).click();
  await page.getByRole('heading', { level: 1 }).waitFor();
  const clearing = bodyOf(await buy.treasurer.get(`${storehouse.path}/clearing/${buy.buyId}`));
  expect(clearing.stairs.at(-1).balanceMinorUnits).toBe(clearing.balanceMinorUnits);
  const charged = clearing.stairs.filter(({ part }: { part: string }) => part === 'charged');
  expect(charged.map(({ name }: { name: string }) => name)).toEqual(
    expect.arrayContaining(['Ashdown', 'Birchall', 'Corran', 'Dell']),
  );
  await page.getByText('As a table').click();
  const table = page.locator('details table');
  for (const { amountMinorUnits, balanceMinorUnits } of clearing.stairs) {
    const shown = (minorUnits: number) => money(minorUnits).replace('-', '−');
    await table.getByText(shown(amountMinorUnits), { exact: true }).first().waitFor();
    await table.getByText(shown(balanceMinorUnits), { exact: true }).first().waitFor();
  }
}, 60_000);

test('a figure of the trial balance opens the entries behind it, and an entry its movements', async () => {
  const { page } = await enter('birchall');
  await page.goto(`${root}/trial-balance`);
  await page.getByRole('heading', { name: /Debit and credit agree at/ }).waitFor();
  await page.getByRole('link', { name: '2000 Suppliers payable' }).click();
  await page.getByRole('heading', { name: /Entries behind 2000 Suppliers payable/ }).waitFor();
  const { entries } = bodyOf(await buy.treasurer.get(`${storehouse.path}/entries?chart=2000`));
  expect(entries.length).toBeGreaterThan(0);
  await page.locator('tbody tr').first().waitFor();
  expect(await page.locator('tbody tr').count()).toBe(entries.length);
  await page.locator('tbody a').first().click();
  await page.getByRole('columnheader', { name: 'Debit' }).waitFor();
  await page
    .getByRole('link', { name: /^2000 Suppliers payable of/ })
    .first()
    .click();
  await page.getByRole('heading', { name: /Entries behind/ }).waitFor();
}, 60_000);

test('a reviewer reads the books and posts nothing; a member has no way in', async () => {
  const { page } = await enter('quill');
  await page.goto(`${root}/owing`);
  await page.getByRole('button', { name: /^Corran/ }).click();
  await page.getByText('The treasurer enters payments.').waitFor();
  expect(await page.getByRole('button', { name: 'By bank' }).count()).toBe(0);
  const dell = await enter('dell');
  expect(await dell.page.getByRole('link', { name: 'Books' }).count()).toBe(0);
  await dell.page.goto(root);
  await dell.page
    .getByRole('heading', { name: 'The books are read by the treasurer and the reviewer.' })
    .waitFor();
  expect(reviewer.householdId).not.toBe('');
}, 60_000);
