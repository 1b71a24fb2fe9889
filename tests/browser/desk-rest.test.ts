import { afterAll, beforeAll, expect, test } from 'vitest';
import { aBuy, bodyOf, type TestBuy } from '../support/buy.ts';
import { aHousehold } from '../support/household.ts';
import { aSharedBuy, type TestSharedBuy } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { listViolations, overflowOf, smallTargets } from './support/checks.ts';
import { tabTo } from './support/sign-in.ts';
import { openSite, type Site } from './support/site.ts';

// What a desk looks at between buys: the rules compared on what was split, what went against the rule, old deposits.

let site: Site;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
let endedBuy: TestBuy;
let root: string;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z');
  storehouse = await aStorehouse(site.app);
  await aHousehold(site.app, storehouse, 'Quill', { duties: ['reviewer'] });
  buy = await aSharedBuy(site.app, storehouse);
  endedBuy = await aBuy(site.app, storehouse, { isOpen: false });
  const { householdId } = buy.households.Dell;
  const deposit = { householdId, minorUnits: 900, till: 'bank' };
  bodyOf(await buy.treasurer.post(`${endedBuy.path}/deposits`, deposit), 201);
  // No command ends a buy that holds a deposit; the treasurer must be able to mend such a one all the same.
  await site.app.admin`update book.buy set stage = 'called-off' where buy_id = ${endedBuy.buyId}`;
  root = `/s/${storehouse.storehouseId}`;
}, 180_000);
afterAll(() => site.close());

test('the last three splits stand under each rule, reached by keyboard, whole at 320 px, each sum all that landed', async () => {
  const { page } = await site.enter('coordinator@example.org', { width: 320 });
  await page.goto(`${root}/buys/${buy.buyId}/split`);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await tabTo(page, 'a[href$="/split-simulation"]');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'The last three splits under each rule' }).waitFor();
  const { splits } = bodyOf(await storehouse.coordinator.get(`${storehouse.path}/split-simulation`));
  await page.getByRole('table').nth(2).waitFor();
  expect(await page.getByRole('table').count()).toBe(splits.length);
  for (const [at, { landedGrams, rules }] of splits.entries()) {
    const sums = await page.getByRole('table').nth(at).locator('tr.sum td').allTextContents();
    const known = rules.map(({ isKnown }: { isKnown: boolean }) =>
      isKnown ? landedGrams.toLocaleString('en') : 'not read',
    );
    expect(sums.slice(1)).toEqual(known);
  }
  const wheat = page.getByRole('region', { name: /wheat/i });
  // Job map 4.3: by equal awards the 5 lb that are short are Ashdown's alone.
  const ashdown = await wheat
    .getByRole('row', { name: /^Ashdown/ })
    .locator('td')
    .allTextContents();
  expect(ashdown.slice(0, 3).map((cell) => Number(cell.replace(',', '')))).toEqual([
    54_432,
    expect.any(Number),
    54_432 - 2268,
  ]);
  expect(await overflowOf(page)).toBe(0);
  expect(await listViolations(page)).toEqual([]);
  await tabTo(page, 'section.scroll');
  await page.keyboard.press('ArrowRight');
  await expect.poll(() => page.evaluate('document.activeElement.scrollLeft')).toBeGreaterThan(0);
}, 180_000);

test('a member sees in it what each rule would have given to the own household alone', async () => {
  const { page } = await site.enter('dell@example.org');
  await page.goto(`${root}/split-simulation`);
  await page.getByRole('table').first().waitFor();
  const named = new Set(await page.locator('.rules tbody th').allTextContents());
  expect([...named]).toEqual(['Dell']);
}, 180_000);

test('the reviewer reads what was taken back and by whom, within the days that are picked', async () => {
  const charge = bodyOf(
    await buy.treasurer.post(`${storehouse.path}/bank-charges`, { minorUnits: 450 }),
    201,
  );
  const reason = 'The bank gave it back.';
  bodyOf(await buy.treasurer.post(`${storehouse.path}/entries/${charge.entryId}/reversal`, { reason }), 201);
  const { page } = await site.enter('quill@example.org', { width: 320 });
  await page.goto(`${root}/books/audit`);
  await page.getByRole('heading', { name: '1 entry was taken back' }).waitFor();
  const row = page.getByRole('row', { name: reason });
  await row.getByText('4.50', { exact: true }).waitFor();
  expect(await listViolations(page)).toEqual([]);
  expect(await smallTargets(page)).toEqual([]);
  expect(await overflowOf(page)).toBe(0);
  const [from, through] = [page.getByLabel('From', { exact: true }), page.getByLabel('Through')];
  await from.fill('2026-09-02');
  await through.fill('2026-09-01');
  await page.getByText('The last day lies before the first.').waitFor();
  expect(await through.getAttribute('aria-invalid')).toBe('true');
  expect(await page.getByRole('row', { name: reason }).count()).toBe(0);
  await through.fill('2026-09-03');
  await page.getByRole('heading', { name: '0 entries were taken back' }).waitFor();
  await from.fill('2026-01-01');
  await row.getByRole('link').click();
  await page.getByRole('heading', { name: /^Entry \d+/ }).waitFor();
}, 180_000);

test('a deposit that an ended buy still holds is pointed out, given back no further than it goes, and then gone', async () => {
  const { page } = await site.enter('birchall@example.org', { width: 320 });
  await page.goto(`${root}/books/deposits`);
  const held = page.locator('.claim', { hasText: 'the buy has ended' });
  await held.getByText(/^Dell, .*: 9\.00$/).waitFor();
  await held.getByText('Give back').click();
  const amount = held.getByLabel('Amount');
  expect(await amount.inputValue()).toBe('9.00');
  await amount.fill('9.01');
  await held.getByText('Posts 9.01 out of the deposit of Dell.').waitFor();
  await held.getByRole('button', { name: 'Post' }).click();
  await expect.poll(() => amount.getAttribute('aria-invalid')).toBe('true');
  expect(await overflowOf(page)).toBe(0);
  expect(await listViolations(page)).toEqual([]);
  const balance = async () =>
    bodyOf(
      await buy.treasurer.get(`${storehouse.path}/households/${buy.households.Dell.householdId}/balance`),
    ).balanceMinorUnits;
  const before = await balance();
  await amount.fill('9');
  await held.getByText('Posts 9.00 out of the deposit of Dell.').waitFor();
  await held.getByLabel('It goes').selectOption({ label: 'To the balance of the household' });
  await held.getByRole('button', { name: 'Post' }).click();
  await held.waitFor({ state: 'detached' });
  expect((await balance()) - before).toBe(-900);
}, 180_000);
