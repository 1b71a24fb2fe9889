import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { anItem, aShed, book, bringBack, type TestItem, type TestShed } from '../support/equipment.ts';
import { findFaults, NO_FAULTS } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { openSite, type Site } from './support/site.ts';

// Tuesday, 1 September 2026, 10:00 in Chicago, at a shed door without a signal.
let site: Site;
let shed: TestShed;
let sealer: TestItem;
let page: Page;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z');
  shed = await aShed(site.app);
  sealer = await anItem(shed);
  page = (await site.enter('hale@example.org')).page;
}, 120_000);
afterAll(() => site.close());

const at = (path = '') => `/s/${shed.storehouseId}${path}`;
const lose = (isLost: boolean) => site.loseSignal(page, isLost);
const loansOf = async () =>
  bodyOf(await shed.keeper.caller.get(`${sealer.path}/loans`)).loans as {
    id: string;
    household: { name: string };
    outAt: string;
    inAt: string | null;
    parts: { name: string; outPieces: number; inPieces: number | null }[];
  }[];
/** The tab is closed without a signal, and another one opened an hour later with one. */
async function openLater(path: string) {
  page = await site.openLater(page, 60, at(path));
}
const SOON = { timeout: 40_000 };

test('a thing goes out without a signal: it waits on the phone, outlives the tab, and is sent once from any page', async () => {
  bodyOf(await book(shed.hale.caller, sealer, ['2026-09-01T10:30', '2026-09-02T09:00']), 201);
  await page.goto(at('/equipment'));
  await page.getByRole('link', { name: 'Take it' }).waitFor();
  await settle(page); // the pages of the shed door are read ahead
  await lose(true);
  await page.getByRole('link', { name: 'Take it' }).click();
  await page.getByRole('heading', { name: 'Can sealer goes out' }).waitFor();
  await page.getByLabel('Hex key, of 2').fill('1');
  await page.getByRole('button', { name: 'Hand it out' }).click();
  await page.getByRole('heading', { name: 'It is written down on this phone.' }).waitFor();
  await page.getByText('1 thing waits on this phone').waitFor();
  expect(await findFaults(page)).toEqual(NO_FAULTS);
  expect(await loansOf()).toEqual([]);

  await openLater('/household'); // not the page at which it was written
  await expect.poll(async () => (await loansOf()).length, SOON).toBe(1);
  await page.getByText('1 thing waits on this phone').waitFor({ state: 'detached' });
  const [loan] = await loansOf();
  expect(loan).toMatchObject({ household: { name: 'Hale' }, outAt: '2026-09-01T15:00:00.000Z' });
  expect(loan?.parts.find(({ name }) => name === 'Hex key')?.outPieces).toBe(1);
  await page.goto(at('/equipment'));
  await page.getByRole('link', { name: 'Bring it back' }).waitFor();
  expect(await loansOf()).toHaveLength(1);
}, 180_000);

test('it is handed straight on without a signal, and both loans stand once', async () => {
  site.app.clock.now = new Date('2026-08-31T12:00:00Z'); // the day before, so that the keeper could have said no
  const times = ['2026-09-02T09:00', '2026-09-02T18:00'] as const;
  const { id, version } = bodyOf(await book(shed.moss.caller, sealer, times, { byRelay: true }), 201);
  bodyOf(
    await shed.hale.caller.post(`${shed.path}/bookings/${id}/relay-answer`, { version, agrees: true }),
    200,
  );
  site.app.clock.now = new Date('2026-09-02T14:00:00Z');
  const other = await site.enter('moss@example.org');
  await page.close();
  page = other.page;
  await page.goto(at('/equipment'));
  await page.getByRole('link', { name: 'Take it' }).waitFor();
  await settle(page);
  await lose(true);
  await page.getByRole('link', { name: 'Take it' }).click();
  await page.getByLabel('Hex key, of 2').fill('1');
  await page.getByLabel('Brought by (name)').fill('Hale Person');
  await page.getByLabel('It is cleaned, and nothing is broken').check();
  await page.getByRole('button', { name: 'Hand it on' }).click();
  await page.getByText('Can sealer was handed on to Moss Person').waitFor();

  await openLater('');
  await expect.poll(async () => (await loansOf()).length, SOON).toBe(2);
  await page.getByText('1 thing waits on this phone').waitFor({ state: 'detached' });
  const loans = await loansOf();
  const handedAt = '2026-09-02T14:00:00.000Z';
  expect(loans.find(({ household }) => household.name === 'Hale')?.inAt).toBe(handedAt);
  expect(loans.find(({ household }) => household.name === 'Moss')?.outAt).toBe(handedAt);
}, 180_000);

test('what the keeper took back meanwhile is told to whoever wrote it down too, and nothing is doubled', async () => {
  const open = (await loansOf()).find(({ inAt }) => inAt === null);
  await page.goto(at('/equipment'));
  await page.getByRole('link', { name: 'Bring it back' }).waitFor();
  await settle(page);
  await lose(true);
  await page.getByRole('link', { name: 'Bring it back' }).click();
  await page.getByLabel('Note').fill('the belt slips');
  await page.getByRole('button', { name: 'Take it back' }).click();
  await page.getByText('1 thing waits on this phone').waitFor();
  const parts = { parts: open?.parts.map(({ outPieces }, at) => partOf(at, outPieces)) };
  bodyOf(await bringBack(shed.keeper.caller, shed, open?.id ?? '', sealer, parts), 201);

  await openLater('/equipment');
  await page.getByText('1 thing written down on this phone was not taken.').waitFor();
  await page.getByText('This is not out.').waitFor();
  await settle(page);
  expect(await findFaults(page)).toEqual(NO_FAULTS);
  await page.reload();
  await page.getByText('1 thing written down on this phone was not taken.').waitFor();
  await page.getByRole('button', { name: 'Throw it away' }).click();
  await page.getByText('was not taken').waitFor({ state: 'detached' });
  expect((await loansOf()).filter(({ inAt }) => inAt !== null)).toHaveLength(2);
}, 180_000);

const partOf = (at: number, pieces: number) => ({ partId: sealer.parts[at]?.id, pieces });
