import { addDays, dayInZone } from '@sheafbook/units';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { anOpeningBalance, type TestBooks, theBooks } from '../support/money-books.ts';
import { A_PASSWORD } from '../support/storehouse.ts';
import { listViolations, overflowOf, smallTargets } from './support/checks.ts';
import { openSite, type Site } from './support/site.ts';

// A treasurer's evening with the bank's file and the cash tin. The tests are its hours and run in order.
let site: Site;
let books: TestBooks;
let desk: Page;
/** Days are the storehouse's own, which ends its day hours after the machine may have. */
const dayBefore = (days: number) => addDays(dayInZone(Date.now(), 'America/Chicago'), -days);

beforeAll(async () => {
  site = await openSite();
  books = await theBooks(site.app);
  const { householdId } = books.dell;
  const post = async (path: string, body: unknown) =>
    bodyOf(await books.treasurer.post(books.path + path, body), 201);
  await anOpeningBalance(books, books.dell, { balanceMinorUnits: 9000, onDay: dayBefore(50) });
  await post('/opening-balances', {
    of: 'bank',
    balanceMinorUnits: 50_000,
    onDay: dayBefore(40),
    reason: 'the statement',
  });
  await post('/payments', { householdId, minorUnits: 7200, till: 'bank', onDay: dayBefore(9) });
  await post('/payments', { householdId, minorUnits: 1200, till: 'cash', onDay: dayBefore(9) });
  desk = await signedIn('birchall@example.org', 1280);
});
afterAll(() => site.close());

async function signedIn(email: string, width = 390): Promise<Page> {
  const { page } = await site.visit({ width });
  await page.goto('/sign-in');
  await page.locator('input[name=email]').fill(email);
  await page.locator('input[name=password]').fill(A_PASSWORD);
  await page.locator('button[type=submit]').click();
  await page.waitForURL(/\/s\//);
  return page;
}

const at = (rest: string) => `/s/${books.storehouseId}/books/${rest}`;

/** Free of what axe finds, no wider than a small phone, and large enough for a thumb. */
async function isFit(page: Page): Promise<void> {
  await page.waitForLoadState('networkidle');
  expect(await listViolations(page)).toEqual([]);
  expect(await smallTargets(page)).toEqual([]);
  const size = page.viewportSize() ?? { width: 1280, height: 844 };
  await page.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(page)).toBe(0);
  await page.setViewportSize(size);
}

const lineOf = (words: string) => desk.getByRole('listitem').filter({ hasText: words });

// The bank writes days and cents its own way, and a sum at the foot.
const [bankDay, feeDay] = [dayBefore(7), dayBefore(6)].map((day) => day.split('-').toReversed().join('/'));
const FILE = [
  'Fecha;Concepto;Importe;Saldo',
  `${bankDay};TRANSFER FROM DELL;72,00;572,00`,
  `${feeDay};MONTHLY SERVICE FEE;-4,50;567,50`,
  `${feeDay};COUNTER 12;12,00;579,50`,
  `${feeDay};SOMEBODY ELSE;3,00;582,50`,
  'Suma;;82,50;',
].join('\r\n');

test('a file is chosen, read, its foot left out, and taken in', async () => {
  await desk.goto(at('bank'));
  await desk.getByRole('heading', { name: 'Nothing from the bank is here yet.' }).waitFor();
  await isFit(desk);
  await desk.getByRole('link', { name: 'Take in a file of the bank' }).click();
  await desk
    .getByLabel('File')
    .setInputFiles({ name: 'x.csv', mimeType: 'text/csv', buffer: Buffer.from('no table') });
  await desk.getByText('This file is no table of a bank’s lines.').waitFor();
  expect(await desk.getByLabel('File').getAttribute('aria-invalid')).toBe('true');
  const file = { name: 'octubre.csv', mimeType: 'text/csv', buffer: Buffer.from(FILE, 'latin1') };
  await desk.getByLabel('File').setInputFiles(file);
  await desk.getByText('This is how its columns look.').waitFor();
  expect(await desk.getByLabel('Days are written').inputValue()).toBe('dmy');
  expect(await desk.getByLabel('Cents follow').inputValue()).toBe(',');
  await desk.getByText('Row 6, no day: Suma').waitFor();
  expect(await desk.getByRole('button', { name: 'Take in 4 lines' }).isDisabled()).toBe(true);
  await isFit(desk);
  await desk.getByLabel('Column 2 is').selectOption({ label: 'nothing' });
  await desk.getByText('It is read as you said.').waitFor();
  await desk.getByLabel('Column 2 is').selectOption({ label: 'words' });
  await desk.getByLabel('Leave these rows out').check();
  await desk.getByRole('button', { name: 'Take in 4 lines' }).click();
  await desk.getByText('4 lines are taken in.').waitFor();
  await desk.getByRole('link', { name: 'To the lines' }).click();
  await desk.getByRole('heading', { name: '4 lines of the bank wait for their place.' }).waitFor();
  await isFit(desk);
  await desk.goto(at('bank/file'));
  const taken = desk.getByRole('row').filter({ hasText: 'octubre.csv' });
  await taken.getByRole('cell', { name: '4', exact: true }).waitFor();
  await isFit(desk);
  await desk.goto(at('bank'));
}, 180_000);

test('what is in the book is matched in a tap, what looks like a charge is posted, and both by keyboard', async () => {
  const transfer = lineOf('TRANSFER FROM DELL');
  await transfer.getByText('This amount is in the book already, near this day.').waitFor();
  await transfer.getByRole('button', { name: 'It is this entry' }).focus();
  await desk.keyboard.press('Enter');
  await desk.getByRole('heading', { name: '3 lines of the bank wait for their place.' }).waitFor();
  const fee = lineOf('MONTHLY SERVICE FEE');
  await fee.getByText('debit 5010 Bank charges, credit 1000 Bank').waitFor();
  await fee.getByRole('button', { name: 'Post it' }).first().click();
  await desk.getByRole('heading', { name: '2 lines of the bank wait for their place.' }).waitFor();
});

test('a second receipt is questioned in plain words, and posts once it is answered', async () => {
  const counter = lineOf('COUNTER 12');
  await counter.getByText('Something else').click();
  await counter.getByLabel('Household').selectOption({ label: 'Dell' });
  await counter.getByText('Posts 12.00: debit 1000 Bank, credit 1100 Dell.').waitFor();
  await counter.getByRole('button', { name: 'Post it' }).click();
  await counter.getByRole('heading', { name: 'Is this a second receipt for the same thing?' }).waitFor();
  await counter.getByText('has 12.00 USD from this household already').waitFor();
  await isFit(desk);
  await counter.getByRole('button', { name: 'Post it all the same' }).click();
  await counter.getByText('Say why this is not a second receipt for the same thing.').waitFor();
  await counter.getByLabel('Why it is not').fill('In the tin for September, by bank for October.');
  await counter.getByRole('button', { name: 'Post it all the same' }).click();
  await desk.getByRole('heading', { name: '1 line of the bank waits for its place.' }).waitFor();
});

test('a line of nobody is set aside with its reason, and the bank agrees to the cent', async () => {
  const other = lineOf('SOMEBODY ELSE');
  await other.getByText('Something else').click();
  await other.getByRole('button', { name: 'Set it aside' }).click();
  await other.getByText('Say why, for whoever reads the book later.').waitFor();
  await other.getByLabel('Why it is set aside').fill('The garden club’s three dollars.');
  await other.getByRole('button', { name: 'Set it aside' }).click();
  await desk
    .getByRole('heading', { name: /^The bank agrees with the book through .*, to the cent\.$/ })
    .waitFor();
  const table = desk.getByRole('table', { name: 'Does the bank agree?' });
  expect(await table.getByRole('row', { name: /The bank’s statement/ }).textContent()).toContain('582.50');
  expect(await table.getByRole('row', { name: /1000 Bank in the book/ }).textContent()).toContain('579.50');
  expect(await table.getByRole('row', { name: /Difference/ }).textContent()).toContain('0.00');
  await isFit(desk);
  await desk.getByRole('link', { name: 'Desk', exact: true }).click();
  await desk.getByRole('heading', { name: 'Does the bank agree?' }).waitFor();
  await desk.getByRole('link', { name: /^The bank agrees with the book through .*, to the cent\.$/ }).click();
  await desk.getByRole('table', { name: 'Does the bank agree?' }).waitFor();
});

test('a line is found by its amount, let go with a reason, and its payment taken back', async () => {
  await desk.getByLabel('Show').selectOption({ label: 'In the book' });
  await desk.getByLabel('Find by words or amount').fill('12.00');
  const counter = lineOf('COUNTER 12');
  await counter.getByText('Asked whether it is a second receipt: In the tin for September').waitFor();
  await counter.getByText('Let it go').first().click();
  await counter.getByRole('button', { name: 'Let it go' }).click();
  await counter.getByText('Say why, for whoever reads the book later.').waitFor();
  await counter.getByLabel('Why it is let go').fill('It was Corran’s.');
  await counter.getByRole('button', { name: 'Let it go' }).click();
  await desk.getByRole('heading', { name: '1 line of the bank waits for its place.' }).waitFor();
  const path = `${books.path}/households/${books.dell.householdId}/balance`;
  expect(bodyOf(await books.dell.caller.get(path)).balanceMinorUnits).toBe(600); // 90.00 − 72.00 − 12.00 in the tin
});

test('what is due by a day and the bills to come are weighed against the bank', async () => {
  await desk.getByText(/^Yes\s*573\.50 is left after all that is due by/).waitFor(); // 567.50 and Dell’s 6.00
  await desk.getByLabel('Bills still to come').fill('600');
  await desk.getByText(/^No\s*26\.50 is short by/).waitFor();
});

test('the tin is counted by coins, and a difference says what it posts before the tap', async () => {
  await desk.goto(at('tin'));
  await desk.getByRole('heading', { name: 'By the book 12.00 USD is in the cash tin.' }).waitFor();
  await isFit(desk);
  await desk.getByRole('button', { name: 'Keep this count' }).click();
  await desk.getByText('Write how many there are of each').waitFor();
  await desk.getByLabel('Pieces of 10.00', { exact: true }).fill('1');
  await desk.getByLabel('Pieces of 0.25', { exact: true }).fill('x');
  await desk.getByText('Write a whole number.').waitFor();
  await desk.getByLabel('Pieces of 0.25', { exact: true }).fill('7');
  await desk.getByText('Posts 0.25: debit 5000 Losses, credit 1010 Cash tin.').waitFor();
  await desk.reload(); // what was counted is kept when the tab closes
  expect(await desk.getByLabel('Pieces of 0.25', { exact: true }).inputValue()).toBe('7');
  await desk.getByLabel('Counted with').selectOption({ label: 'Corran Person' });
  await desk.getByRole('button', { name: 'Keep this count' }).click();
  expect(await desk.getByLabel('What you know of why').getAttribute('aria-invalid')).toBe('true');
  await desk.getByLabel('What you know of why').fill('Change given wrongly on Saturday.');
  await desk.getByRole('button', { name: 'Keep this count' }).click();
  await desk.getByText('The count is kept.').waitFor();
  await desk.getByRole('heading', { name: 'By the book 11.75 USD is in the cash tin.' }).waitFor();
  const row = desk.getByRole('table', { name: 'Counts before' }).getByRole('row', { name: /Saturday/ });
  expect(await row.textContent()).toContain('Birchall Person and Corran Person');
  await isFit(desk);
});

test('who owes since when is one list, on a phone too, and the reviewer reads it without a button', async () => {
  const phone = await signedIn('corran@example.org');
  await phone.goto(at('ageing'));
  await phone.getByRole('heading', { name: '1 household owes 6.00 USD.' }).waitFor();
  const row = phone.getByRole('table', { name: 'Who owes' }).getByRole('row', { name: /Dell/ });
  expect(await row.textContent()).toContain('50 days');
  await isFit(phone);
  await phone.getByLabel('Find a household').fill('nobody at all');
  await phone.getByText('No household is found like this.').waitFor();
  await phone.goto(at('bank'));
  await phone.getByRole('heading', { name: /^1 line of the bank waits/ }).waitFor();
  expect(await phone.getByRole('button', { name: 'Post it' }).count()).toBe(0);
  await phone.goto(at('tin'));
  await phone.getByText('The treasurer counts it.').waitFor();
});

test('all of it is there in Spanish', async () => {
  const { page } = await site.visit({ width: 390, language: 'es-MX' });
  await page.goto('/sign-in');
  await page.locator('input[name=email]').fill('birchall@example.org');
  await page.locator('input[name=password]').fill(A_PASSWORD);
  await page.locator('button[type=submit]').click();
  await page.waitForURL(/\/s\//);
  for (const [rest, heading] of [
    ['bank', /espera su sitio/],
    ['bank/file', /Cargar un archivo del banco/],
    ['tin', /Según los libros hay/],
    ['ageing', /1 hogar debe/],
  ] as const) {
    await page.goto(at(rest));
    await page.getByRole('heading', { name: heading }).waitFor();
    await isFit(page);
  }
});
