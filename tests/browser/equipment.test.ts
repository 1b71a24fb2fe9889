import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf, foodIdsOf } from '../support/buy.ts';
import { anItem, aShed, book, handOut, type TestShed } from '../support/equipment.ts';
import { findFaults, NO_FAULTS } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { openSite, type Site } from './support/site.ts';

// Tuesday, 1 September 2026, 10:00 in Chicago.
let site: Site;
let shed: TestShed;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z');
  shed = await aShed(site.app);
  await anItem(shed);
}, 120_000);
afterAll(() => site.close());

const openEquipment = async (page: Page) => {
  await page.goto('/');
  await page.waitForURL(/\/s\//);
  await page.goto(`${page.url().replace(/(\/s\/[^/]+).*/, '$1')}/equipment`);
  await settle(page);
};

test('a member finds a thing, books it, takes it with its parts counted, and brings it back without one', async () => {
  const { page } = await site.enter('hale@example.org');
  await openEquipment(page);
  await page.getByRole('heading', { name: 'The group lends 1 thing.' }).waitFor();
  expect(await findFaults(page)).toEqual(NO_FAULTS);
  await page.getByRole('link', { name: /Can sealer/ }).click();
  await page.getByText('Guard on, no loose sleeves.').waitFor();
  await settle(page);
  expect(await findFaults(page)).toEqual(NO_FAULTS);
  await page.getByLabel('From, day').fill('2026-09-01');
  await page.getByLabel('From, hour').fill('11:00');
  await page.getByLabel('Until, day').fill('2026-09-01');
  await page.getByLabel('Until, hour').fill('18:00');
  await page.getByRole('button', { name: 'Book it' }).click();
  await page.getByText('It is booked for you.').waitFor();

  await openEquipment(page);
  await page.getByRole('link', { name: 'Take it' }).click();
  await page.getByRole('heading', { name: 'Can sealer goes out' }).waitFor();
  await settle(page);
  expect(await findFaults(page)).toEqual(NO_FAULTS);
  expect(await page.getByLabel('Taken by (name)').inputValue()).toBe('Hale Person');
  await page.getByRole('button', { name: 'Hand it out' }).click();
  await page.getByRole('heading', { name: 'It is out. Bring it back by then.' }).waitFor();

  await openEquipment(page);
  await page.getByRole('link', { name: 'Bring it back' }).click();
  await page.getByLabel('Hex key, of 2').fill('1');
  await settle(page);
  expect(await findFaults(page)).toEqual(NO_FAULTS);
  await page.getByRole('button', { name: 'Take it back' }).click();
  await page.getByRole('heading', { name: 'It is back.' }).waitFor();
  const figures = await page.locator('dl.figures').textContent();
  expect(figures).toMatch(/Missing parts\s*1\.50/);
  expect(figures).toMatch(/Deposit back\s*48\.50/);
  expect(await page.getByText('Something is damaged').count()).toBe(0); // a member charges nobody
  const back = page.url();
  const { page: keeper } = await site.enter('keeper@example.org');
  await keeper.goto('/');
  await keeper.waitForURL(/\/s\//);
  await keeper.goto(back);
  await keeper.getByText('Something is damaged').click();
  await keeper.getByLabel('What the damage costs').fill('2.25');
  await keeper.getByLabel('What is the matter').fill('The crank is bent.');
  await settle(keeper);
  expect(await findFaults(keeper)).toEqual(NO_FAULTS);
  await keeper.getByRole('button', { name: 'Charge the damage' }).click();
  await keeper.getByText('2.25').first().waitFor();
}, 120_000);

test('of a taken time a member may wait, and the keeper sees who has it, who waits and what needs care', async () => {
  const mill = await anItem(shed, { name: 'Grain mill', mayRelay: false }, []);
  const { id } = bodyOf(await book(shed.hale.caller, mill, ['2026-09-02T09:00', '2026-09-02T18:00']), 201);
  const { page } = await site.enter('moss@example.org');
  await openEquipment(page);
  await page.getByRole('link', { name: /Grain mill/ }).click();
  await page.getByLabel('From, hour').fill('10:00');
  await page.getByRole('button', { name: 'Book it' }).click();
  await page.getByRole('button', { name: 'Wait for that time' }).click();
  await page.getByText('You wait for it.').waitFor();

  bodyOf(await handOut(shed.hale.caller, shed, id, mill), 201);
  const keeper = (await site.enter('keeper@example.org')).page;
  await keeper.goto('/');
  await keeper.getByRole('link', { name: 'See what is out' }).click();
  await keeper.getByRole('heading', { name: '1 thing is out, nothing is late.' }).waitFor();
  const text = await keeper.locator('main').textContent();
  expect(text).toContain('Grain mill 1 Hale');
  expect(text).toContain('Hale fetches it Tue 1 Sept, 10:00');
  expect(text).toContain('1 × Hex key missing');
  expect(text).toContain('Grain mill Moss');
  await settle(keeper);
  expect(await findFaults(keeper)).toEqual(NO_FAULTS);
}, 120_000);

test('of a thing that is out and late nobody is told that it is free: who asks, who books, and who comes next', async () => {
  const early = site.app.clock.now;
  const press = await anItem(shed, { name: 'Apple press', mayRelay: false }, []);
  const { id } = bodyOf(await book(shed.hale.caller, press, ['2026-09-01T10:30', '2026-09-01T18:00']), 201);
  const next = ['2026-09-04T09:00', '2026-09-04T18:00'] as const;
  bodyOf(await book(shed.moss.caller, press, next), 201);
  bodyOf(await handOut(shed.hale.caller, shed, id, press), 201);
  site.app.clock.now = new Date('2026-09-02T15:00:00Z');
  const keeper = (await site.enter('keeper@example.org')).page;
  await keeper.goto('/');
  await keeper.getByRole('link', { name: 'See what is out' }).click();
  await keeper.getByLabel('Which thing').selectOption({ label: 'Apple press' });
  await keeper.getByText('It is out and late: it was due on Tue 1 Sept, 18:00').waitFor();
  expect(await keeper.locator('main').textContent()).toContain('Not free. It is out and late');
  await settle(keeper);
  expect(await findFaults(keeper)).toEqual(NO_FAULTS);

  const { page } = await site.enter('moss@example.org');
  await openEquipment(page);
  expect(await page.locator('main').textContent()).toMatch(
    /late It is out and late: it was due on Tue 1 Sept/,
  );
  await page
    .getByRole('link', { name: /Apple press/ })
    .first()
    .click();
  await page.getByRole('heading', { name: 'When it is free' }).waitFor();
  expect(await page.locator('main').textContent()).toContain('nobody knows when it is back');
  await settle(page);
  expect(await findFaults(page)).toEqual(NO_FAULTS);
  site.app.clock.now = early;
}, 120_000);

test('whoever takes a time that came free says what goes through it, where the wish of old did not', async () => {
  const flaker = await anItem(shed, { name: 'Flaker', touchesFood: true }, []);
  const foodId = (await foodIdsOf(shed))['rice-white-long'];
  const times = ['2026-09-10T09:00', '2026-09-10T18:00'] as const;
  const { id } = bodyOf(await book(shed.hale.caller, flaker, times, { foodIds: [foodId] }), 201);
  const wish = { from: times[0], until: times[1], foodIds: [foodId] };
  const waits = bodyOf(await shed.moss.caller.post(`${flaker.path}/waiting`, wish), 201);
  await site.app.admin`delete from book.equipment_wish_food where equipment_wish_id = ${waits.id}`;
  bodyOf(await shed.hale.caller.post(`${shed.path}/bookings/${id}/cancelling`));
  const { page } = await site.enter('moss@example.org');
  await openEquipment(page);
  const offered = page.getByRole('listitem').filter({ hasText: 'Flaker' }).filter({ hasText: 'go through' });
  await offered.getByRole('button', { name: 'I take it' }).click();
  await offered.getByText('Say which foods go through it').first().waitFor();
  await settle(page);
  expect(await findFaults(page)).toEqual(NO_FAULTS);
  await offered.getByLabel('Find a food').fill('hard red winter');
  await offered.getByRole('button', { name: 'Add hard red winter wheat' }).click();
  await offered.getByRole('button', { name: 'I take it' }).click();
  await offered.waitFor({ state: 'detached' }); // booked now, it asks no more
  const { bookings } = bodyOf(await shed.moss.caller.get(`${shed.path}/bookings`));
  expect(bookings.find(({ itemId }: { itemId: string }) => itemId === flaker.id)).toMatchObject({
    ...{ state: 'booked', foods: [{ nameEn: 'Hard red winter wheat' }] },
  });
}, 120_000);

test('the keeper says no at the desk to what would be handed straight on, and whoever asked is told', async () => {
  const cart = await anItem(shed, { name: 'Cart', mayRelay: true, postMinutes: 720 }, []);
  bodyOf(await book(shed.hale.caller, cart, ['2026-09-12T09:00', '2026-09-12T18:00']), 201);
  const next = ['2026-09-12T18:00', '2026-09-13T12:00'] as const;
  bodyOf(await book(shed.moss.caller, cart, next, { byRelay: true }), 201);
  const { page } = await site.enter('keeper@example.org');
  await openEquipment(page);
  await page.getByRole('link', { name: 'What is out, due and late' }).click();
  const asked = page.getByRole('listitem').filter({ hasText: 'Cart' }).filter({ hasText: 'asked to be' });
  await asked.getByRole('button', { name: 'No: it comes back to the store first' }).click();
  await asked.waitFor({ state: 'detached' });
  await settle(page);
  expect(await findFaults(page)).toEqual(NO_FAULTS);
  const { notices } = bodyOf(await shed.moss.caller.get(`${shed.path}/notices`));
  expect(notices[0].words).toContain('It will not be handed straight on to you');
}, 120_000);

test('the keeper adds a thing with a part that it never goes out without', async () => {
  const { page } = await site.enter('keeper@example.org');
  await openEquipment(page);
  await page.getByRole('link', { name: 'Add equipment' }).click();
  await page.getByLabel('Fill in the usual terms of').selectOption({ label: 'a grain mill' });
  expect(await page.getByLabel(/Food goes through it/).isChecked()).toBe(true);
  await page.getByLabel('Fill in the usual terms of').selectOption({ label: 'a can sealer' });
  await page.getByLabel('Name', { exact: true }).fill('Vacuum sealer');
  await page.getByLabel('Deposit', { exact: true }).fill('twenty');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await page.getByText('Write an amount, such as 41.20.').waitFor();
  await settle(page);
  expect(await findFaults(page)).toEqual(NO_FAULTS);
  await page.getByLabel('Deposit', { exact: true }).fill('20.00');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await page.getByRole('heading', { name: 'Vacuum sealer' }).waitFor();
  await page.getByRole('link', { name: 'Change it' }).click();
  await page.getByRole('button', { name: 'Add a part' }).click();
  await page.getByLabel('Part 1', { exact: true }).fill('Sealing bar');
  await page.getByLabel('What part 1 costs each').fill('31.00');
  await page.getByLabel('It never goes out without part 1').check();
  await page.getByRole('button', { name: 'Save the parts' }).click();
  await settle(page);
  expect(await findFaults(page)).toEqual(NO_FAULTS);
  const { items } = bodyOf(await shed.keeper.caller.get(`${shed.path}/equipment`));
  expect(items.find(({ name }: { name: string }) => name === 'Vacuum sealer')).toMatchObject({
    ...{ depositMinorUnits: 2000, postMinutes: 720, longestDays: 3, touchesFood: false },
    ...{ serviceEveryUses: 500, serviceEveryDays: 180 },
    parts: [{ name: 'Sealing bar', isCritical: true, valueMinorUnits: 3100 }],
  });
}, 120_000);

test('of an hour that the clock shows twice the form asks which, and takes the first unless told', async () => {
  const early = site.app.clock.now;
  site.app.clock.now = new Date('2026-10-30T15:00:00Z');
  const probe = await anItem(shed, { name: 'Probe', postMinutes: 0 }, []);
  const { page } = await site.enter('hale@example.org');
  await openEquipment(page);
  await page.getByRole('link', { name: /Probe/ }).click();
  await page.getByLabel('From, day').fill('2026-11-01');
  await page.getByLabel('From, hour').fill('03:30');
  await page.getByLabel('Until, day').fill('2026-11-01');
  await page.getByLabel('Until, hour').fill('06:00');
  const question = page.getByLabel('start at the second');
  expect(await question.count()).toBe(0);
  await page.getByLabel('From, hour').fill('01:30');
  await question.check();
  expect(await findFaults(page)).toEqual(NO_FAULTS);
  await page.getByRole('button', { name: 'Book it' }).click();
  await page.getByText('It is booked for you.').waitFor();
  const { bookings } = bodyOf(await shed.hale.caller.get(`${probe.path}/bookings`));
  expect(bookings[0].startsAt).toBe('2026-11-01T07:30:00.000Z');
  site.app.clock.now = early;
}, 120_000);
