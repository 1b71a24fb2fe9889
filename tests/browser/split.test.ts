import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { aLandedBuy, type TestLandedBuy } from '../support/landed-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { listViolations, overflowOf, smallTargets } from './support/checks.ts';
import { grainNow } from './support/grain-now.ts';
import { signInAs, tabTo } from './support/sign-in.ts';
import { openSite, type Site } from './support/site.ts';

let site: Site;
let storehouse: TestStorehouse;
let buy: TestLandedBuy;
let page: Page;

type Cell = { awardGrams: number; goodsMinorUnits: number; name: string };
type Run = { rule: string; sentence: string; shares: Cell[] };

beforeAll(async () => {
  site = await openSite();
  storehouse = await aStorehouse(site.app);
  buy = await aLandedBuy(site.app, storehouse, grainNow());
  ({ page } = await site.visit({ width: 1280 }));
  await signInAs(page, 'coordinator@example.org');
});
afterAll(() => site.close());

const at = (path: string) => `/s/${storehouse.storehouseId}/buys/${buy.buyId}/split${path}`;
const grams = (value: number) => value.toLocaleString('en');
const money = (minorUnits: number) => (minorUnits / 100).toFixed(2);

test('six rules stand side by side; every gram and cent on the screen is the book’s own', async () => {
  await page.goto(at(`/${buy.wheat}`));
  await page.getByRole('heading', { name: 'landed 2,268 g short of its claims' }).waitFor();
  const { rules } = bodyOf(
    await storehouse.coordinator.get(`${buy.path}/lines/${buy.wheat}/split-comparison`),
  );
  const shown = await page
    .locator('.rules tbody tr:not(.sum)')
    .evaluateAll((rows) =>
      rows.map((row) => [...row.querySelectorAll('.gc')].map((cell) => cell.textContent ?? '')),
    );
  const households = (rules as Run[])[0]?.shares.map(({ name }) => name) ?? [];
  expect(households).toEqual(['Ashdown', 'Birchall', 'Corran', 'Dell']);
  const wanted = households.map((_, row) =>
    (rules as Run[]).map(({ shares }) => {
      const share = shares[row];
      return `${grams(share?.awardGrams ?? 0)}${money(share?.goodsMinorUnits ?? 0)}`;
    }),
  );
  expect(shown).toEqual(wanted);
  // Job map 4.3: equal awards give Ashdown 115 lb of its 120, and nobody else loses.
  expect(shown[0]?.[1]).toBe(`${grams(54_432 - 2268)}82.80`);
  expect(await listViolations(page)).toEqual([]);
  expect(await smallTargets(page)).toEqual([]);
  await page.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(page)).toBe(0);
  await page.setViewportSize({ width: 1280, height: 860 });
}, 180_000);

test('a rule is chosen and done by keyboard alone; the sheet says who gets which piece, and adds up', async () => {
  await tabTo(page, 'input[name=rule]');
  await page.keyboard.press('ArrowRight');
  await page.getByText('Equal awards: each gets its claim or').waitFor();
  expect(await page.getByRole('radio', { name: 'Equal awards' }).isChecked()).toBe(true);
  await tabTo(page, 'button[type=submit]');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'split by equal awards' }).waitFor();
  const { splits } = bodyOf(await storehouse.coordinator.get(`${buy.path}/splits`));
  expect(splits).toMatchObject([{ rule: 'equal-awards', awardedGrams: 133_812 }]);
  const rows = await page.locator('tbody tr').allTextContents();
  expect(rows.at(-1)).toContain('133,812');
  for (const { name, awardGrams, pieces } of splits[0].shares) {
    const row = rows.find((text) => text.startsWith(name)) ?? '';
    expect(row).toContain(grams(awardGrams));
    for (const piece of pieces) expect(row).toContain(`${piece.bagCode}): ${grams(piece.grams)} g`);
  }
  expect(await listViolations(page)).toEqual([]);
}, 180_000);

test('until it is shared out a split is taken back and done by another rule', async () => {
  await page.getByRole('button', { name: 'Take this split back' }).click();
  await page.getByRole('heading', { name: 'short of its claims' }).waitFor();
  await page.getByRole('radio', { name: 'Proportional' }).check();
  await page.getByText('of its claim. Shares are rounded down').waitFor(); // with the fraction that rounded
  await page.getByRole('button', { name: 'Split in proportion' }).click();
  await page.getByRole('heading', { name: 'split in proportion' }).waitFor();
  await page.getByRole('button', { name: 'Take this split back' }).click();
  await page.getByRole('radio', { name: 'Equal awards' }).check();
  await page.getByRole('button', { name: 'Split by equal awards' }).click();
  await page.getByRole('heading', { name: 'split by equal awards' }).waitFor();
}, 180_000);

test('when every food is split, the cost is shared out, and the charges are the job map’s to the cent', async () => {
  for (const lineId of [buy.oats, buy.beans])
    bodyOf(
      await storehouse.coordinator.post(`${buy.path}/lines/${lineId}/splits`, { rule: 'proportional' }),
      201,
    );
  await page.goto(at(''));
  await page.getByRole('heading', { name: 'All 3 foods are split' }).waitFor();
  await page.getByRole('button', { name: 'Share out' }).click();
  await page.getByRole('link', { name: 'Hand it over' }).waitFor();
  const { totals } = bodyOf(await storehouse.coordinator.get(`${buy.path}/charges`));
  expect(totals.map((total: { minorUnits: number }) => total.minorUnits)).toEqual([
    16_548, 15_053, 12_792, 5457,
  ]);
  expect(await listViolations(page)).toEqual([]);
}, 180_000);

test('a member sees own grams and cents under each rule, and nobody else’s', async () => {
  const later = await aLandedBuy(site.app, storehouse, {
    ...grainNow(),
    name: 'Second grain',
    households: buy.households,
  });
  const { page: phone } = await site.visit();
  await signInAs(phone, 'corran@example.org');
  await phone.goto(`/s/${storehouse.storehouseId}/buys/${later.buyId}/split/${later.wheat}`);
  await phone.getByRole('heading', { name: 'what each rule would give you' }).waitFor();
  expect(await phone.locator('.rules tbody th').allTextContents()).toEqual(['Corran']);
  expect(await phone.getByRole('button', { name: /^Split / }).count()).toBe(0);
  expect(await listViolations(phone)).toEqual([]);
  expect(await overflowOf(phone)).toBe(0);
}, 180_000);
