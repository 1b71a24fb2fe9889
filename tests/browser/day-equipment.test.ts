import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { anItem, aShed, book, type TestShed } from '../support/equipment.ts';
import { aHousehold } from '../support/household.ts';
import { listViolations, overflowOf, smallTargets } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { openSite, type Site } from './support/site.ts';

let site: Site;
let shed: TestShed;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z');
  shed = await aShed(site.app);
  await aHousehold(site.app, shed, 'Lead', { duties: ['packing_lead'] });
}, 120_000);
afterAll(() => site.close());

test('the lead books things for the day, takes one that a loan has to give way with, and gives one back', async () => {
  const sealer = await anItem(shed);
  await anItem(shed, { name: 'Dolly', units: 2, postMinutes: 0 }, []);
  bodyOf(await book(shed.hale.caller, sealer, ['2026-09-26T10:00', '2026-09-26T18:00']), 201);
  const facts = { name: 'Autumn canning', startsAt: '2026-09-26T14:00:00Z', endsAt: '2026-09-26T20:00:00Z' };
  const { id } = bodyOf(await shed.coordinator.post(`${shed.path}/packing-sessions`, facts), 201);
  const { page } = await site.enter('lead@example.org');
  await page.goto(`/s/${shed.storehouseId}/packing/${id}`);
  await page.getByText('Nothing is booked for this day yet.').waitFor();
  await page.getByLabel('Thing').selectOption({ label: 'Dolly: 2 free' });
  await page.getByRole('button', { name: 'Book it for the day' }).click();
  await page.getByText('Dolly 1', { exact: true }).waitFor();
  await page.getByLabel('Thing').selectOption({ label: 'Can sealer: none free, 1 loan gives way' });
  await page.getByRole('button', { name: 'Book it for the day' }).click();
  await page.getByText(/^1 household has to give way/).waitFor();
  await settle(page);
  expect({ axe: await listViolations(page), small: await smallTargets(page) }).toEqual({
    axe: [],
    small: [],
  });
  await page.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(page)).toBe(0);
  await page.setViewportSize({ width: 390, height: 844 });
  await page.getByRole('button', { name: /^Give it back ?: Dolly 1$/ }).click();
  await page.getByText('Dolly 1', { exact: true }).waitFor({ state: 'detached' });

  const member = (await site.enter('hale@example.org')).page;
  await member.goto(`/s/${shed.storehouseId}/equipment`);
  await member.getByText(/^Can sealer came free: Sun 27 Sept, 10:00/).waitFor();
}, 180_000);
