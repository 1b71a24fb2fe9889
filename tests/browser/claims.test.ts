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

// Job map 4.4: claims of 3.60 for the torn bag and 21.40 for the missing one.
test('a claim nobody answers is given up from its page, which tells what happened to it', async () => {
  const { page } = await site.enter('birchall@example.org', { width: 1280 });
  await page.goto(`${root}/claims`);
  await page.getByText('No claim has had its answer yet.').waitFor();
  const torn = page.locator('li.claim').filter({ hasText: 'Torn' });
  await torn.getByRole('link', { name: 'Its history' }).click();
  await page.getByRole('heading', { name: /^3\.60 was claimed of / }).waitFor();
  await page.getByText('Give the claim up').first().click();
  await page.getByText('Posts 3.60: credit 1200 Supplier claims;').waitFor();
  await page.locator('details[open]').getByLabel('Reason').fill('They never wrote back.');
  await page.getByRole('button', { name: 'Give the claim up' }).click();
  await page.getByText('given up').first().waitFor();
  expect(await page.getByRole('button', { name: 'Give the claim up' }).count()).toBe(0);
  await page.locator('tbody a').last().click();
  await page.getByRole('heading', { name: /Claim given up/ }).waitFor();
  await page.getByText('They never wrote back.').waitFor();
  await page.goto(`${root}/claims`);
  await page.getByRole('heading', { name: '1 claim waits for an answer: 21.40.' }).waitFor();
  await page.getByRole('cell', { name: 'given up' }).waitFor();
  const { claim } = bodyOf(await buy.treasurer.get(`${storehouse.path}/claims/${buy.claims?.torn}/history`));
  expect(claim).toMatchObject({ outcome: 'written-off', creditedMinorUnits: 0 });
}, 180_000);

test('a deposit goes back from its page, and no more than is held', async () => {
  const { householdId } = buy.households.Dell;
  const deposits = async (): Promise<{ householdId: string; heldMinorUnits: number }[]> =>
    bodyOf(await buy.treasurer.get(`${buy.path}/deposits`)).deposits;
  const held = (await deposits()).find((row) => row.householdId === householdId)?.heldMinorUnits ?? 0;
  expect(held).toBeGreaterThan(100);
  const { page } = await site.enter('birchall@example.org', { width: 1280 });
  await page.goto(`${root}/deposits`);
  const dell = page.locator('li.claim').filter({ hasText: 'Dell' });
  await dell.getByText('Give back').click();
  const amount = dell.getByLabel('Amount');
  expect(await amount.inputValue()).toBe((held / 100).toFixed(2));
  await amount.fill(((held + 1) / 100).toFixed(2));
  await dell.getByLabel('It goes').selectOption({ label: 'By bank' });
  await dell.getByRole('button', { name: 'Post' }).click();
  await dell.getByText('The deposit on this buy is smaller than that.').first().waitFor();
  await amount.fill('1.00');
  await dell.getByRole('button', { name: 'Post' }).click();
  await dell.getByText(new RegExp(`^${((held - 100) / 100).toFixed(2)} `)).waitFor();
  expect((await deposits()).find((row) => row.householdId === householdId)?.heldMinorUnits).toBe(held - 100);
  expect(await amount.inputValue()).toBe(((held - 100) / 100).toFixed(2));
}, 180_000);
