import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { aHousehold } from '../support/household.ts';
import { aSharedBuy, creditClaims, type TestSharedBuy } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { openSite, type Site } from './support/site.ts';

let site: Site;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
let root: string;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z');
  storehouse = await aStorehouse(site.app);
  await aHousehold(site.app, storehouse, 'Quill', { duties: ['reviewer'] });
  buy = await aSharedBuy(site.app, storehouse);
  await creditClaims(storehouse, buy);
  site.app.clock.now = new Date('2026-11-01T15:00:00Z');
  const never = `${buy.path}/uncollected/${buy.households.Dell.householdId}`;
  bodyOf(await storehouse.coordinator.post(never, {}), 201);
  root = `/s/${storehouse.storehouseId}/books`;
});
afterAll(() => site.close());

const enter = (name: string) => site.enter(`${name}@example.org`, { width: 1280 });

test('the reviewer sees each check with its figure, draws ten traces by a seed, and every gram adds up', async () => {
  const { page } = await enter('quill');
  await page.goto(`${root}/audit`);
  await page.getByRole('heading', { name: /The book holds: all \d+ checks hold/ }).waitFor();
  const { findings } = bodyOf(await buy.treasurer.get(`${storehouse.path}/audit`));
  const checks = page.getByRole('table').first(); // what was decided against the rule stands in tables below
  expect(await checks.locator('tbody tr').count()).toBe(findings.length);
  await page.getByRole('link', { name: 'Nothing from the bank is here yet.' }).waitFor();
  const { owedMinorUnits } = bodyOf(await buy.treasurer.get(`${storehouse.path}/suppliers-owed`));
  const owed = `${(owedMinorUnits / 100).toLocaleString('en-US', { minimumFractionDigits: 2 })} is owed to suppliers.`;
  await page.getByRole('link', { name: owed }).waitFor();
  await page.getByRole('link', { name: 'Draw ten traces' }).click();
  await page.getByLabel('Seed').fill('2026, Quill');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Ten traces, drawn by “2026, Quill”.' }).waitFor();
  const drawn = bodyOf(await buy.treasurer.get(`${storehouse.path}/traces?seed=2026%2C%20Quill`));
  for (const { code, kind } of drawn.traces)
    await page.getByRole('heading', { name: code, exact: kind !== 'entry' }).waitFor();
  const vessels = drawn.traces.filter(({ kind }: { kind: string }) => kind !== 'entry');
  expect(vessels.length).toBeGreaterThan(3);
  expect(await page.getByText('adds up', { exact: true }).count()).toBe(vessels.length);
  const [entry] = drawn.traces.filter(({ kind }: { kind: string }) => kind === 'entry');
  await page.getByRole('link', { name: `Open entry ${entry.code.slice(1)}`, exact: true }).click();
  await page.getByRole('heading', { name: new RegExp(`Entry ${entry.code.slice(1)}`) }).waitFor();
}, 180_000);

test('a count of common stock that misses a pound is written down by the reviewer and booked by the treasurer', async () => {
  const { page } = await enter('quill');
  await page.goto(`${root}/counts`);
  const first = page.locator('li.claim').first();
  const field = first.getByRole('textbox');
  await first.waitFor();
  const all = await page.locator('li.claim b').allTextContents();
  await page.getByText('Find it by its label').click();
  const typed = page.getByLabel('Code on the label');
  const code = all.at(-1) ?? '';
  await typed.fill(`${code.slice(0, -1)}${code.endsWith('A') ? 'B' : 'A'}`);
  await page.getByRole('button', { name: 'Find it' }).click();
  await page.getByText(/a sign was misread, or two were swapped/).waitFor();
  await typed.fill(code);
  await page.getByRole('button', { name: 'Find it' }).click();
  await page.getByRole('button', { name: 'Show all of it again' }).waitFor();
  expect(await page.locator('li.claim b').allTextContents()).toEqual([code]);
  await page.getByRole('button', { name: 'Show all of it again' }).click();
  expect(await page.locator('li.claim b').allTextContents()).toEqual(all);
  await field.fill('some');
  await first.getByText('Write a weight').waitFor();
  await field.fill('4 lb');
  await first.getByRole('button', { name: 'Write down' }).click();
  await page.getByRole('heading', { name: /1 differs from the book/ }).waitFor();
  const treasurer = await enter('birchall');
  await treasurer.page.goto(`${root}/counts`);
  await treasurer.page.getByText('Book the difference').click();
  await treasurer.page.getByLabel('Reason').fill('Mice.');
  await treasurer.page.getByRole('button', { name: 'Post' }).click();
  await treasurer.page.getByText(/, booked$/).waitFor();
  expect(bodyOf(await buy.treasurer.get(`${storehouse.path}/audit`)).holds).toBe(true);
}, 180_000);

test('the year is closed with its transfer shown first, its digest kept, and signed by three', async () => {
  bodyOf(
    await buy.treasurer.post(`${storehouse.path}/bank-charges`, { minorUnits: 450, onDay: '2026-09-30' }),
    201,
  );
  const treasurer = (await enter('birchall')).page;
  await treasurer.goto(`${root}/year`);
  await treasurer.getByLabel('Through the day').fill('2026-09-30');
  await treasurer.getByText('5010 Bank charges').waitFor();
  await treasurer.getByText('Carry it into the store fund').click();
  await treasurer.getByRole('button', { name: 'Post' }).click();
  await treasurer.getByText('Nothing came in or went out that is not carried yet.').waitFor();
  await treasurer.getByText('Close the books through 30 Sept 2026').click();
  await treasurer.getByRole('button', { name: 'Close', exact: true }).click();
  await treasurer.getByRole('heading', { name: 'The books are closed through 30 Sept 2026.' }).waitFor();
  await treasurer.getByText('the digest still holds').waitFor();
  for (const [name, duty] of [
    ['quill', 'reviewer'],
    ['birchall', 'treasurer'],
    ['coordinator', 'coordinator'],
  ] as const) {
    const { page } = await enter(name);
    await page.goto(`${root}/year`);
    await page.getByText(`Sign as ${duty}`).click();
    await page.getByLabel('Remarks and exceptions').fill('Seen.');
    await page.getByRole('button', { name: 'Sign', exact: true }).click();
    await page.getByText(`signed as ${duty}`).waitFor();
  }
  const { closes } = bodyOf(await buy.treasurer.get(`${storehouse.path}/periods`));
  expect(closes[0].signatures).toHaveLength(3);
}, 120_000);
