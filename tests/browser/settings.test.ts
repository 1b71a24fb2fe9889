import { afterAll, beforeAll, expect, test } from 'vitest';
import { A_PASSWORD, aStorehouse } from '../support/storehouse.ts';
import { listViolations, overflowOf } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { openSite, type Site } from './support/site.ts';

let site: Site;
beforeAll(async () => {
  site = await openSite();
  await aStorehouse(site.app);
}, 120_000);
afterAll(() => site.close());

test('the rules are changed as people type their figures, and each change is a new version', async () => {
  const { page } = await site.visit();
  await page.goto('/sign-in');
  await page.getByLabel('E-mail').fill('coordinator@example.org');
  await page.getByLabel('Password').fill(A_PASSWORD);
  await page.keyboard.press('Enter');
  await page.waitForURL(/\/s\//);
  await settle(page);
  await page.goto(`${page.url()}/people`);
  await page.getByRole('link', { name: 'The storehouse and its rules' }).click();
  await page.getByText('goes by version 1 of its rules').waitFor();
  expect(await listViolations(page)).toEqual([]);
  await page.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(page)).toBe(0);
  await page.getByLabel('Deposit, in percent').fill('half');
  await page.getByLabel('Levy for the store fund').fill('2,5');
  await page.getByLabel('Common stock takes at most').fill('45 kg');
  await page.getByRole('button', { name: 'Put in force' }).click();
  await page.getByText('Write a whole number, such as 50.').waitFor();
  await page.getByLabel('Deposit, in percent').fill('40');
  await page.getByRole('button', { name: 'Put in force' }).click();
  await page.getByText('goes by version 2 of its rules').waitFor();
  expect(await page.getByLabel('Levy for the store fund').inputValue()).toBe('2.5');
  expect(await page.getByLabel('Deposit, in percent').inputValue()).toBe('40');
  await page.getByLabel('Time zone').fill('Nowhere');
  await page.getByRole('button', { name: 'Save' }).click();
  await page.getByText('There is no such time zone').waitFor();
}, 180_000);
