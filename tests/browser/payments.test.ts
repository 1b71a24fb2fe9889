import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { aHousehold } from '../support/household.ts';
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
  await aHousehold(site.app, storehouse, 'Quill', { duties: ['reviewer'] });
  root = `/s/${storehouse.storehouseId}/books`;
});
afterAll(() => site.close());

const open = async (name: string, path: string): Promise<Page> => {
  const { page } = await site.enter(`${name}@example.org`, { width: 1280 });
  await page.goto(`${root}/${path}`);
  await page.getByRole('heading', { level: 1 }).waitFor();
  return page;
};
const form = (page: Page, summary: string) =>
  page.locator('details').filter({ has: page.locator('summary', { hasText: summary }) });
const newest = async () =>
  bodyOf(await buy.treasurer.get(`${storehouse.path}/entries?newestFirst=true&limit=1`)).entries[0];

test('a charge of the bank says what it posts, is posted, and the bank has that much less', async () => {
  const page = await open('birchall', 'payments');
  const before = await page.getByRole('heading', { level: 1 }).textContent();
  const charge = form(page, 'The bank takes a charge');
  await charge.locator('summary').click();
  await charge.getByLabel('Amount').fill('2.50');
  await charge.getByText('Posts 2.50: debit 5010 Bank charges, credit 1000 Bank.').waitFor();
  await charge.getByRole('button', { name: 'Post' }).click();
  await charge.getByText('Posted.').waitFor();
  expect(await newest()).toMatchObject({
    what: 'bank-charge',
    onDay: '2026-09-01',
    movements: [{ amount: 250 }],
  });
  expect(await page.getByRole('heading', { level: 1 }).textContent()).not.toBe(before);
}, 180_000);

test('a credit is paid out as far as it goes; more is refused at its field', async () => {
  const { householdId } = buy.households.Dell;
  const credit = { of: 'household', householdId, balanceMinorUnits: -1200, reason: 'from the old book' };
  bodyOf(await buy.treasurer.post(`${storehouse.path}/opening-balances`, credit), 201);
  const page = await open('birchall', 'payments');
  const refund = form(page, 'Pay out a household’s credit');
  await refund.locator('summary').click();
  await refund.getByLabel('Household').selectOption({ label: 'Dell, 12.00 in credit' });
  await refund.getByLabel('Amount').fill('12.01');
  await refund.getByRole('button', { name: 'Post' }).click();
  await refund.getByText('The household’s credit is smaller than that.').first().waitFor();
  expect(await refund.getByLabel('Amount').getAttribute('aria-invalid')).toBe('true');
  await refund.getByLabel('Amount').fill('12');
  await refund.getByText('Posts 12.00: debit the balance of Dell, credit bank or cash tin.').waitFor();
  await refund.getByRole('button', { name: 'Post' }).click();
  await page.getByText('No household is in credit.').waitFor();
  expect(await newest()).toMatchObject({ what: 'payment-refunded', movements: [{ amount: 1200 }] });
}, 180_000);

test('a balance of the old book that we owe goes to the credit of its account', async () => {
  const page = await open('birchall', 'payments');
  const opening = form(page, 'A balance of the book kept before');
  await opening.locator('summary').click();
  await opening.getByLabel('Whose').selectOption({ label: 'The bank' });
  await opening.getByLabel('Which way').selectOption({ label: 'It is not ours: we owe it' });
  await opening.getByLabel('Amount').fill('5');
  await opening.getByText('Posts 5.00 to the credit of The bank').waitFor();
  await opening.getByLabel('Reason').fill('The bank had lent us 5.00.');
  await opening.getByRole('button', { name: 'Post' }).click();
  await opening.getByText('Posted.').waitFor();
  const { movements } = await newest();
  expect(movements[0]).toMatchObject({ amount: 500, from: { number: '1000' }, to: { number: '3000' } });
}, 180_000);

// Job map 4.4: the mill billed 523.50.
test('a supplier is paid in part, then the rest is preset, and its name opens the entries behind it', async () => {
  const page = await open('birchall', 'suppliers');
  await page.getByRole('heading', { name: '523.50 is owed to suppliers.' }).waitFor();
  const pay = page.locator('details').filter({ hasText: 'Pay ' });
  await pay.locator('summary').click();
  expect(await pay.getByLabel('Amount').inputValue()).toBe('523.50');
  await pay.getByLabel('Amount').fill('500');
  await pay.getByRole('button', { name: 'Post' }).click();
  await page.getByRole('heading', { name: '23.50 is owed to suppliers.', exact: true }).waitFor();
  expect(await pay.getByLabel('Amount').inputValue()).toBe('23.50');
  await pay.getByRole('button', { name: 'Post' }).click();
  await page.getByRole('heading', { name: 'Nothing is owed to any supplier.' }).waitFor();
  await page.locator('tbody a').first().click();
  await page.getByRole('heading', { name: /Entries behind/ }).waitFor();
  await page.getByText('Supplier paid').first().waitFor();
  expect(await page.locator('tbody tr').count()).toBe(3);
}, 180_000);

test('a reviewer reads who is owed and posts nothing', async () => {
  const page = await open('quill', 'payments');
  await page.getByText('The treasurer posts payments.').waitFor();
  expect(await page.getByRole('button', { name: 'Post' }).count()).toBe(0);
  await page.getByRole('link', { name: 'Suppliers' }).click();
  await page.getByText('A name opens the entries behind its row.').waitFor();
  expect(await page.locator('details').count()).toBe(0);
}, 180_000);
