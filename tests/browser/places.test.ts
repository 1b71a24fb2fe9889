import { expect, test } from 'vitest';
import { listViolations, overflowOf } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { demoOfFile } from './support/demo-of-file.ts';

const site = demoOfFile();

test('a place is added, a usual year is typed, and a logger’s file is tried, taken in and taken back', async () => {
  const page = await site.visit('member', { viewport: { width: 320, height: 800 } });
  await page.goto(`${site.root}/shelf`);
  await settle(page);
  await page.getByRole('link', { name: 'Places and their warmth' }).click();
  await page.getByRole('heading', { name: 'Your places' }).waitFor();
  await page.getByRole('link', { name: 'Add a place' }).click();
  const name = page.getByLabel('What you call it');
  await page.getByRole('button', { name: 'Save' }).click();
  await page.getByText('A name is needed.').waitFor();
  await name.fill('Under the stairs');
  await page.getByLabel('Is it damp?').selectOption('yes');
  const carries = page.getByLabel(/^How much food its shelves carry/);
  await carries.fill('a lot');
  await page.getByText('Write a mass, such as 400.').waitFor();
  await carries.fill('120');
  await page.keyboard.press('Tab');
  await page.getByRole('button', { name: 'Save' }).click();
  await page.getByText('Nobody has read this place').waitFor();
  await page.getByText('Damp rusts cans').waitFor();
  for (const name of ['Its shelves carry', 'Food that stands there', 'Room for'])
    await page.getByText(name, { exact: true }).waitFor();
  expect(await page.locator('main').textContent()).toMatch(
    /Its shelves carry\s*120\.0\s*lb\s*Food that stands there\s*0\.0\s*lb\s*Room for\s*120\.0\s*lb/,
  );

  await page.getByText('Type how warm it is by the month').click();
  await page.getByLabel('From the year').fill('2025');
  for (const month of ['January', 'April', 'July', 'October'])
    await page.getByLabel(`${month}, °F`).fill('55');
  await page.getByLabel('July, °F').fill('hot');
  await page.getByRole('button', { name: 'Write it into the record' }).click();
  await page.getByText('Write a temperature, such as 55').waitFor();
  await page.getByLabel('July, °F').fill('55');
  await page.getByText('Writes 8 months into the record.').waitFor();
  await page.getByRole('button', { name: 'Write it into the record' }).click();
  await page.getByText('It is in the record.').waitFor();
  await page.getByText('Food ages here as it would at 55 °F all year.').waitFor();

  await page.getByText('Take in a logger’s file').click();
  const text = 'time,°F\n02/01/2026 00:00,50\n02/01/2026 06:00,-300\n02/01/2026 12:00,60\noops\n';
  await page.getByLabel('The file (CSV)').setInputFiles({
    ...{ name: 'february.csv', mimeType: 'text/csv', buffer: Buffer.from(text) },
  });
  await page.getByText('2 good readings from 1 Feb 2026 to 1 Feb 2026, between 50 °F and 60 °F.').waitFor();
  await page.getByText('2 lines are left out.').waitFor();
  await page.getByText('no place is that cold or warm').waitFor();
  await page.getByLabel('Its temperatures are in').selectOption('C');
  await page.getByText('The file’s own heading says °F.').waitFor();
  await page.getByLabel('Its temperatures are in').selectOption('F');
  await page.getByRole('button', { name: 'Take in the good readings' }).click();
  await page.getByText('The readings are in the record.').waitFor();
  expect(await listViolations(page)).toEqual([]);
  expect(await overflowOf(page)).toBe(0);
  await page.getByRole('button', { name: 'Take back february.csv with all its readings' }).click();
  await page.getByText('february.csv').waitFor({ state: 'detached' });
}, 180_000);

test('what last summer cost stands by place, and what moving would give back under it', async () => {
  const page = await site.visit('member', { viewport: { width: 320, height: 800 } });
  await page.goto(`${site.root}/places`);
  await settle(page);
  await page.getByRole('link', { name: 'What last summer cost' }).click();
  await page.getByRole('columnheader', { name: 'Lost, days' }).waitFor();
  await page.getByRole('heading', { level: 1, name: /of life lost last summer$/ }).waitFor();
  await settle(page);
  // What it cost is read without pushing the table aside; when it was stands under each name.
  const lost = await page.getByRole('columnheader', { name: 'Lost, days' }).boundingBox();
  expect((lost?.x ?? 0) + (lost?.width ?? 999)).toBeLessThanOrEqual(320);
  expect(await page.getByRole('columnheader').count()).toBe(3);
  await page.getByText('warmest from 1 Jun 2026 to 31 Aug 2026').waitFor();
  expect(await listViolations(page)).toEqual([]);
  expect(await overflowOf(page)).toBe(0);
}, 60_000);

test('a list longer than one look takes in is searched by its words', async () => {
  const page = await site.visit('coordinator');
  await page.goto(`${site.root}/containers`);
  await settle(page);
  const rows = page.getByRole('table').getByRole('row');
  const all = await rows.count();
  expect(all).toBeGreaterThan(9);
  const search = page.getByRole('searchbox', { name: 'Find in this list' });
  await search.fill('Jar');
  await expect.poll(() => rows.count()).toBeLessThan(all);
  for (const text of (await rows.allTextContents()).slice(1)) expect(text.toLowerCase()).toContain('jar');
  await search.fill('no kind of this name');
  await page.getByText('Nothing in this list is found like this.').waitFor();
  expect(await rows.count()).toBe(0);
  expect(await listViolations(page)).toEqual([]);
  await search.fill('');
  await expect.poll(() => rows.count()).toBe(all);
}, 60_000);
