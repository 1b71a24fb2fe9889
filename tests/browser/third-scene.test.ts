import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { aPantryWish } from '../support/giving.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { stockOf } from '../support/kitchen.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { listViolations } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { openSite, type Site } from './support/site.ts';

const CANS = 6;
const CAN_GRAMS = 2400;
const DAY = 86_400_000;

let site: Site;
let storehouse: TestStorehouse;
let cans: { id: string; code: string }[];
let garrowHouse: TestHousehold;
// Each their own browser: who has too much, who lacks it, who does not, and who drives to the pantry.
let garrow: Page;
let dell: Page;
let birchall: Page;
let coordinator: Page;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z'); // Tuesday, 10:00 in Chicago
  storehouse = await aStorehouse(site.app);
  const { path, coordinator: caller } = storehouse;
  garrowHouse = await aHousehold(site.app, storehouse, 'Garrow');
  const dellHouse = await aHousehold(site.app, storehouse, 'Dell');
  // Three are asked at a time: Dell, who has a mouth and no wheat for it, and the two lower seats of the others.
  for (const name of ['Corran', 'Birchall']) await aHousehold(site.app, storehouse, name);
  bodyOf(
    await dellHouse.caller.post(`${path}/households/${dellHouse.householdId}/eaters`, {
      ...{ name: 'Dora', birthOn: '1985-03-02', sex: 'female' },
    }),
    201,
  );
  const stock = await stockOf(storehouse, garrowHouse);
  cans = await stock.bringIn({ count: CANS, gramsEach: CAN_GRAMS, treatment: 'oxygen-absorber' });
  for (const wish of [
    aPantryWish('Mill Lane pantry'),
    aPantryWish('Harbour pantry', { acceptsHomePacked: false, acceptsReducedOxygen: null }),
  ])
    bodyOf(await caller.post(`${path}/pantries`, wish), 201);
  const enter = async (email: string, width = 390) => (await site.enter(email, { width })).page;
  garrow = await enter('garrow@example.org');
  dell = await enter('dell@example.org');
  birchall = await enter('birchall@example.org');
  coordinator = await enter('coordinator@example.org', 1280);
}, 120_000);
afterAll(() => site.close());

const at = (path: string) => `/s/${storehouse.storehouseId}${path}`;
const canAt = (position: number) => cans[position] ?? { id: '', code: '' };

test('six cans of wheat, from the warmth of the garage to the receipt of a pantry, and every gram at the end', async () => {
  await loggerReadsTheGarage();
  await cansStandThere();
  await oneGoesToTheKitchen();
  await oneIsRustedThrough();
  await whatIsUnfitIsNamed();
  await fourAreOffered();
  await dellIsAskedFirstAndTakesOne();
  await theRestIsMatched();
  await twoStayAtThePantry();
  await everyGramIsThere();
}, 180_000);

/** A reading a day for the year before, at 90 °F, and one line that no thermometer could have meant. */
async function loggerReadsTheGarage() {
  await garrow.goto(at('/places/new'));
  await garrow.getByLabel('What you call it').fill('Garage');
  await garrow.getByLabel('Kind of place').selectOption('garage');
  await garrow.getByRole('button', { name: 'Save' }).click();
  await garrow.getByText('Nobody has read this place').waitFor();
  await garrow.getByText('Take in a logger’s file').click();
  const days = Array.from({ length: 366 }, (_, day) => {
    const [year, month, date] = new Date(Date.parse('2025-08-31') + day * DAY)
      .toISOString()
      .slice(0, 10)
      .split('-');
    return `${month}/${date}/${year} 12:00,90`;
  });
  const text = ['time,°F', ...days, '09/01/2026 06:00,900', ''].join('\n');
  await garrow.getByLabel('The file (CSV)').setInputFiles({
    ...{ name: 'garage.csv', mimeType: 'text/csv', buffer: Buffer.from(text) },
  });
  await garrow.getByText(/^366 good readings from 31 Aug 2025 to 31 Aug 2026/).waitFor();
  await garrow.getByText('no place is that cold or warm').waitFor();
  await garrow.getByRole('button', { name: 'Take in the good readings' }).click();
  await garrow.getByText('Food ages here as it would at 90 °F all year.').waitFor();
}

/** They stood there since they were packed: 31 days at 20 °F above 70 °F use up four times as many. */
async function cansStandThere() {
  await garrow.goto(at(`/shelf/${canAt(0).id}`));
  await garrow.getByText('Where it stood, or how warm it was there, is not known').waitFor();
  await garrow.getByLabel('Place', { exact: true }).selectOption({ label: 'Garage' });
  expect(await garrow.getByLabel('Since').inputValue()).toBe('2026-08-01');
  await garrow.getByLabel('The 5 others of this lot too').check();
  await garrow.getByRole('button', { name: 'It stands there' }).click();
  const stay = garrow.getByRole('row', { name: /^Garage/ });
  await stay.waitFor();
  await stay.getByText('since 1 Aug 2026, as 90 °F').waitFor();
  expect(await stay.getByRole('cell').allTextContents()).toEqual(['31', '124']);
  await garrow.getByText('Sealed can without oxygen.').waitFor();
  await garrow.getByText(/^It stood warmer than 70 °F/).waitFor();
  await garrow.getByText(/^It keeps about .* where it stands: eat it first in \d{4}\.$/).waitFor();
  await settle(garrow);
  expect(await listViolations(garrow)).toEqual([]);
}

async function oneGoesToTheKitchen() {
  await garrow.goto(at('/rotation'));
  await garrow
    .getByRole('button', { name: /^Take .* to the kitchen$/ })
    .first()
    .click();
  await garrow.getByText(/are in the kitchen\./).waitFor();
  await garrow.getByRole('heading', { name: 'In the kitchen' }).waitFor();
  const left = await stillFull();
  cans = cans.toSorted((a, b) => Number(left.has(a.id)) - Number(left.has(b.id)));
}

async function stillFull(): Promise<Set<string>> {
  const { containers } = bodyOf(await garrowHouse.caller.get(`${storehouse.path}/containers?limit=100`)) as {
    containers: { id: string; grams: number }[];
  };
  return new Set(containers.filter(({ grams }) => grams > 0).map(({ id }) => id));
}

/** The rules leave nothing but the bin, and its neighbours are to be looked at. */
async function oneIsRustedThrough() {
  await garrow.goto(at(`/inspections/${canAt(1).id}`));
  await garrow.getByRole('button', { name: 'From outside, still shut' }).click();
  await garrow.getByRole('checkbox', { name: 'Rust in pits or on a seam' }).check();
  await garrow.getByRole('button', { name: 'Go on with 1 finding' }).click();
  await garrow.getByText('Throw it away').first().waitFor();
  expect(await garrow.getByLabel(/^What becomes of it/).count()).toBe(0);
  await garrow.getByRole('checkbox', { name: /^Book all .* out of it now$/ }).check();
  await garrow.getByRole('button', { name: 'Write it down' }).click();
  await garrow.getByText('4 other containers are on watch now.').waitFor();
}

/** It leaves the queue, and not without a word: another that a look found unfit leads to its own page. */
async function whatIsUnfitIsNamed() {
  const stock = await stockOf(storehouse, garrowHouse);
  const rusty = await stock.bringCan({ food: 'oats-rolled', gramsEach: 1_000 });
  const found = { findings: ['pitting-or-seam-rust'], outcome: 'discard', how: 'outside', kernels: null };
  bodyOf(
    await garrowHouse.caller.post(`${storehouse.path}/containers/${rusty.id}/inspections`, {
      ...{ ...found, note: '', isMovedOut: false },
    }),
    201,
  );
  await garrow.goto(at('/rotation'));
  await garrow.getByRole('heading', { name: 'Found unfit: not in the queue' }).waitFor();
  await settle(garrow);
  expect(await listViolations(garrow)).toEqual([]);
  await garrow.getByRole('link', { name: /^Rolled oats/ }).click();
  await garrow.getByText('Nobody is to eat it: what the last look found does not allow it.').waitFor();
  bodyOf(
    await garrowHouse.caller.post(`${storehouse.path}/containers/${rusty.id}/uses`, {
      ...{ grams: 1_000, to: 'discarded', note: '' },
    }),
    201,
  );
}

async function fourAreOffered() {
  await garrow.goto(at(`/shelf/${canAt(2).id}/offer`));
  for (const { code } of cans.slice(3))
    await garrow.getByRole('checkbox', { name: new RegExp(code.slice(0, 3)) }).check();
  await garrow.getByLabel('It closes in').selectOption({ label: 'three days' });
  await garrow.getByLabel('Each turn lasts').selectOption({ label: 'a day' });
  await garrow.getByLabel('If nobody takes it, a pantry may have it').check();
  await garrow.getByRole('button', { name: 'Offer it' }).click();
  await garrow.getByText(/^4 still offered until/).waitFor();
}

async function dellIsAskedFirstAndTakesOne() {
  const offerPath = new URL(garrow.url()).pathname;
  await birchall.goto(at('/offers'));
  await birchall.getByRole('heading', { name: 'Nothing is offered to you now.' }).waitFor();
  await dell.goto(at('/offers'));
  await dell.locator(`a[href="${offerPath}"]`).click();
  await dell.getByText('From a member').waitFor();
  for (const { code } of cans.slice(3))
    await dell.getByRole('checkbox', { name: new RegExp(code.slice(0, 3)) }).uncheck();
  await dell.getByText('You take one container as a gift.').waitFor();
  await dell.getByRole('button', { name: 'Take it' }).click();
  await dell.getByText('You took it. Agree with whoever gave it when you fetch it.').waitFor();
  await garrow.reload();
  await garrow.getByText('Dell took it').waitFor();
}

/** Nobody else takes any; the one pantry takes nothing that was packed at home, and the matching says so. */
async function theRestIsMatched() {
  site.app.clock.now = new Date(site.app.clock.now.getTime() + 5 * DAY); // Sunday, and the offer is over
  for (const page of [garrow, coordinator]) await page.clock.setFixedTime(site.app.clock.now);
  await garrow.reload();
  await garrow.getByText('Nobody took it; a pantry may have it now.').waitFor();
  await coordinator.goto(at('/giving/match'));
  await coordinator.getByRole('button', { name: 'Work it out' }).click();
  await coordinator.getByRole('heading', { name: '15.9 lb are saved on 1 trip.' }).waitFor();
  await coordinator
    .getByText(/packed at home: not taken/)
    .first()
    .waitFor();
  await settle(coordinator);
  expect(await listViolations(coordinator)).toEqual([]);
  await coordinator.getByLabel('Who drives').fill('Ruth');
  await coordinator.getByRole('button', { name: 'Sign this trip out' }).click();
  await coordinator.getByRole('heading', { name: 'Manifest 1' }).waitFor();
  await coordinator.getByText(/^To Mill Lane pantry on 8 Sept? 2026; Ruth drives\.$/).waitFor();
}

/** One comes back with its label gone, and stands in Garrow's garage again. */
async function twoStayAtThePantry() {
  site.app.clock.now = new Date('2026-09-08T18:00:00Z');
  await coordinator.clock.setFixedTime(site.app.clock.now);
  await coordinator.reload();
  const [code = ''] = (
    (await coordinator
      .getByText(/ came back$/)
      .last()
      .textContent()) ?? ''
  ).split(' ');
  await coordinator.getByText('Find it by its label').click();
  const typed = coordinator.getByLabel('Code on the label');
  await typed.fill(`${code.slice(0, -1)}${code.endsWith('A') ? 'B' : 'A'}`);
  await coordinator.getByText(/a sign was misread, or two were swapped/).waitFor();
  await typed.fill(code);
  await coordinator.getByRole('button', { name: 'Find it' }).click();
  await coordinator.getByText('is ticked as come back. Say why.').waitFor();
  expect(await coordinator.getByRole('checkbox', { name: `${code} came back` }).isChecked()).toBe(true);
  await coordinator.getByLabel(/^Why .* came back$/).fill('its label is gone');
  await coordinator.getByLabel('Who took it in, by duty').fill('intake desk');
  await coordinator.getByText('10.6 lb leave the book as given; 5.3 lb stand in the store again.').waitFor();
  await coordinator.getByRole('button', { name: 'Write the receipt' }).click();
  await coordinator.getByText(/^Received on 8 Sept? 2026 by intake desk\.$/).waitFor();
  await coordinator.getByText('came back: its label is gone').waitFor();
  await coordinator.goto(at('/giving/year'));
  await coordinator.getByText('10.6 lb, about 8 meals.').waitFor(); // 4,800 g at 544 g a meal
}

/** Of the lot's six cans: one in the kitchen, one thrown away, one Dell's, two given, and one on Garrow's shelf. */
async function everyGramIsThere() {
  const rows = await site.app.admin<{ kind: string; household: string | null; grams: number }[]>`
    select a.vessel_kind as kind, h.name as household, sum(a.inflow - a.outflow)::int as grams
    from book.account a left join book.household h on h.household_id = a.owner_id
    where a.unit_id = (select lot_id from book.container where container_id = ${canAt(0).id})
    group by 1, 2 having sum(a.inflow - a.outflow) <> 0 order by 1, 2`;
  expect(rows.filter(({ kind }) => kind !== 'supplier')).toEqual([
    { kind: 'container', household: 'Dell', grams: CAN_GRAMS },
    { kind: 'container', household: 'Garrow', grams: CAN_GRAMS },
    { kind: 'discarded', household: 'Garrow', grams: CAN_GRAMS },
    { kind: 'given', household: 'Garrow', grams: 2 * CAN_GRAMS },
    { kind: 'kitchen', household: 'Garrow', grams: CAN_GRAMS },
  ]);
  await garrow.clock.setFixedTime(site.app.clock.now);
  await garrow.goto(at('/shelf'));
  await garrow.getByRole('heading', { name: '5.3 lb stand on your shelf, in 1 container.' }).waitFor();
  const { findings } = bodyOf(await storehouse.coordinator.get(`${storehouse.path}/audit`));
  expect(findings.filter(({ holds }: { holds: boolean }) => !holds)).toEqual([]);
}
