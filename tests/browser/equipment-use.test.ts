import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import {
  anItem,
  aShed,
  book,
  bringBack,
  handOut,
  type TestItem,
  type TestShed,
} from '../support/equipment.ts';
import { listViolations, overflowOf } from './support/checks.ts';
import { openSite, type Site } from './support/site.ts';

// The dolly was out for a day and came back in time; the sealer is out and late.
let site: Site;
let shed: TestShed;
let sealer: TestItem;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z');
  shed = await aShed(site.app);
  sealer = await anItem(shed);
  const dolly = await anItem(shed, { name: 'Dolly' }, []);
  const lend = async (item: TestItem, until: string) => {
    const { id } = bodyOf(await book(shed.hale.caller, item, ['2026-09-01T10:30', until]), 201);
    return bodyOf(await handOut(shed.hale.caller, shed, id, item), 201).id as string;
  };
  await lend(sealer, '2026-09-01T12:00');
  const loan = await lend(dolly, '2026-09-02T12:00');
  site.app.clock.now = new Date('2026-09-02T15:00:00Z');
  bodyOf(await bringBack(shed.hale.caller, shed, loan, dolly, { uses: 4 }), 201);
}, 120_000);
afterAll(() => site.close());

test('the keeper goes from what is late on the home to the desk, and sorts a year of use', async () => {
  const { page } = await site.enter('keeper@example.org');
  const root = `/s/${shed.storehouseId}`;
  await page.goto(root);
  await page.getByRole('link', { name: /Not back yet: Can sealer 1\./ }).click();
  await page.getByRole('link', { name: 'A year of use' }).click();
  await page.getByRole('heading', { name: 'A year of use' }).waitFor();
  const names = () => page.getByRole('rowheader').allInnerTexts();
  expect(await names()).toEqual(['Can sealer', 'Dolly']);
  await page.getByLabel('Sort by').selectOption({ label: 'highest cost per use' });
  await expect.poll(names).toEqual(['Dolly', 'Can sealer']); // no use has no cost, and stands last
  await page.getByLabel('Sort by').selectOption({ label: 'most often late' });
  await expect.poll(names).toEqual(['Can sealer', 'Dolly']);
  expect((await page.getByRole('columnheader').allInnerTexts()).slice(0, 2)).toEqual(['Thing', 'Late']);
  const late = page.getByRole('row', { name: /Can sealer/ });
  expect(await late.textContent()).toContain('1 of 1');
  expect(await listViolations(page)).toEqual([]);
  await page.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(page)).toBe(0);
  await page.goto(`${root}/equipment/${sealer.id}`);
  await page.getByRole('heading', { name: 'A year of use' }).waitFor();
  await page.getByText('100.0 % (1 of 1)').waitFor();
  const member = (await site.enter('moss@example.org')).page;
  await member.goto(`${root}/equipment/${sealer.id}`);
  await member.getByRole('heading', { name: 'How it looks' }).waitFor();
  expect(await member.getByRole('heading', { name: 'A year of use' }).count()).toBe(0);
}, 180_000);
