import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { aSharedBuy, type TestSharedBuy } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { openSite, type Site, type Visit } from './support/site.ts';

let site: Site;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
let reviewer: TestHousehold;
let root: string;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z');
  storehouse = await aStorehouse(site.app);
  buy = await aSharedBuy(site.app, storehouse);
  reviewer = await aHousehold(site.app, storehouse, 'Quill', { duties: ['reviewer'] });
  root = `/s/${storehouse.storehouseId}/books`;
});
afterAll(() => site.close());

const enter = (name: string): Promise<Visit> => site.enter(`${name}@example.org`, { width: 1280 });

const balanceOf = async (name: 'Corran' | 'Dell') =>
  bodyOf(await buy.treasurer.get(`${storehouse.path}/households/${buy.households[name].householdId}/balance`))
    .balanceMinorUnits as number;
const money = (minorUnits: number) => (minorUnits / 100).toFixed(2);

test('a payment is entered in two taps, shown as it posts, and taken back again', async () => {
  const { page } = await enter('birchall');
  await page.goto(`${root}/owing`);
  const before = await balanceOf('Corran');
  expect(before).toBeGreaterThan(0);
  await page.getByRole('button', { name: /^Corran/ }).click(); // one
  await page.getByText(`Posts ${money(before)}`).waitFor();
  await page.getByRole('button', { name: 'By bank' }).click(); // two
  await page.getByText(`${money(before)} from Corran is posted.`).waitFor();
  expect(await balanceOf('Corran')).toBe(0);
  await page.getByRole('button', { name: 'Take it back' }).click();
  await page.getByText(`Posts ${money(before)}`).waitFor();
  expect(await balanceOf('Corran')).toBe(before);
}, 180_000);

test('an amount that is none keeps the payment from being posted, and says so at its field', async () => {
  const { page } = await enter('birchall');
  await page.goto(`${root}/owing`);
  await page.getByRole('button', { name: /^Dell/ }).click();
  const field = page.getByLabel('Received');
  await field.fill('twelve');
  await page.getByText('Write an amount, such as 41.20.').waitFor();
  expect(await field.getAttribute('aria-invalid')).toBe('true');
  expect(await page.getByRole('button', { name: 'By bank' }).isDisabled()).toBe(true);
}, 180_000);

test('the clearing account comes down as stairs to what the API says is left', async () => {
  const { page } = await enter('birchall');
  await page.goto(root);
  await page.getByRole('link', { name: /2200 Buy clearing, / }).click();
  await page.getByRole('heading', { level: 1 }).waitFor();
  const clearing = bodyOf(await buy.treasurer.get(`${storehouse.path}/clearing/${buy.buyId}`));
  expect(clearing.stairs.at(-1).balanceMinorUnits).toBe(clearing.balanceMinorUnits);
  const charged = clearing.stairs.filter(({ part }: { part: string }) => part === 'charged');
  expect(charged.map(({ name }: { name: string }) => name)).toEqual(
    expect.arrayContaining(['Ashdown', 'Birchall', 'Corran', 'Dell']),
  );
  await page.getByText('As a table').click();
  const table = page.locator('details table');
  for (const { amountMinorUnits, balanceMinorUnits } of clearing.stairs) {
    const shown = (minorUnits: number) => money(minorUnits).replace('-', '−');
    await table.getByText(shown(amountMinorUnits), { exact: true }).first().waitFor();
    await table.getByText(shown(balanceMinorUnits), { exact: true }).first().waitFor();
  }
}, 180_000);

test('a figure of the trial balance opens the entries behind it, and an entry its movements', async () => {
  const { page } = await enter('birchall');
  await page.goto(`${root}/trial-balance`);
  await page.getByRole('heading', { name: /Debit and credit agree at/ }).waitFor();
  await page.getByRole('link', { name: '2000 Suppliers payable' }).click();
  await page.getByRole('heading', { name: /Entries behind 2000 Suppliers payable/ }).waitFor();
  const { entries } = bodyOf(await buy.treasurer.get(`${storehouse.path}/entries?chart=2000`));
  expect(entries.length).toBeGreaterThan(0);
  await page.locator('tbody tr').first().waitFor();
  expect(await page.locator('tbody tr').count()).toBe(entries.length);
  await page.locator('tbody a').first().click();
  await page.getByRole('columnheader', { name: 'Debit' }).waitFor();
  await page
    .getByRole('link', { name: /^2000 Suppliers payable of/ })
    .first()
    .click();
  await page.getByRole('heading', { name: /Entries behind/ }).waitFor();
}, 180_000);

test('a claim is credited, another refused, and a supplier paid; more than was claimed is refused at its field', async () => {
  const { page } = await enter('birchall');
  await page.goto(`${root}/claims`);
  await page.getByRole('heading', { name: '2 claims wait for an answer: 25.00.' }).waitFor();
  const first = page.locator('li.claim').filter({ hasText: 'One bag short' });
  await first.getByText('The supplier grants it').click();
  expect(await first.getByLabel('Granted').inputValue()).toBe('21.40');
  await first.getByLabel('Granted').fill('30');
  await first.getByRole('button', { name: 'Post the credit' }).click();
  await first.getByText('The claim asked for less than that.').first().waitFor();
  expect(await first.getByLabel('Granted').getAttribute('aria-invalid')).toBe('true');
  await first.getByLabel('Granted').fill('21.40');
  await first.getByRole('button', { name: 'Post the credit' }).click();
  await page.getByRole('heading', { name: '1 claim waits for an answer: 3.60.' }).waitFor();
  const second = page.locator('li.claim').filter({ hasText: 'Torn' });
  await second.getByText('The supplier refuses it').click();
  await second.getByLabel('Reason').fill('Signed for whole.');
  await second.getByRole('button', { name: 'Post the refusal' }).click();
  await page.getByRole('heading', { name: 'No claim is open.' }).waitFor();
  await page.goto(`${root}/bills`);
  await page.getByText('Pay a supplier').click();
  await page.getByLabel('Amount').fill('502.10');
  await page.getByRole('button', { name: 'Post' }).last().click();
  await page.getByText('Posted.').waitFor();
  const { entries } = bodyOf(
    await buy.treasurer.get(`${storehouse.path}/entries?chart=2000&newestFirst=true`),
  );
  expect(entries[0]).toMatchObject({ what: 'supplier-paid' });
  expect(entries[0].movements[0].amount).toBe(50_210);
}, 180_000);

test('the statement of each household opens from the list and adds up as the API has it', async () => {
  const { page } = await enter('birchall');
  await page.goto(`${root}/statements`);
  await page.getByLabel('Find a household').fill('corr');
  await page.getByRole('link', { name: /Corran/ }).click();
  const { closingMinorUnits } = bodyOf(
    await buy.treasurer.get(`${storehouse.path}/households/${buy.households.Corran.householdId}/statement`),
  );
  await page.getByText('Corran, seat').waitFor();
  await page.locator('tr.sum').first().getByText(money(closingMinorUnits)).waitFor();
}, 180_000);

test('a debt is asked to be written off, with its reason and its two sides said before', async () => {
  const { page } = await enter('birchall');
  await page.goto(`${root}/write-offs`);
  await page.getByText('Write a debt off').first().click();
  await page.getByLabel('Household').selectOption({ label: `Dell, ${money(await balanceOf('Dell'))}` });
  await page.getByLabel('Amount').fill('1,00');
  await page.getByText('Posts 1.00: debit 5030 Debt written off, credit the balance of Dell.').waitFor();
  await page.getByLabel('Reason').fill('Moved away.');
  await page.getByRole('button', { name: 'Write a debt off' }).click();
  await page.getByText('Moved away.').waitFor();
}, 180_000);

test('a reviewer reads the books and posts nothing; a member has no way in', async () => {
  const { page } = await enter('quill');
  await page.goto(`${root}/owing`);
  await page.getByRole('button', { name: /^Corran/ }).click();
  await page.getByText('The treasurer enters payments.').waitFor();
  expect(await page.getByRole('button', { name: 'By bank' }).count()).toBe(0);
  const dell = await enter('dell');
  expect(await dell.page.getByRole('link', { name: 'Books' }).count()).toBe(0);
  await dell.page.goto(root);
  await dell.page
    .getByRole('heading', { name: 'The books are read by the treasurer and the reviewer.' })
    .waitFor();
  expect(reviewer.householdId).not.toBe('');
}, 180_000);
