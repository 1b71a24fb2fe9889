import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { aHall, aPackingSession, bringWheat, cansOf, type TestHall } from '../support/packing.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { listViolations, overflowOf, smallTargets } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { openSite, type Site } from './support/site.ts';

let site: Site;
let storehouse: TestStorehouse;
let hall: TestHall;
let day: string;
let lead: Page;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z');
  storehouse = await aStorehouse(site.app);
  hall = await aHall(site.app, storehouse);
  day = await aPackingSession(storehouse, hall, { name: 'Autumn canning' });
  const { caller } = hall.buy.households.Dell;
  bodyOf(await caller.put(`${day}/wishes`, { wishes: [cansOf(hall, { containers: 4 })] }));
  bodyOf(await hall.lead.caller.post(`${day}/start`));
  await bringWheat(hall, day, 'Dell');
  lead = (await site.enter('pat-corran@example.org')).page;
}, 180_000);
afterAll(() => site.close());

const webAt = (path: string) =>
  day.replace('/api/storehouses', '/s').replace('/packing-sessions/', '/packing/') + path;

test('what is weighed back says how much of it dried, without a signal too, and the mass names it', async () => {
  await lead.goto(webAt('/log'));
  await lead.locator('summary', { hasText: 'Weigh back what is left' }).click();
  // 13,608 g at 12 % are 13,455 g at 11 %: 153 g dried (13,608 × 0.88 / 0.89 = 13,455.1).
  await lead.getByLabel('Left in the bag').fill('13443');
  await lead.getByText('It may have dried, or grown damper').click();
  await lead.getByLabel('Moisture then (%)').fill('12');
  await lead.getByLabel('Moisture now (%)').fill('55');
  await lead.getByText('Write a percentage from 0 to 50, such as 12.5.').waitFor();
  expect(await lead.getByRole('button', { name: 'Keep this weight' }).isDisabled()).toBe(true);
  await lead.getByLabel('Moisture now (%)').fill('11');
  await lead.getByText('153 g have dried away; 12 g stay unexplained.').waitFor();
  await settle(lead);
  expect([await listViolations(lead), await smallTargets(lead)]).toEqual([[], []]);
  await lead.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(lead)).toBe(0);
  await lead.setViewportSize({ width: 390, height: 844 });
  await lead.context().setOffline(true);
  await lead.getByRole('button', { name: 'Keep this weight' }).click();
  await lead.getByText(/^Weighed back: .+ 13,443 g left/).waitFor();
  await lead.context().setOffline(false);
  await lead.getByText('12 g are missing.').waitFor();
  await lead.getByText('Dried away', { exact: true }).waitFor();
  const { mass, bags } = bodyOf(await hall.lead.caller.get(`${day}/log`));
  expect(mass).toMatchObject({ leftInBagsGrams: 13_443, moistureGrams: 153, unaccountedGrams: 12 });
  expect(bags).toMatchObject([{ wasTenths: 120, isTenths: 110 }]);
}, 120_000);
