import { expect, test } from 'vitest';
import { listViolations } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { demoOfFile } from './support/demo-of-file.ts';

const site = demoOfFile();

test('four places stand in a phone’s bar, and a drawer that keys open and close holds the rest', async () => {
  const page = await site.visit('member');
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (/Content Security Policy/.test(message.text())) complaints.push(message.text());
  });
  await page.goto(site.root);
  await settle(page);
  const bar = page.locator('.tabs');
  expect(await bar.getByRole('link').count()).toBe(4);
  await bar.getByRole('button', { name: 'More' }).focus();
  await page.keyboard.press('Enter');
  const drawer = page.getByRole('dialog', { name: 'More places' });
  await drawer.waitFor();
  expect(await listViolations(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await drawer.waitFor({ state: 'detached' });
  // The focus goes back a frame after the drawer is gone.
  await expect.poll(() => page.evaluate<string>('document.activeElement.textContent')).toBe('More');
  expect(complaints).toEqual([]);
});

test('home says what waits, the most urgent first, and leads each duty to its first page', async () => {
  const page = await site.visit('coordinator');
  await page.goto(site.root);
  await settle(page);
  await page.locator('.next').getByText('T-L1 is about safety. Telephone Ince').waitFor();
  expect(await page.locator('.next').getByRole('link').getAttribute('href')).toMatch(/\/notices\/written$/);
  const then = page.getByRole('link', { name: /^Winter grain: Fix the buy/ });
  expect(await then.getAttribute('href')).toMatch(/\/buys\/[^/]+\/run$/);
  await page.getByRole('link', { name: 'Run the buys' }).waitFor();
});

test('coverage finds the cheapest way to a target within a budget, and leads to each pledge', async () => {
  const page = await site.visit('member');
  await page.goto(site.root);
  await page.getByRole('link', { name: 'Who is fed how long' }).click();
  await page.getByRole('heading', { name: 'The cheapest way' }).waitFor();
  const budget = page.getByLabel('Spend at most');
  await budget.fill('much');
  await page.keyboard.press('Enter');
  await page.getByText('Write an amount of money').waitFor();
  await page.reload(); // what was typed outlives a closed tab
  expect(await budget.inputValue()).toBe('much');
  await budget.fill('60');
  await page.keyboard.press('Enter');
  const way = page.locator('.next table');
  await way.waitFor();
  const cells = await way.locator('tr.sum > *').allTextContents();
  expect(Number(cells[2])).toBeLessThanOrEqual(60);
  expect(Number(cells[2])).toBeGreaterThan(0);
  await way.getByRole('link', { name: 'Pledge it' }).first().click();
  await page.waitForURL(/\/lines\//);
});

test('the plan takes own figures as people type them, and refuses what is no weight at its field', async () => {
  const page = await site.visit('member');
  await page.goto(`${site.root}/coverage`);
  await page.getByText('Your own figures for a year').click();
  const grains = page.getByRole('textbox', { name: 'Grains' });
  await grains.fill('plenty');
  await page.getByText('Write a weight, such as 300 lb').waitFor();
  await grains.fill('150 kg');
  await page.getByLabel('Days', { exact: true }).fill('120');
  await page.getByRole('button', { name: 'Save' }).click();
  await page.getByText('120 days: your target').first().waitFor();
  await page.getByText('Your own figures for a year').click();
  expect(await grains.inputValue()).toBe('330.7 lb'); // 150 kg / 0.45359237
});
