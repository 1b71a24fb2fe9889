import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { anItem, aShed, book, handOut, type TestItem, type TestShed } from '../support/equipment.ts';
import { listViolations, overflowOf } from './support/checks.ts';
import { drawPicture } from './support/draw-picture.ts';
import { openSite, type Site } from './support/site.ts';

// Tuesday, 1 September 2026, 10:00 in Chicago: the keeper shows what all parts look like, a borrower how it comes back.
let site: Site;
let shed: TestShed;
let sealer: TestItem;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z');
  shed = await aShed(site.app);
  sealer = await anItem(shed);
}, 120_000);
afterAll(() => site.close());

const at = (path: string) => `/s/${shed.storehouseId}/equipment/${sealer.id}${path}`;
const photosOf = async (query = '') =>
  bodyOf(await shed.keeper.caller.get(`${sealer.path}/photos${query}`)).photos;
const choose = (page: Page, buffer: Buffer, which = 0) =>
  page
    .locator('.photos input[type=file]')
    .nth(which)
    .setInputFiles({ name: 'sealer.jpg', mimeType: 'image/jpeg', buffer });

test('the keeper shows a part as it looks when all is well, and a member sees it without taking one', async () => {
  const { page } = await site.enter('keeper@example.org');
  await page.goto(at(''));
  await page.getByRole('heading', { name: 'How it looks' }).waitFor();
  await page.getByLabel('Photos of').selectOption({ label: 'Seam gauge' });
  await choose(page, await drawPicture(page, 1));
  await page.getByRole('img', { name: 'Photo 1 of 1' }).waitFor();
  const gauge = sealer.parts.find(({ name }) => name === 'Seam gauge');
  expect(await photosOf()).toMatchObject([{ partId: gauge?.id, widthPixels: 1600, heightPixels: 1067 }]);
  expect(await listViolations(page)).toEqual([]);
  await page.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(page)).toBe(0);
  const member = (await site.enter('moss@example.org')).page;
  await member.goto(at(''));
  await member.getByLabel('Photos of').selectOption({ label: 'Seam gauge' });
  await member.getByRole('img', { name: 'Photo 1 of 1' }).waitFor();
  expect(await member.getByRole('button', { name: 'Take a photo' }).count()).toBe(0);
}, 180_000);

test('how it comes back is photographed without a signal: it waits, outlives the tab, and is sent once', async () => {
  const booked = await book(shed.hale.caller, sealer, ['2026-09-01T10:30', '2026-09-02T09:00']);
  const { id } = bodyOf(await handOut(shed.hale.caller, shed, bodyOf(booked, 201).id, sealer), 201);
  const { page } = await site.enter('hale@example.org');
  await page.goto(at(`/loans/${id}`));
  await page.getByRole('heading', { name: 'Photos as it came back' }).waitFor();
  await page.getByRole('button', { name: 'Take a photo' }).nth(1).waitFor();
  const picture = await drawPicture(page, 2);
  const context = page.context();
  await context.setOffline(true);
  await choose(page, picture, 1);
  await page.getByText('1 photo waits on this phone').waitFor();
  await page.close();
  await context.setOffline(false);
  const again = await context.newPage();
  await again.clock.setFixedTime(site.app.clock.now);
  await again.goto(`/s/${shed.storehouseId}/household`); // not the page on which it was taken
  await expect.poll(async () => (await photosOf(`?loanId=${id}`)).length).toBe(1);
  await again.getByText('waits on this phone').waitFor({ state: 'detached' });
  await again.goto(at(`/loans/${id}`));
  await again.getByRole('img', { name: 'Photo 1 of 1' }).waitFor();
  await again.getByText('waits on this phone').waitFor({ state: 'detached' });
  expect(await photosOf(`?loanId=${id}`)).toMatchObject([{ loanId: id, moment: 'back' }]);
  expect(await listViolations(again)).toEqual([]);
}, 180_000);
