import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { sheetFiles, WHOLE_GROUP } from '../support/import.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { listViolations, overflowOf, smallTargets } from './support/checks.ts';
import { openSite, type Site } from './support/site.ts';

let site: Site;
let storehouse: TestStorehouse;
beforeAll(async () => {
  site = await openSite('2026-10-01T15:00:00Z');
  storehouse = await aStorehouse(site.app);
  const { persons } = bodyOf(await storehouse.coordinator.get(`${storehouse.path}/persons`));
  const duties = `${storehouse.path}/persons/${persons[0].id}/duties`;
  bodyOf(await storehouse.coordinator.post(duties, { duty: 'treasurer' }), 201);
});
afterAll(() => site.close());

const whole = () =>
  sheetFiles(WHOLE_GROUP).map(({ name, base64 }) => ({
    name,
    mimeType: 'text/csv',
    buffer: Buffer.from(base64, 'base64'),
  }));
const householdCount = async () =>
  bodyOf(await storehouse.coordinator.get(`${storehouse.path}/households`)).households.length;

test('a group comes from its spreadsheets: an error stands at its cell, then all of it is brought over at once', async () => {
  const { page } = await site.enter('coordinator@example.org', { width: 1280 });
  await page.goto(`/s/${storehouse.storehouseId}/import`);
  const files = whole();
  const spoilt = {
    name: 'eaters.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from('Household,Eater,Born\nNobody Here,Ida,1990\n'),
  };
  await page.getByLabel('Files').setInputFiles([spoilt]);
  await page.getByRole('button', { name: 'Try it: write nothing yet' }).click();
  await page.getByText('Nothing can be brought over yet.').waitFor();
  await page.locator('td.cell-wrong', { hasText: 'Nobody Here' }).waitFor();
  expect(await householdCount()).toBe(1);
  await page.getByLabel('Files').setInputFiles(files);
  await page.getByRole('button', { name: 'Try it: write nothing yet' }).click();
  await page.getByRole('heading', { name: 'Everything fits' }).waitFor();
  expect(await householdCount()).toBe(1);
  expect(await listViolations(page)).toEqual([]);
  expect(await smallTargets(page)).toEqual([]);
  await page.getByRole('button', { name: 'Bring all of it over' }).click();
  await page.getByText('Everything was brought over.').waitFor();
  await page.getByText(/^Number 1: /).waitFor();
  expect(await householdCount()).toBeGreaterThan(1);
  await page.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(page)).toBe(0);
  await page.getByRole('link', { name: 'Equipment' }).click();
  await page.getByRole('heading', { name: /^The group lends/ }).waitFor();
  await page.goBack();
  await page.getByText('Take import 1 back').click();
  await page.getByText('This will take back everything that it brought:').waitFor();
  await page.getByText('2 eaters: removed').waitFor();
  expect(await listViolations(page)).toEqual([]);
  expect(await overflowOf(page)).toBe(0);
  await page.getByLabel('Why').fill('the wrong year');
  await page.getByRole('button', { name: 'Take all of it back' }).click();
  await page.getByText(/^Taken back .*: the wrong year$/).waitFor();
}, 120_000);

test('the page is reached from the people', async () => {
  const { page } = await site.enter('coordinator@example.org');
  await page.goto(`/s/${storehouse.storehouseId}/people`);
  await page.getByRole('link', { name: /over from spreadsheets/ }).click();
  await page.getByRole('heading', { name: 'Bring a group over from its spreadsheets.' }).waitFor();
}, 180_000);
