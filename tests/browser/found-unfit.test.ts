import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { commonCans } from '../support/giving.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { listViolations, overflowOf } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { openSite, type Site } from './support/site.ts';

let site: Site;
let storehouse: TestStorehouse;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z');
  storehouse = await aStorehouse(site.app);
  const [can] = await commonCans(storehouse, [
    { food: 'rice-white-long', grams: 2_400, count: 1, stored: '2026-01' },
  ]);
  const found = { findings: ['pitting-or-seam-rust'], outcome: 'discard', how: 'outside', kernels: null };
  bodyOf(
    await storehouse.coordinator.post(`${storehouse.path}/containers/${can?.id}/inspections`, {
      ...{ ...found, note: '', isMovedOut: false },
    }),
    201,
  );
}, 120_000);
afterAll(() => site.close());

test('common stock that a look found unfit is named where its queue leaves it out, and leads to what was found', async () => {
  const { page } = await site.enter('coordinator@example.org', { width: 320 });
  await page.goto(`/s/${storehouse.storehouseId}/giving/risk`);
  await page.getByRole('heading', { name: 'Found unfit: not in the queue' }).waitFor();
  await settle(page);
  expect(await listViolations(page)).toEqual([]);
  expect(await overflowOf(page)).toBe(0);
  await page.getByRole('link', { name: /^Long-grain white rice|^White rice/ }).click();
  await page.getByRole('heading', { name: 'Earlier looks' }).waitFor();
  await page.getByText('Rust in pits or on a seam').first().waitFor();
}, 120_000);
