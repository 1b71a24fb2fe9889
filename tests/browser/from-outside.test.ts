import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { anOrderedBuy } from '../support/fixed-buy.ts';
import { aHall, aPackingSession, bringWheat, cansOf, type TestHall } from '../support/packing.ts';
import { aSeamer } from '../support/seam.ts';
import { aSupply } from '../support/settlement.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { findFaults, NO_FAULTS } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { openSite, type Site } from './support/site.ts';

// Tuesday, 1 September 2026, 10:00 in Chicago: a hall, a shop and a yard without a signal.
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
  const wishes = [cansOf(hall, { containers: 6, gramsEach: 2000, treatment: 'none' })];
  bodyOf(await hall.buy.households.Dell.caller.put(`${day}/wishes`, { wishes }));
  bodyOf(await hall.buy.households.Dell.caller.put(`${day}/hand`, { isComing: true }));
  bodyOf(await hall.lead.caller.post(`${day}/start`));
  await bringWheat(hall, day, 'Dell');
  page = (await site.enter('pat-corran@example.org')).page;
}, 120_000);
afterAll(() => site.close());

const at = (path = '') => `/s/${storehouse.storehouseId}${path}`;
const ofDay = (path: string) => at(`/packing/${day.split('/').at(-1)}${path}`);
const logNow = async () => bodyOf(await hall.lead.caller.get(`${day}/log`));
const lose = (isLost: boolean) => site.loseSignal(page, isLost);
/** The tab is closed without a signal, and another one opened later with one. */
async function openLater(path: string) {
  page = await site.openLater(page, 10, at(path));
}
const SOON = { timeout: 40_000 };
const HOLD = { reason: 'It smells of diesel.' };

test('what was written down at the line is sent once from any page that is opened later', async () => {
  await page.goto(ofDay(''));
  await settle(page);
  await page.getByRole('link', { name: 'Pour log' }).click();
  await page.getByRole('button', { name: 'Container 1: log 2,000 g' }).waitFor();
  await settle(page);
  await lose(true);
  await page.getByRole('button', { name: 'Container 1: log 2,000 g' }).click();
  await page.getByText('Something was spilled or sampled').click();
  await page.getByLabel('How much was that').fill('40 g');
  await page.getByRole('button', { name: 'Spilled', exact: true }).click();
  await page.getByText('2 things wait on this phone').waitFor();
  await page.getByRole('link', { name: 'The day', exact: true }).click(); // still without a signal
  await page.getByText('2 things wait on this phone').waitFor();
  await page.getByText('40 g spilled or sampled').waitFor();
  expect(await findFaults(page)).toEqual(NO_FAULTS);
  expect((await logNow()).pours).toEqual([]);

  await openLater('/household');
  await expect.poll(async () => (await logNow()).pours.length, SOON).toBe(1);
  await page.getByText(/wait(s)? on this phone/).waitFor({ state: 'detached' });
  expect((await logNow()).mass).toMatchObject({ inContainersGrams: 2000, spilledGrams: 40 });
  await page.reload();
  await settle(page);
  expect((await logNow()).mass).toMatchObject({ inContainersGrams: 2000, spilledGrams: 40 });
}, 180_000);

test('a pour that waits is taken back before it was ever sent, and one of the book while there is no signal', async () => {
  await page.goto(ofDay('/log'));
  await page.getByRole('button', { name: 'Take 1 back' }).waitFor();
  await settle(page);
  await lose(true);
  await page.getByRole('button', { name: 'Container 2: log 2,000 g' }).click();
  await page.getByRole('button', { name: 'Container 3: log 2,000 g' }).click();
  await page.getByRole('button', { name: 'Take the last back' }).click();
  await page.getByRole('button', { name: 'Take the last back' }).click();
  await page.getByRole('button', { name: 'Take 1 back' }).click();
  await page.getByRole('button', { name: 'Container 1: log 2,000 g' }).click();
  await page.getByText('6 things wait on this phone').waitFor();
  expect(await findFaults(page)).toEqual(NO_FAULTS);

  await openLater('/household');
  await page.getByText(/things? waits? on this phone/).waitFor({ state: 'detached' });
  const isBack = async () => (await logNow()).pours.map(({ isUndone }: { isUndone: boolean }) => isUndone);
  await expect.poll(isBack, SOON).toEqual([true, true, true, false]);
  const { mass } = await logNow();
  expect(mass).toMatchObject({ spilledGrams: 40, inContainersGrams: 2000 });
}, 180_000);

test('a refused pour, loss and weigh-back are sent again from any page once the book would take them', async () => {
  await page.goto(ofDay('/log'));
  await page.getByRole('button', { name: 'Container 2: log 2,000 g' }).waitFor();
  await settle(page);
  await lose(true);
  await page.getByRole('button', { name: 'Container 2: log 2,000 g' }).click();
  await page.getByText('Something was spilled or sampled').click();
  await page.getByLabel('How much was that').fill('25 g');
  await page.getByRole('button', { name: 'Sampled', exact: true }).click();
  await page.getByText('2 things wait on this phone').waitFor();
  const bag = `${storehouse.path}/bags/${hall.wheat.Dell.bagId}`;
  const { id: hold } = bodyOf(await hall.lead.caller.post(`${bag}/holds`, HOLD), 201);

  await openLater('/household');
  await page.getByText('2 things were not taken by the book.').waitFor();
  await settle(page);
  expect(await findFaults(page)).toEqual(NO_FAULTS);
  await page.getByRole('button', { name: 'Send it again' }).first().click();
  await page.getByText('2 things were not taken by the book.').waitFor();
  expect((await logNow()).mass.inContainersGrams).toBe(2000);
  const held = `${storehouse.path}/holds/${hold}`;
  bodyOf(await hall.lead.caller.post(`${held}/release-request`, { finding: 'Aired.' }));
  bodyOf(await storehouse.coordinator.post(`${held}/release`));
  await page.getByRole('button', { name: 'Send it again' }).first().click();
  await page.getByText('1 thing was not taken by the book.').waitFor();
  await page.getByRole('button', { name: 'Send it again' }).click();
  await expect.poll(async () => (await logNow()).mass.sampledGrams, SOON).toBe(25);
  await page.getByText('not taken by the book').waitFor({ state: 'detached' });
  const { pours, mass } = await logNow();
  expect(pours.filter(({ isUndone }: { isUndone: boolean }) => !isUndone)).toHaveLength(2);
  expect(mass).toMatchObject({ inContainersGrams: 4000, spilledGrams: 40, sampledGrams: 25 });
}, 180_000);

test('what was bought in a shop is sent once from any page', async () => {
  const can = {
    ...{ name: 'No. 10 cans', kind: 'container', containerKindId: hall.shelves.kinds['can-no-10'] },
    ...{ packPieces: 6, packMinorUnits: 798 },
  };
  const supplyId = await aSupply(storehouse, hall, can, { pieces: 1, minorUnits: 133 });
  const onHand = async () => {
    const { supplies } = bodyOf(await hall.lead.caller.get(`${storehouse.path}/supplies`));
    return supplies.find(({ id }: { id: string }) => id === supplyId).onHandPieces;
  };
  await page.goto(ofDay('/shopping'));
  await page.getByLabel(/No. 10 cans/).waitFor();
  await settle(page);
  await lose(true);
  await page.getByLabel(/No. 10 cans/).check();
  await page.getByLabel('First-aid box and a step stool').check();
  await page.getByRole('button', { name: 'Write down what was bought (1)' }).click();
  await page.getByRole('button', { name: 'Write it down' }).click();
  await page.getByText('A purchase waits on this phone for a signal.').waitFor();
  expect(await page.getByRole('button', { name: 'Throw it away' }).count()).toBe(0); // it may be on its way
  const before = await onHand();

  await openLater('/household');
  await expect.poll(onHand, SOON).toBeGreaterThan(before);
  const after = await onHand();
  await page.getByText('A purchase waits').waitFor({ state: 'detached' });
  await page.goto(ofDay('/shopping'));
  await settle(page);
  expect(await page.getByLabel('First-aid box and a step stool').isChecked()).toBe(true);
  expect(await onHand()).toBe(after);
}, 180_000);

test('what was written down at a lorry is sent once, in its order, from any page', async () => {
  const { buyId, path } = await anOrderedBuy(site.app, storehouse, {
    ...{ name: 'Second grain buy', households: hall.buy.households },
  });
  const lorries = async () => bodyOf(await storehouse.coordinator.get(`${path}/landing`)).deliveries.length;
  await page.goto(at(`/buys/${buyId}/landing`));
  await page.getByRole('button', { name: 'Start with this lorry' }).waitFor();
  await settle(page);
  await lose(true);
  await page.getByRole('button', { name: 'Start with this lorry' }).click();
  for (const counted of await page.locator('.counting input').all()) await counted.fill('3');
  await page.getByRole('button', { name: 'Write down the counts' }).click();
  await page.getByText('No signal. 2 things wait to be sent').waitFor();

  await openLater('/household');
  await expect.poll(lorries, SOON).toBe(1);
  await page.getByText(/at the lorry wait on this phone/).waitFor({ state: 'detached' });
  const { lines } = bodyOf(await storehouse.coordinator.get(`${path}/landing`));
  expect(lines.every(({ countedBags }: { countedBags: number | null }) => countedBags !== null)).toBe(true);
  await page.reload();
  await settle(page);
  expect(await lorries()).toBe(1);
}, 180_000);

test('who came is ticked without a signal, and a failed seal stops its machine on the phone at once', async () => {
  const isHere = () => page.locator('ul.hands').getByRole('button', { name: 'Is here' });
  const seamer = await aSeamer(storehouse, hall);
  bodyOf(await seamer.check(day, { occasion: 'first' }), 201);
  await page.goto(ofDay('/plan'));
  await isHere().waitFor();
  await settle(page);
  await page.goto(ofDay('/log'));
  await page.getByRole('button', { name: 'Container 3: log 2,000 g' }).waitFor();
  await page.getByRole('link', { name: 'Seams and seals' }).click();
  await page.getByRole('heading', { name: 'Check a seal' }).waitFor();
  await settle(page);
  await lose(true);
  await page.getByLabel('How').selectOption('visual');
  await page.getByRole('button', { name: 'Write it down as failed' }).click();
  await page.getByRole('heading', { name: 'Seamer is out.' }).waitFor();
  await page.getByRole('link', { name: 'Pour log' }).click();
  await page.getByText(/^Seamer out since .* Close nothing with it/).waitFor();
  expect(await findFaults(page)).toEqual(NO_FAULTS);
  await page.goto(ofDay('/plan'));
  await isHere().click();
  await page.getByText(/^Dell Person came/).waitFor();
  expect(await isHere().getAttribute('aria-pressed')).toBe('true');

  await openLater('/household');
  const checks = async () => bodyOf(await hall.lead.caller.get(`${day}/seals`)).checks;
  await expect.poll(async () => (await checks()).length, SOON).toBe(2);
  const hands = async () => bodyOf(await hall.lead.caller.get(`${day}/plan`)).crew.hands;
  await expect
    .poll(async () => (await hands()).map(({ state }: { state: string }) => state), SOON)
    .toContain('came');
  await page.reload();
  await settle(page);
  expect(await checks()).toHaveLength(2);
}, 180_000);
