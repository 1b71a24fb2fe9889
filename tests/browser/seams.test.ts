import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { aHall, aPackingSession, aPourBody, bringWheat, type TestHall } from '../support/packing.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { listViolations, overflowOf, smallTargets } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { openSite, type Site } from './support/site.ts';

let site: Site;
let storehouse: TestStorehouse;
let hall: TestHall;
let day: string;
let page: Page;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z');
  storehouse = await aStorehouse(site.app);
  hall = await aHall(site.app, storehouse);
  day = await aPackingSession(storehouse, hall, { name: 'Autumn canning' });
  bodyOf(await hall.lead.caller.post(`${day}/start`));
  page = (await site.enter('pat-corran@example.org')).page;
});
afterAll(() => site.close());

const pour = async (name: 'Ashdown' | 'Dell', cans: number) => {
  await bringWheat(hall, day, name);
  const wish = { name, grams: Array<number>(cans).fill(10), targetGrams: 10 };
  bodyOf(await hall.lead.caller.post(`${day}/pours`, aPourBody(hall, wish)), 201);
};
const seals = async () => bodyOf(await hall.lead.caller.get(`${day}/seals`));
const measure = async (thickness: string, looksGood = true) => {
  const figures = [
    ['Seam width', '115'],
    ['Thickness', thickness],
    ['Countersink', '125'],
    ['Cover hook', '75'],
    ['Body hook', '78'],
  ] as const;
  for (const [label, value] of figures) await page.getByLabel(label, { exact: true }).fill(value);
  if (looksGood) await page.getByLabel(/^It looks good/).check();
};
/** Writes the check down and waits until the book has it. */
const write = async (name = 'Write the check down') => {
  const { length } = (await seals()).checks;
  await page.getByRole('button', { name }).click();
  await expect.poll(async () => (await seals()).checks.length).toBe(length + 1);
  await expect.poll(() => page.getByLabel('Thickness', { exact: true }).inputValue()).toBe('');
};

test('without the maker’s limits no teardown is taken, and a link leads to where they are written down', async () => {
  await page.goto(`/s/${storehouse.storehouseId}/packing`);
  await page.getByRole('link', { name: 'Machines and limits' }).click();
  await page.getByRole('heading', { name: 'No machine is written down yet.' }).waitFor();
  await page.getByLabel('Name').fill('Seamer');
  await page.getByRole('button', { name: 'Add it' }).click();
  await page.getByRole('heading', { name: '1 machine, none of them out.' }).waitFor();
  await page.goto(`/s/${storehouse.storehouseId}/packing/${day.split('/').at(-1)}/log`);
  await page.getByRole('link', { name: 'Seams and seals' }).click();
  await page.getByText(/^Nobody has written down what the maker/).waitFor();
  expect(await page.getByRole('button', { name: 'Write it down as failed' }).isDisabled()).toBe(true);
  await page.getByRole('link', { name: 'Write the limits down' }).click();
  const figures = {
    ...{ 'Width, least': '110', 'Width, most': '109', 'Thickness, least': '55', 'Thickness, most': '62' },
    ...{ 'Countersink, least': '120', 'Countersink, most': '130', 'Plate of the lid': '10' },
    ...{ 'Plate of the body': '9', 'Overlap, least (%)': '55', 'Which maker’s sheet': 'an invented sheet' },
  };
  for (const [label, value] of Object.entries(figures)) await page.getByLabel(label).fill(value);
  await page.getByRole('button', { name: 'Keep these limits' }).click();
  await page.getByText('The most is no less than the least.').waitFor();
  await page.getByLabel('Width, most').fill('120');
  await page.getByRole('button', { name: 'Keep these limits' }).click();
  await page.getByText(/width 110 to 120, thickness 55 to 62/).waitFor();
  expect(await listViolations(page)).toEqual([]);
  await page.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(page)).toBe(0);
}, 180_000);

test('a seam that fails stops the machine, and the strip shows what is in doubt and which can to open', async () => {
  await page.goto(`/s/${storehouse.storehouseId}/packing/${day.split('/').at(-1)}/seals`);
  await page.getByRole('heading', { name: 'A seal is to be checked now.' }).waitFor();
  await measure('58');
  await write();
  await page.getByRole('heading', { name: 'Every machine passed its last check.' }).waitFor();
  await pour('Ashdown', 4);
  await pour('Dell', 4);
  await page.getByLabel('Number of the container').fill('8');
  await measure('66'); // it looks good, and the gauge says that it is not
  await page.getByText('Outside what the maker allows: thickness.').waitFor();
  await write();
  await page.getByRole('heading', { name: '8 containers are in doubt.' }).waitFor();
  await page
    .getByRole('img', { name: /8 containers in the order .*: 7 in doubt, 0 good, 1 failed/ })
    .waitFor();
  await page.getByText(/^Open number 4 next/).waitFor();
  await page.getByText('Who has them: 2 households, each told').waitFor();
  expect(await listViolations(page)).toEqual([]);
  expect(await smallTargets(page)).toEqual([]);
  expect(await overflowOf(page)).toBe(0);
}, 180_000);

test('halving by opening one, three good trials, and what passed is let go', async () => {
  await page.getByRole('button', { name: 'Open number 4', exact: true }).click();
  await page.getByRole('heading', { name: 'Open number 4 and check it' }).waitFor();
  await measure('58');
  await write();
  await page.getByText(/^Open number 6 next/).waitFor();
  for (const _ of [1, 2, 3]) {
    await page.getByLabel('Why now').selectOption('clearing');
    await measure('58');
    await write();
  }
  await expect.poll(async () => (await seals()).machines[0].outSince).toBeNull();
  await page.getByLabel('Which', { exact: true }).selectOption({ label: '3 that passed' });
  await page.getByLabel('What was found').fill('Number 4 is good.');
  await page.getByRole('button', { name: 'Let 3 go as good' }).click();
  await page.getByRole('heading', { name: '5 containers are in doubt.' }).waitFor();
  await page.getByLabel('What was found').fill('The seam is too thick.');
  await page.getByRole('button', { name: 'Put 5 into new cans' }).click();
  await page.getByText('Numbers 1 to 8 were in doubt, and all are answered for.').waitFor();
}, 180_000);

test('what did not pass goes into new cans, and each old code leads to its new one', async () => {
  await page.getByLabel('Which', { exact: true }).selectOption({ label: 'All 5 that wait' });
  await page.getByLabel('Treatment').selectOption('dry-ice');
  await page.reload();
  await expect.poll(() => page.getByLabel('Treatment').inputValue()).toBe('dry-ice'); // what was chosen stays
  await page.getByLabel('Treatment').selectOption({ label: 'Oxygen absorber' });
  // It is kept on the phone where there is no signal.
  site.cut(true);
  await page.getByRole('button', { name: '5 are in new cans' }).click();
  await page.getByText('5 containers filled anew').waitFor();
  site.cut(false);
  await page.reload();
  const moved = page.getByRole('table', { name: 'In new cans' });
  await moved.waitFor();
  expect(await moved.locator('tbody tr').count()).toBe(5);
  await settle(page);
  expect(await listViolations(page)).toEqual([]);
  expect(await overflowOf(page)).toBe(0);
  await page.getByText('One was written down by mistake').click();
  await page.getByLabel('Why', { exact: true }).fill('that can is full of flour');
  await page.getByRole('button', { name: 'It is in the old can still' }).click();
  await page.getByRole('button', { name: '1 is in a new can' }).waitFor();
  expect(await moved.locator('tbody tr').count()).toBe(4);
}, 180_000);

test('a check typed without a signal outlives a closed tab, is sent once, and vouches for nothing that was closed since', async () => {
  const MINUTE = 60_000;
  const later = () => {
    site.app.clock.now = new Date(site.app.clock.now.getTime() + MINUTE);
  };
  await pour('Ashdown', 1);
  later();
  await page.clock.setFixedTime(site.app.clock.now);
  await page.reload();
  await page.getByRole('heading', { name: 'Check a seal' }).waitFor();
  const before = (await seals()).checks.length;
  site.cut(true);
  await measure('58');
  await page.getByRole('button', { name: 'Write the check down' }).click();
  await page.getByText('1 thing waits on this phone and will be sent when the signal is back.').waitFor();
  await page.getByText('Seal check on line 1, a trial: it looks good').waitFor();
  expect(await overflowOf(page)).toBe(0);
  const madeAt = site.app.clock.now.toISOString();
  const context = page.context();
  await page.close();
  later();
  await pour('Dell', 1);
  expect((await seals()).checks.length).toBe(before);
  site.cut(false);
  page = await context.newPage();
  page.setDefaultTimeout(40_000);
  await page.goto(`/s/${storehouse.storehouseId}/packing/${day.split('/').at(-1)}/seals`);
  await expect.poll(async () => (await seals()).checks.length, { timeout: 40_000 }).toBe(before + 1);
  await page.getByRole('heading', { name: 'Check a seal' }).waitFor();
  expect(await page.getByText(/waits on this phone/).count()).toBe(0);
  const sent = (await seals()).checks.at(-1);
  expect([sent.checkedAt, sent.recordedAt]).toEqual([madeAt, site.app.clock.now.toISOString()]);
  const { pours, unchecked } = bodyOf(await hall.lead.caller.get(`${day}/log`));
  const last = pours.at(-1).serial;
  expect(unchecked).toMatchObject([{ fromSerial: last, toSerial: last }]);
  await page.reload();
  await page.getByRole('heading', { name: 'Check a seal' }).waitFor();
  expect((await seals()).checks.length).toBe(before + 1);
}, 180_000);

test('a check that the book refuses comes back with the reason, and goes into the form as it was typed', async () => {
  const before = (await seals()).checks.length;
  await page.getByLabel('Number of the container').fill('99');
  await measure('59');
  await page.getByRole('button', { name: 'Write the check down' }).click();
  await page.getByText(/The line has closed \d+ containers so far\./).waitFor();
  await page.getByRole('button', { name: 'Put it right in the form' }).click();
  expect(await page.getByLabel('Thickness', { exact: true }).inputValue()).toBe('59');
  expect(await page.getByLabel('Number of the container').inputValue()).toBe('99');
  await page.getByLabel('Number of the container').fill('');
  await page.getByRole('button', { name: 'Write the check down' }).click();
  await expect.poll(async () => (await seals()).checks.length, { timeout: 40_000 }).toBe(before + 1);
}, 180_000);

test('its owner reads what to do, and acknowledges it', async () => {
  const owner = (await site.enter('dell@example.org')).page;
  await owner.goto(`/s/${storehouse.storehouseId}/notices`);
  await owner.getByText(/goes into new containers with fresh absorbers/).waitFor();
  await owner.getByRole('button', { name: 'Understood' }).first().click();
  await owner.getByText(/^You acknowledged it/).waitFor();
  await owner.goto(`/s/${storehouse.storehouseId}/shelf`);
  await owner.getByRole('link', { name: 'What was in doubt stands in new containers' }).click();
  await owner.getByRole('heading', { name: 'None of your containers is in doubt.' }).waitFor();
  await owner.getByRole('heading', { name: 'In new containers' }).waitFor();
  await settle(owner);
  expect(await listViolations(owner)).toEqual([]);
  expect(await overflowOf(owner)).toBe(0);
}, 180_000);
