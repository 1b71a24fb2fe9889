import { expect, test } from 'vitest';
import { listViolations, overflowOf } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { demoOfFile } from './support/demo-of-file.ts';

const site = demoOfFile();

test('what to eat next goes to the kitchen with one tap and back with another, and the page is free of what axe finds', async () => {
  const page = await site.visit('member');
  await page.goto(`${site.root}/shelf`);
  await settle(page);
  await page.getByRole('link', { name: 'What to eat next' }).click();
  await page.getByRole('heading', { name: 'Eat next', exact: true }).waitFor();
  const first = page.getByRole('button', { name: /^Take .* to the kitchen$/ }).first();
  await first.click();
  await page.getByText(/are in the kitchen\./).waitFor();
  await page.getByRole('heading', { name: 'In the kitchen' }).waitFor();
  await settle(page);
  expect(await listViolations(page)).toEqual([]);
  await page.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(page)).toBe(0);
  await page.getByRole('button', { name: 'Put it back' }).click();
  await page.getByRole('heading', { name: 'In the kitchen' }).waitFor({ state: 'detached' });
}, 120_000);
