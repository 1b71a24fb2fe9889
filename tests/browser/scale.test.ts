import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { anItem, aShed, type TestItem, type TestShed } from '../support/equipment.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { findFaults, NO_FAULTS } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { openSite, type Site } from './support/site.ts';

// Tuesday, 1 September 2026, 10:00 in Chicago.
let site: Site;
let shed: TestShed;
let lead: TestHousehold;
let scale: TestItem;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z');
  shed = await aShed(site.app);
  lead = await aHousehold(site.app, shed, 'Lead', { duties: ['packing_lead'] });
  scale = await anItem(shed, { name: 'Floor scale', isScale: true, serviceEveryDays: null }, []);
}, 120_000);
afterAll(() => site.close());

const settledFaults = async (page: Page) => {
  await settle(page);
  return findFaults(page);
};
const textOf = async (page: Page) =>
  ((await page.locator('main').textContent()) ?? '').replaceAll(/\s+/g, ' ');

test('the keeper lays a weight on, reads that the scale is off, and a second weighing finds it true', async () => {
  const { page } = await site.enter('keeper@example.org');
  await page.goto('/');
  await page.getByRole('link', { name: 'See what is out' }).click();
  await page.getByRole('heading', { name: 'Is the scale or thermometer true?' }).waitFor();
  await page.getByText('Nobody has laid a known weight on it yet.').waitFor();
  expect(await textOf(page)).toContain('Not checked Nobody has laid a known weight on it yet.');
  expect(await textOf(page)).toContain('No thing in the list is a thermometer.');
  expect(await settledFaults(page)).toEqual(NO_FAULTS);
  await page.getByRole('link', { name: 'Floor scale 1' }).click();
  await page.getByLabel('Weight laid on, in grams').fill('10000');
  await page.getByLabel('What the scale shows, in grams').fill('ten');
  await page.getByLabel('It may be off by, in grams').fill('10');
  await page.getByRole('button', { name: 'Write the check down' }).click();
  await page.getByText('Write whole grams, such as 10000.').waitFor();
  expect(await settledFaults(page)).toEqual(NO_FAULTS);
  await page.getByLabel('What the scale shows, in grams').fill('10025');
  await page.getByRole('button', { name: 'Write the check down' }).click();
  await page.getByText('it showed 25 g too much: do not weigh on it.').waitFor();
  // The weight and the limit stand there for the next time; what it shows is read anew.
  expect(await page.getByLabel('Weight laid on, in grams').inputValue()).toBe('10000');
  expect(await page.getByLabel('What the scale shows, in grams').inputValue()).toBe('');
  await page.getByLabel('What the scale shows, in grams').fill('9996');
  await page.getByRole('button', { name: 'Write the check down' }).click();
  await page.getByText('it showed 4 g too little, within its limit.').waitFor();
  expect(await textOf(page)).toContain('10,000 g laid on, 10,025 g shown, limit 10 g');
  expect(await settledFaults(page)).toEqual(NO_FAULTS);
}, 120_000);

test('the keeper says that a thing is a thermometer, holds it in ice water, and reads in °F whether it is true', async () => {
  const probe = await anItem(shed, { name: 'Food thermometer', serviceEveryDays: null }, []);
  const { page } = await site.enter('keeper@example.org');
  await page.goto('/');
  await page.getByRole('link', { name: 'See what is out' }).click();
  await page.getByText('No thing in the list is a thermometer.').waitFor();
  await page.goto(`${page.url().replace(/(\/s\/[^/]+).*/, '$1')}/equipment/${probe.id}`);
  await page.getByRole('link', { name: 'Change it' }).click();
  await page.getByLabel('Something is weighed on it').check();
  await page.getByLabel('It is a thermometer').check();
  await page.getByRole('button', { name: 'Save' }).first().click();
  await page.getByText('List what is both as two things.').waitFor();
  expect(await settledFaults(page)).toEqual(NO_FAULTS);
  await page.getByLabel('Something is weighed on it').uncheck();
  await page.getByRole('button', { name: 'Save' }).first().click();
  await page.getByText('Nobody has held it in a known temperature yet.').waitFor();
  expect(await textOf(page)).toContain('Boiling water and its steam burn');
  const known = page.getByLabel('What it should show, in °F');
  const shown = page.getByLabel('What the thermometer shows, in °F');
  const limit = page.getByLabel('It may be off by, in °F');
  const write = page.getByRole('button', { name: 'Write the check down' });
  await known.fill('40');
  await shown.fill('cold');
  await limit.fill('2');
  await write.click();
  await page.getByText('Write degrees, such as 32 or 0.5.').waitFor();
  expect(await settledFaults(page)).toEqual(NO_FAULTS);
  await shown.fill('9999');
  await write.click();
  await page.getByText('No thermometer of food or a room is that hot').waitFor();
  // At its limit, where two temperatures kept in tenths of °C by themselves would be 2.2 °F apart.
  await shown.fill('42');
  await write.click();
  await page.getByText('it showed 2 °F too much, within its limit.').waitFor();
  await expect
    .poll(() => Promise.all([known, shown, limit].map((field) => field.inputValue())))
    .toEqual(['40', '', '2']);
  await known.fill('32');
  await shown.fill('-1.5');
  await write.click();
  await page.getByText('it showed 33.5 °F too little: do not go by it.').waitFor();
  await page.getByText('should show 40 °F, showed 42 °F, limit 2 °F').waitFor();
  await page.getByText('should show 32 °F, showed −1.5 °F, limit 2 °F').waitFor();
  expect(await settledFaults(page)).toEqual(NO_FAULTS);
  await page.goto(`${page.url().replace(/(\/s\/[^/]+).*/, '$1')}/equipment/desk`);
  await page.getByRole('heading', { name: 'Is the scale or thermometer true?' }).waitFor();
  await page.getByText('it showed 33.5 °F too little: do not go by it.').waitFor();
  expect(await settledFaults(page)).toEqual(NO_FAULTS);
}, 120_000);

test('whoever leads packing is warned of the line’s scale until it is checked', async () => {
  const facts = { name: 'Canning', place: 'the hall' };
  const times = { startsAt: '2026-10-10T14:00:00Z', endsAt: '2026-10-10T20:00:00Z' };
  const { id } = bodyOf(await lead.caller.post(`${shed.path}/packing-sessions`, { ...facts, ...times }), 201);
  bodyOf(await lead.caller.post(`${shed.path}/packing-sessions/${id}/equipment`, { itemId: scale.id }), 201);
  const { page } = await site.enter('lead@example.org');
  await page.goto('/');
  await page.waitForURL(/\/s\//);
  await page.goto(`${page.url().replace(/(\/s\/[^/]+).*/, '$1')}/packing`);
  await page.getByText('Is the scale checked?').waitFor();
  // Checked on 1 September at the latest, the day is 39 days later.
  expect(await textOf(page)).toMatch(/Floor scale 1 (Checked too long ago|Not checked)/);
  expect(await settledFaults(page)).toEqual(NO_FAULTS);
  const unit = scale.units[0]?.id;
  const good = { laidGrams: 10_000, shownGrams: 10_000, limitGrams: 10 };
  site.app.clock.now = new Date('2026-10-01T15:00:00Z');
  bodyOf(await lead.caller.post(`${shed.path}/equipment-units/${unit}/scale-checks`, good), 201);
  await page.reload();
  await page.getByText('it showed the weight to the gram.').waitFor();
}, 120_000);
