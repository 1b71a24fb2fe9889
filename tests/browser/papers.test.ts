import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { aBuy, bodyOf, type TestBuy } from '../support/buy.ts';
import { anOrderedBuy } from '../support/fixed-buy.ts';
import { bagBodies, offersOf } from '../support/landed-buy.ts';
import { printed } from '../support/pdf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { listViolations, overflowOf, smallTargets } from './support/checks.ts';
import { grainNow } from './support/grain-now.ts';
import { signInAs } from './support/sign-in.ts';
import { openSite, type Site } from './support/site.ts';

const DAY = 86_400_000;
const WHEAT = 'wheat-hard-red-winter';

let site: Site;
let storehouse: TestStorehouse;
let buy: TestBuy;
beforeAll(async () => {
  site = await openSite();
  storehouse = await aStorehouse(site.app);
  const now = Date.now();
  buy = await aBuy(site.app, storehouse, {
    name: 'Autumn grain',
    foods: [WHEAT],
    gatheringClosesAt: new Date(now + 12 * DAY).toISOString(),
    orderOn: new Date(now + 14 * DAY).toISOString().slice(0, 10),
    quote: { validUntil: new Date(now + 40 * DAY).toISOString().slice(0, 10) },
  });
}, 180_000);
afterAll(() => site.close());

async function signedIn(): Promise<Page> {
  const { page } = await site.visit();
  await signInAs(page, 'coordinator@example.org');
  return page;
}

const codeOf = async (path: string): Promise<string> =>
  (await printed(storehouse.coordinator, path)).pages[0]?.qr.split('/').at(-1) ?? '';

async function expectSound(page: Page): Promise<void> {
  expect(await listViolations(page)).toEqual([]);
  expect(await overflowOf(page)).toBe(0);
  expect(await smallTargets(page)).toEqual([]);
}

test('a slip that a pen filled in is keyed in at the page of its code, with both times', async () => {
  const code = await codeOf(`${buy.path}/papers/pledge-slip?blank=true`);
  const page = await signedIn();
  await page.goto(`/s/${storehouse.storehouseId}/papers/${code}`);
  await page.getByRole('heading', { name: /Pledge slip, paper no\. 1/ }).waitFor();
  await page.getByLabel('Wanted').fill('a sack');
  await page.getByText('Write a mass').waitFor();
  const key = page.getByRole('button', { name: 'Key in what the pen wrote' });
  expect(await key.isDisabled()).toBe(true);
  await page.getByLabel('Wanted').fill('25 lb');
  await page.getByLabel('Day on the paper').fill('2020-01-01');
  await page.getByLabel('Hour on the paper').fill('00:00');
  await expectSound(page);
  await key.click();
  await page.getByText('The buy was planned after that').first().waitFor(); // said at the field, and nothing is lost
  expect(bodyOf(await storehouse.coordinator.get(`${buy.path}/pledges`)).own).toEqual([]);
  await page.reload();
  expect(await page.getByLabel('Wanted').inputValue()).toBe('25 lb');
  // The clock of the book stands still, so the minute in which the buy was planned is the only one that can be right.
  site.app.clock.now = new Date(site.app.clock.now.getTime() + 2 * 60_000);
  const written = new Date(site.app.clock.now.getTime() - 60_000).toLocaleString('sv-SE', {
    timeZone: 'America/Chicago',
  });
  await page.getByLabel('Day on the paper').fill(written.slice(0, 10));
  await page.getByLabel('Hour on the paper').fill(written.slice(11, 16));
  await page.getByLabel('Wanted').press('Enter'); // the keyboard is enough
  await page.getByText('1 food is keyed in.').waitFor();
  await page.getByRole('heading', { name: 'Keyed in from paper' }).waitFor();
  await page.getByText(/written .*keyed /).waitFor();
  const { own } = bodyOf(await storehouse.coordinator.get(`${buy.path}/pledges`));
  expect(own).toMatchObject([{ wantedGrams: 11_340, leastGrams: 11_340, asTyped: '25 lb' }]);
  await page.goto(`/s/${storehouse.storehouseId}/buys/${buy.buyId}/lines/${buy.lines[WHEAT]}`);
  await page.getByText(/Pledge: by pen on .*, keyed in on .* by Ada Ashdown/).waitFor();
}, 180_000);

test('the papers of a buy open as PDF in the size and language that were chosen', async () => {
  const page = await signedIn();
  await page.goto(`/s/${storehouse.storehouseId}/buys/${buy.buyId}`);
  await page.getByText('Paper', { exact: true }).click();
  await page.getByLabel('Sheet').selectOption('a4');
  await page.getByLabel('Language').selectOption('es');
  const address = await page.getByRole('link', { name: 'Buy sheet' }).getAttribute('href');
  const pdf = await printed(storehouse.coordinator, address ?? '');
  expect(pdf.text).toContain('Hoja de la compra');
  expect(pdf.pages[0]).toMatchObject({ width: 595.28, height: 841.89 });
  await expectSound(page);
  await page.reload();
  await page.getByText('Paper', { exact: true }).click();
  expect(await page.getByLabel('Language').inputValue()).toBe('es');
  const code = pdf.pages[0]?.qr.split('/').at(-1) ?? '';
  await page.getByLabel('Code on a paper').fill(code.toLowerCase());
  await page.getByRole('button', { name: 'Follow the code' }).click();
  await page.getByRole('heading', { name: /Buy sheet, paper no\./ }).waitFor();
}, 180_000);

test('a misread code says so', async () => {
  const page = await signedIn();
  await page.goto(`/s/${storehouse.storehouseId}/papers/ABCDE`);
  await page.getByText('the last character tells a wrong one').waitFor();
  await expectSound(page);
}, 180_000);

test('a landing sheet is keyed in: the lorry and its count', async () => {
  const ordered = await anOrderedBuy(site.app, storehouse, { ...grainNow(), name: 'Winter grain' });
  const code = await codeOf(`${ordered.path}/papers/landing-sheet`);
  site.app.clock.now = new Date(site.app.clock.now.getTime() + 2 * 60_000);
  const written = new Date(site.app.clock.now.getTime() - 60_000).toLocaleString('sv-SE', {
    timeZone: 'America/Chicago',
  });
  const page = await signedIn();
  await page.goto(`/s/${storehouse.storehouseId}/papers/${code}`);
  await page.getByLabel('Day on the paper').fill(written.slice(0, 10));
  await page.getByLabel('Hour on the paper').fill(written.slice(11, 16));
  await page.getByLabel('Carrier', { exact: true }).fill('Valley Freight');
  await page
    .getByLabel(/bags counted/)
    .first()
    .fill('six');
  await page.getByText('Write a whole number').waitFor();
  await page
    .getByLabel(/bags counted/)
    .first()
    .fill('6');
  await expectSound(page);
  await page.getByRole('button', { name: 'Key in what the pen wrote' }).click();
  await page.getByText('The lorry and its count are keyed in.').waitFor();
  const { keyings } = bodyOf(await storehouse.coordinator.get(`${ordered.path}/keyings`));
  expect(keyings.map((keying: { what: string }) => keying.what)).toEqual(['delivery', 'count']);
  const pen = { writtenAt: written.slice(0, 16).replace(' ', 'T'), paperCode: code };
  const bodies = bagBodies(await offersOf(storehouse, ordered), { wheat: [{}] });
  const path = `${storehouse.path}/deliveries/${keyings[0].subjectId}/bags`;
  const { bags } = bodyOf(await storehouse.coordinator.post(path, { bags: bodies, ...pen }), 201);
  await page.goto(`/s/${storehouse.storehouseId}/buys/${ordered.buyId}/landing/bags/${bags[0].id}`);
  await page.getByText(/Bag: by pen on .*, keyed in on .* by Ada Ashdown/).waitFor();
}, 180_000);
