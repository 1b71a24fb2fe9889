import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { aHall, aPackingSession, cansOf, type TestHall } from '../support/packing.ts';
import { aFilledDay, aSupply } from '../support/settlement.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { listViolations, overflowOf } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { openSite, type Site } from './support/site.ts';

let site: Site;
let storehouse: TestStorehouse;
let hall: TestHall;
let lead: Page;
let member: Page;
let supplyId: string;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z');
  storehouse = await aStorehouse(site.app);
  hall = await aHall(site.app, storehouse);
  const can = {
    ...{ name: 'No. 10 cans', kind: 'container', containerKindId: hall.shelves.kinds['can-no-10'] },
    ...{ packPieces: 6, packMinorUnits: 798 },
  };
  supplyId = await aSupply(storehouse, hall, can, { pieces: 24, minorUnits: 24 * 133 });
  lead = (await site.enter('pat-corran@example.org')).page;
  member = (await site.enter('dell@example.org')).page;
}, 180_000);
afterAll(() => site.close());

const onPage = (day: string, path = '') =>
  `/s/${storehouse.storehouseId}/packing/${day.split('/').at(-1)}${path}`;
const cansOnHand = async () => {
  const { supplies } = bodyOf(await hall.lead.caller.get(`${storehouse.path}/supplies`));
  return supplies.find(({ id }: { id: string }) => id === supplyId).onHandPieces;
};
const narrow = async (page: Page) => {
  await page.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(page)).toBe(0);
  await page.setViewportSize({ width: 1280, height: 900 });
};

test('a household sees before the day about what it will cost, and what to bring', async () => {
  const day = await aPackingSession(storehouse, hall, { name: 'Winter canning', lineFeeMinorUnits: 15 });
  const wish = { containers: 4, treatment: 'none' };
  bodyOf(await hall.buy.households.Dell.caller.put(`${day}/wishes`, { wishes: [cansOf(hall, wish)] }));
  await member.goto(onPage(day));
  await member.getByRole('heading', { name: 'Your containers will cost about 5.92.' }).waitFor();
  await member.getByRole('heading', { name: 'What to bring' }).waitFor();
  await member.getByText(/Hard red winter wheat: the bags that hold your/).waitFor();
  await settle(member);
  expect(await listViolations(member)).toEqual([]);
  await narrow(member);
}, 180_000);

test('the list is ticked off in the shop; ticks outlive a closed tab, and a purchase waits for the signal', async () => {
  const day = await aPackingSession(storehouse, hall, {
    ...{ name: 'A big day', startsAt: '2026-12-12T17:00:00Z', endsAt: '2026-12-12T23:00:00Z' },
  });
  const { Ashdown, Birchall } = hall.buy.households;
  for (const { caller } of [Ashdown, Birchall])
    bodyOf(
      await caller.put(`${day}/wishes`, { wishes: [cansOf(hall, { containers: 14, treatment: 'none' })] }),
    );
  await lead.goto(onPage(day));
  await lead.getByRole('link', { name: 'What to buy' }).click();
  await lead.getByRole('heading', { name: '1 thing is to be bought, for 7.98.' }).waitFor();
  await lead.getByLabel(/No. 10 cans/).check();
  await lead.getByLabel('First-aid box and a step stool').check();
  const address = lead.url();
  const context = lead.context();
  await lead.close();
  lead = await context.newPage();
  await lead.clock.setFixedTime(site.app.clock.now);
  await lead.goto(address);
  await lead.getByRole('heading', { name: '1 thing is to be bought, for 7.98.' }).waitFor();
  expect(await lead.getByLabel(/No. 10 cans/).isChecked()).toBe(true);
  await settle(lead);
  expect(await listViolations(lead)).toEqual([]);
  await narrow(lead);
  site.cut(true);
  await context.setOffline(true);
  await lead.getByRole('button', { name: 'Write down what was bought (1)' }).click();
  await lead.getByRole('button', { name: 'Write it down' }).click();
  await lead.getByText('A purchase waits on this phone for a signal.').waitFor();
  expect(await cansOnHand()).toBe(24);
  site.cut(false);
  await context.setOffline(false);
  await lead.getByRole('heading', { name: 'Nothing is to be bought for 28 containers.' }).waitFor();
  expect(await cansOnHand()).toBe(30);
  expect(await lead.getByLabel('First-aid box and a step stool').isChecked()).toBe(true); // a purchase is not the day
}, 180_000);

test('settling shows to the cent what it will post, posts that, and a member sees its part and why', async () => {
  const day = await aFilledDay(
    storehouse,
    hall,
    { Ashdown: 7, Dell: 3 },
    { name: 'Autumn canning', lineFeeMinorUnits: 15 },
  );
  await lead.goto(onPage(day));
  await lead.getByRole('link', { name: 'What the day cost' }).click();
  await lead.getByRole('heading', { name: 'Say what 10 containers used up.' }).waitFor();
  expect(await lead.getByLabel('No. 10 cans: used').inputValue()).toBe('10');
  await lead.getByLabel('No. 10 cans: used').fill('99');
  await lead.getByRole('button', { name: 'Show what this will post' }).click();
  await lead.getByText(/The book has 30 of No. 10 cans; 99 are said to be used/).waitFor();
  await lead.getByLabel('No. 10 cans: used').fill('10');
  await lead.getByText('Spoilt pieces', { exact: true }).click();
  await lead.getByLabel('No. 10 cans: spoilt by a machine, the storehouse’s').fill('1');
  await lead.getByRole('button', { name: 'Show what this will post' }).click();
  await lead.getByRole('heading', { name: 'This will post 16.13.' }).waitFor();
  await lead.getByText('The storehouse bears 1.33 itself.').waitFor();
  await settle(lead);
  expect(await listViolations(lead)).toEqual([]);
  await narrow(lead);
  await lead.getByRole('button', { name: 'Post it' }).click();
  await lead.getByRole('heading', { name: 'Autumn canning is settled: 16.13 in all.' }).waitFor();
  expect(await cansOnHand()).toBe(19);
  await member.goto(onPage(day));
  await member.getByRole('heading', { name: 'Your containers cost 4.44.' }).waitFor();
  await member.getByText('3 of 10 containers, of 13.30').waitFor();
  await settle(member);
  expect(await listViolations(member)).toEqual([]);
  await member.goto(`/s/${storehouse.storehouseId}/statement`);
  await member
    .getByText(/Packing day/)
    .first()
    .waitFor();
  await lead.getByText('Take the settlement back', { exact: true }).click();
  await lead.getByLabel('Why').fill('a can was counted twice');
  await lead.getByRole('button', { name: 'Take it back' }).click();
  await lead.getByRole('heading', { name: 'Say what 10 containers used up.' }).waitFor();
  expect(await cansOnHand()).toBe(30);
}, 180_000);

test('the shelf says what is there and what it cost; a further supply is kept, and a count is booked', async () => {
  await lead.goto(`/s/${storehouse.storehouseId}/packing/supplies`);
  await lead.getByRole('heading', { name: /^Supplies on hand cost / }).waitFor();
  await lead.getByText('Keep a further supply').click();
  await lead.getByLabel('Name').fill('Absorbers');
  await lead.getByLabel('What it is').selectOption({ label: 'Oxygen absorber' });
  await lead.getByRole('button', { name: 'Keep it' }).click();
  await lead.getByText('Write a whole number.').first().waitFor();
  await lead.getByLabel('Pieces in a pack').fill('100');
  await lead.getByLabel(/^Price of a pack/).fill('12.50');
  await lead.getByRole('button', { name: 'Keep it' }).click();
  await lead.getByText('100 · 12.50').waitFor();
  await lead.getByText('Count what is there', { exact: true }).click();
  await lead.getByLabel('Which supply').last().selectOption({ label: 'No. 10 cans' });
  await lead.getByLabel(/^Counted/).fill('28');
  await lead.getByLabel('Why it differs').fill('two were rusty');
  await lead.getByRole('button', { name: 'Book the difference' }).click();
  await expect.poll(cansOnHand).toBe(28);
  await settle(lead);
  expect(await listViolations(lead)).toEqual([]);
  await narrow(lead);
}, 180_000);
