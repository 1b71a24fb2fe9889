import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { aLandedBuy, type TestLandedBuy } from '../support/landed-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { listViolations, overflowOf } from './support/checks.ts';
import { drawPicture } from './support/draw-picture.ts';
import { openSite, type Site } from './support/site.ts';

let site: Site;
let storehouse: TestStorehouse;
let buy: TestLandedBuy;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z');
  storehouse = await aStorehouse(site.app);
  buy = await aLandedBuy(site.app, storehouse);
});
afterAll(() => site.close());

const torn = () => buy.bags.wheat[5]?.id ?? '';
const photosOf = async () => bodyOf(await storehouse.coordinator.get(`${buy.path}/photos`)).photos;

const choose = (page: Page, buffer: Buffer, mimeType = 'image/jpeg') =>
  page.locator('.photos input[type=file]').setInputFiles({ name: 'torn.jpg', mimeType, buffer });

test('a photo of a torn bag is made smaller on the phone, kept, and seen beside the bag', async () => {
  const { page } = await site.enter('coordinator@example.org');
  await page.goto(`/s/${storehouse.storehouseId}/buys/${buy.buyId}/landing/bags/${torn()}`);
  await page.getByRole('button', { name: 'Take a photo' }).waitFor();
  await choose(page, await drawPicture(page, 1));
  const shown = page.getByRole('img', { name: 'Photo 1 of 1' });
  await shown.waitFor();
  const [photo] = await photosOf();
  expect(photo).toMatchObject({ shows: 'bag', thingId: torn(), widthPixels: 1600, heightPixels: 1067 });
  await shown.evaluate((image: HTMLImageElement) => image.decode());
  expect(await listViolations(page)).toEqual([]);
  await page.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(page)).toBe(0);
}, 180_000);

test('a photo taken without a signal waits on the phone, outlives the tab, and is sent once', async () => {
  const { page } = await site.enter('coordinator@example.org');
  const address = `/s/${storehouse.storehouseId}/buys/${buy.buyId}/landing/bags/${torn()}`;
  await page.goto(address);
  await page.getByRole('button', { name: 'Take a photo' }).waitFor();
  const before = (await photosOf()).length;
  const picture = await drawPicture(page, 2);
  await page.context().setOffline(true);
  await choose(page, picture);
  await page.getByText('1 photo waits on this phone').waitFor();
  const context = page.context();
  await page.close();
  await context.setOffline(false);
  const again = await context.newPage();
  await again.goto(address);
  await again.getByRole('img', { name: `Photo ${before + 1} of ${before + 1}` }).waitFor();
  await again.getByText('waits on this phone').waitFor({ state: 'detached' });
  expect(await photosOf()).toHaveLength(before + 1);
}, 180_000);

test('a file that is no picture is refused in words, and nothing is sent', async () => {
  const { page } = await site.enter('coordinator@example.org');
  await page.goto(`/s/${storehouse.storehouseId}/buys/${buy.buyId}/landing/bags/${torn()}`);
  await page.getByRole('button', { name: 'Take a photo' }).waitFor();
  const before = await photosOf();
  await choose(page, Buffer.from('no picture at all'));
  await page.getByText('This phone can’t read that file as a picture.').waitFor();
  expect(await photosOf()).toEqual(before);
}, 180_000);
