import { expect, test } from 'vitest';
import { listViolations, overflowOf } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { demoOfFile } from './support/demo-of-file.ts';

const site = demoOfFile();

test('a can is looked at on a phone question by question, with the caution at its finding and the reason at its end', async () => {
  const page = await site.visit('member');
  await page.setViewportSize({ width: 320, height: 844 });
  await page.goto(`${site.root}/shelf`);
  await settle(page);
  await page.locator('.run').first().click();
  await page.getByRole('link', { name: 'Look at it and write down what is found' }).click();
  await page.getByRole('button', { name: 'From outside, still shut' }).click();
  await page.getByRole('button', { name: 'Nothing wrong' }).waitFor();
  await page.getByRole('checkbox', { name: 'Bulged, hisses or spurts' }).check();
  await page.getByText(/^Do not open it, smell it or taste it. Put it into a bag/).waitFor();
  expect(await listViolations(page)).toEqual([]);
  expect(await overflowOf(page)).toBe(0);
  await page.getByRole('checkbox', { name: 'Bulged, hisses or spurts' }).uncheck();
  await page.getByRole('checkbox', { name: 'Webbing, clumps or droppings of insects' }).check();
  await page.getByRole('button', { name: 'Go on with 1 finding' }).click();
  await page.getByText('For animals only').first().waitFor();
  await page.getByText(/Insects lived in it for long/).waitFor();
  const outcomes = await page.getByLabel('What becomes of it').locator('option').allTextContents();
  expect(outcomes).toEqual(['For animals only', 'Compost', 'Throw it away']); // never laxer than what was found
  await page.getByLabel('What becomes of it').selectOption('compost');
  await page.getByRole('checkbox', { name: /^Book all .* out of it now$/ }).check();
  expect(await listViolations(page)).toEqual([]);
  expect(await overflowOf(page)).toBe(0);
  await page.getByRole('button', { name: 'Write it down' }).click();
  await page.getByText('Written down.').waitFor();
  await page.getByRole('button', { name: 'Put the grams back' }).click();
  await page.getByText('The grams are back in it. What was found stays written.').waitFor();
  await page.getByRole('link', { name: 'What else to look at' }).click();
  await page.getByRole('heading', { level: 1, name: /to look at$/ }).waitFor();
  await settle(page);
  expect(await listViolations(page)).toEqual([]);
  expect(await overflowOf(page)).toBe(0);
}, 120_000);
