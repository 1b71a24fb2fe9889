import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { writeLetter } from '../../apps/api/src/features/letter/use-cases.ts';
import { withStorehouseTx } from '../../apps/api/src/platform/with-tx.ts';
import { bodyOf } from '../support/buy.ts';
import { type Catcher, openCatcher } from '../support/catcher.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { doWork } from '../support/work.ts';
import { listViolations, overflowOf, smallTargets } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { openSite, type Site } from './support/site.ts';

let site: Site;
let storehouse: TestStorehouse;
let dell: TestHousehold;
let catcher: Catcher;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z');
  storehouse = await aStorehouse(site.app);
  dell = await aHousehold(site.app, storehouse, 'Dell');
  catcher = await openCatcher();
}, 120_000);
afterAll(async () => {
  await catcher.close();
  await site.close();
});

const pageOf = (what: string) => `/s/${storehouse.storehouseId}${what}`;

/** Free of what axe finds, no wider than a small phone, and large enough for a thumb. */
async function isFit(page: Page): Promise<void> {
  await settle(page);
  expect(await listViolations(page)).toEqual([]);
  expect(await smallTargets(page)).toEqual([]);
  await page.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(page)).toBe(0);
  await page.setViewportSize({ width: 390, height: 844 });
}

/** The words of the problem at a field, as a screen reader hears them with it. */
async function problemAt(page: Page, label: string): Promise<string> {
  const field = page.getByLabel(label, { exact: true });
  const id = (await field.getAttribute('aria-describedby'))?.split(' ').at(-1);
  const problem = page.locator(`[id="${id}"]:not(:empty)`);
  await problem.waitFor();
  expect(await field.getAttribute('aria-invalid')).toBe('true');
  return (await problem.textContent()) ?? '';
}

test('a member says how and of what to be told, and finds it so again; safety offers no switch', async () => {
  const { page, complaints } = await site.enter('dell@example.org');
  await page.goto(pageOf('/notices'));
  await page.getByRole('link', { name: 'How you are told by e-mail' }).click();
  await page.getByText('This storehouse sends no e-mail yet.').waitFor();
  expect(await page.getByLabel('Write to me', { exact: true }).isChecked()).toBe(true);
  expect(await page.getByLabel('Not before').inputValue()).toBe('8');
  await page.getByText('Food of yours is on hold, and other notices about safety: always.').waitFor();
  expect(await page.getByLabel(/about safety/).count()).toBe(0); // a sentence, and nothing to switch off
  await isFit(page);

  await page.getByLabel('In which language').selectOption('es');
  await page.getByLabel('On the clock of').fill('Europe/Berlin');
  await page.getByLabel('Not before').selectOption('20');
  await page.getByLabel('Not after').selectOption('6');
  await page.getByLabel('How often').selectOption('22');
  await page.getByLabel('Notices', { exact: true }).focus();
  await page.keyboard.press('Space');
  await page.getByRole('button', { name: 'Save' }).focus();
  await page.keyboard.press('Enter');
  await page.getByText('Saved.', { exact: true }).waitFor();

  await page.reload();
  await settle(page);
  expect(await page.getByLabel('In which language').inputValue()).toBe('es');
  expect(await page.getByLabel('On the clock of').inputValue()).toBe('Europe/Berlin');
  expect(await page.getByLabel('Not before').inputValue()).toBe('20');
  expect(await page.getByLabel('Not after').inputValue()).toBe('6');
  expect(await page.getByLabel('How often').inputValue()).toBe('22');
  expect(await page.getByLabel('Notices', { exact: true }).isChecked()).toBe(false);
  expect(await page.getByLabel('Your deposit is asked for').isChecked()).toBe(true);
  expect(complaints).toEqual([]);
}, 180_000);

test('hours that never come, a letter outside them and a zone that does not exist are refused at their fields', async () => {
  const { page } = await site.enter('coordinator@example.org');
  await page.goto(pageOf('/notices/wishes'));
  const save = page.getByRole('button', { name: 'Save' });
  await page.getByLabel('Not after').selectOption('8');
  await save.click();
  expect(await problemAt(page, 'Not after')).toBe('These hours never come: they end when they begin.');
  await page.getByLabel('Not after').selectOption('20');
  await page.getByLabel('How often').selectOption('5');
  await save.click();
  expect(await problemAt(page, 'How often')).toBe(
    'The hour of the daily letter must lie in your hours, or it never comes.',
  );
  await page.getByLabel('How often').selectOption('9');
  await page.getByLabel('On the clock of').fill('Mars/Olympus');
  await page.getByLabel('On the clock of').press('Enter');
  expect(await problemAt(page, 'On the clock of')).toMatch(/^There is no such time zone/);
  await isFit(page);
  await page.reload();
  await settle(page);
  expect(await page.getByLabel('On the clock of').inputValue()).toBe('Mars/Olympus'); // what was typed waits here
  const kept = bodyOf(await storehouse.coordinator.get(`${storehouse.path}/telling-wishes`));
  expect(JSON.stringify(kept)).not.toContain('Mars'); // and nowhere else
}, 180_000);

test('the same page reads in Spanish', async () => {
  const { page } = await site.enter('coordinator@example.org', { width: 320, language: 'es' });
  await page.goto(pageOf('/notices/wishes'));
  await settle(page);
  await page.getByLabel('No después de las', { exact: true }).waitFor();
  expect(await overflowOf(page)).toBe(0);
  expect(await listViolations(page)).toEqual([]);
}, 180_000);

test('a coordinator sees why a letter failed for good, has it tried again, and it goes out', async () => {
  const { app } = site;
  const letter = { personId: dell.personId, kind: 'deposit-due', subject: 'Your deposit', stopUrl: null };
  await withStorehouseTx(app.outside, storehouse.storehouseId, (tx) =>
    writeLetter(tx, storehouse.storehouseId, { ...letter, text: 'It is due.', html: '<p>It is due.</p>' }),
  );
  catcher.mood = { code: 550, words: '5.1.1 no such mailbox <dell@example.org>', at: 'rcpt' };
  expect(await doWork(app, catcher)).toMatchObject({ dead: 1 });
  catcher.mood = 'take';

  const { page, complaints } = await site.enter('coordinator@example.org');
  await page.goto(pageOf('/settings'));
  await page.getByRole('link', { name: 'Work in the background' }).click();
  await page
    .getByRole('heading', { name: '1 thing that the book does by itself failed for good.' })
    .waitFor();
  await page.getByRole('heading', { name: 'A letter to Dell Person' }).waitFor();
  await page.getByText('The mail server refused the letter for good: “550 5.1.1 no such mailbox').waitFor();
  await page.getByText('E-mail is off').waitFor();
  const shown = (await page.locator('main').textContent()) ?? '';
  for (const secret of ['dell@example.org', 'Your deposit', 'deposit-due', 'It is due'])
    expect(shown).not.toContain(secret); // that a household gets a letter about a debt is its own affair
  await isFit(page);
  await page.getByRole('button', { name: 'Try again' }).focus();
  await page.keyboard.press('Enter');
  await page.getByText('1 thing waits to be done').waitFor();
  await page
    .getByRole('heading', { name: 'Nothing that the book does by itself has failed for good.' })
    .waitFor();
  expect(catcher.caught).toEqual([]);
  expect(await doWork(app, catcher)).toMatchObject({ done: 1 });
  expect(catcher.caught.map(({ to }) => to)).toEqual(['dell@example.org']);
  await page.reload();
  await page.getByText('Nothing here.', { exact: true }).waitFor();
  expect(await listViolations(page)).toEqual([]);
  expect(complaints).toEqual([]);
}, 180_000);

test('a member finds no way there, and is refused with a sentence where the address is known', async () => {
  const { page } = await site.enter('dell@example.org');
  await page.goto(pageOf('/settings'));
  await settle(page);
  expect(await page.getByRole('link', { name: 'Work in the background' }).count()).toBe(0);
  await page.goto(pageOf('/settings/work'));
  await page.getByText('Your duties in this storehouse do not include this.').waitFor();
  expect(await page.getByText('that the book does by itself').count()).toBe(0);
  expect(await listViolations(page)).toEqual([]);
}, 180_000);
