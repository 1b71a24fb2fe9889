import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { type TestBooks, theBooks } from '../support/money-books.ts';
import { listViolations, overflowOf } from './support/checks.ts';
import { openSite, type Site } from './support/site.ts';

// Job map 3.2, question 9, by the treasurer at a desk: 150.00 in the fund, and what is promised out of it.
let site: Site;
let books: TestBooks;
let page: Page;
beforeAll(async () => {
  site = await openSite('2026-09-15T15:00:00Z');
  books = await theBooks(site.app);
  const left = { of: 'bank', balanceMinorUnits: 15_000, reason: 'from the old book' };
  bodyOf(await books.treasurer.post(`${books.path}/opening-balances`, left), 201);
  page = (await site.enter('birchall@example.org', { width: 1280 })).page;
  await page.goto(`/s/${books.storehouseId}/books/fund`);
});
afterAll(() => site.close());

const form = (summary: string) =>
  page.locator('details').filter({ has: page.locator('summary', { hasText: summary }) });
const promises = async () => bodyOf(await books.reviewer.get(`${books.path}/fund-promises`)).promises;
const free = (words: string) => page.getByRole('heading', { level: 1, name: words }).waitFor();

test('an amount is promised, and beyond what is free only with a reason, which is asked for at its field', async () => {
  await free('150.00 USD of the store fund is free.');
  const making = form('Promise an amount');
  await making.locator('summary').click();
  await making.getByLabel('What for').fill('new seals');
  await making.getByLabel('Amount').fill('150.01');
  await making.getByText('Posts nothing: 150.01 of the fund is then no longer free.').waitFor();
  await making.getByRole('button', { name: 'Promise an amount' }).click();
  await making.locator('[aria-invalid=true]').first().waitFor();
  expect(await promises()).toEqual([]);
  expect(await making.getByLabel('What for').inputValue()).toBe('new seals');
  await making.getByLabel('Amount').fill('40.00');
  await making.getByRole('button', { name: 'Promise an amount' }).click();
  await free('110.00 USD of the store fund is free.');
  expect(await promises()).toMatchObject([{ purpose: 'new seals', minorUnits: 4000, state: 'open' }]);
  expect(await listViolations(page)).toEqual([]);
  await page.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(page)).toBe(0);
  await page.setViewportSize({ width: 1280, height: 844 });
}, 180_000);

test('what was promised is paid for less, and its entry opens from the page', async () => {
  const paying = form('Pay it');
  await paying.locator('summary').click();
  expect(await paying.getByLabel('Amount').inputValue()).toBe('40.00');
  await paying.getByLabel('Amount').fill('38.50');
  await paying.getByRole('button', { name: 'Post' }).click();
  await free('111.50 USD of the store fund is free.');
  await page.getByRole('link', { name: /^Entry \d+$/ }).click();
  await page.getByRole('heading', { level: 1, name: /^Entry \d+/ }).waitFor();
  await page.getByText('new seals').first().waitFor();
  await page.goBack();
}, 180_000);

test('one that is not wanted any more is withdrawn with its reason, and is free again', async () => {
  const wish = { minorUnits: 1000, currency: 'USD', purpose: 'a second gauge' };
  bodyOf(await books.treasurer.post(`${books.path}/fund-promises`, wish), 201);
  await page.reload();
  await free('101.50 USD of the store fund is free.');
  const ending = form('Withdraw it');
  await ending.locator('summary').click();
  expect(await ending.getByRole('button', { name: 'Withdraw it' }).isDisabled()).toBe(true);
  await ending.getByLabel('Reason').fill('One was given to us.');
  await ending.getByRole('button', { name: 'Withdraw it' }).click();
  await free('111.50 USD of the store fund is free.');
  await page.getByText('Withdrawn: One was given to us.').waitFor();
}, 180_000);
