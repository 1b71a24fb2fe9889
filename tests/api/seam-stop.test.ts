import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { aPackingSession, aPourBody, bringWheat, openHall, type TestHall } from '../support/packing.ts';
import { aSeamer, type TestSeamer, THICK } from '../support/seam.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
let seamer: TestSeamer;
let spare: TestSeamer;
let day: string;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
  seamer = await aSeamer(storehouse, hall);
  day = await aPackingSession(storehouse, hall, { lines: 2 });
  bodyOf(await hall.lead.caller.post(`${day}/start`));
  await bringWheat(hall, day, 'Ashdown');
});
afterAll(() => app.close());

const pour = (wish: Record<string, unknown> = {}) =>
  hall.lead.caller.post(`${day}/pours`, {
    ...aPourBody(hall, { name: 'Ashdown', grams: [10, 10], targetGrams: 10 }),
    ...wish,
  });
const heldSerials = async () =>
  bodyOf(await hall.lead.caller.get(`${storehouse.path}/seals`)).holds.map(
    ({ serial }: { serial: number }) => serial,
  );

test('a line pours on while its machine passes, and stops with it, in words that name it', async () => {
  bodyOf(await seamer.check(day, { occasion: 'first', gauge: 'G-1' }), 201);
  app.clock.now = new Date(app.clock.now.getTime() + 120_000);
  bodyOf(await pour(), 201);
  bodyOf(await seamer.check(day, { serial: 2, measures: THICK }), 201);
  expect(await refusalOf(app, () => pour())).toEqual(refused(409, 'line-is-stopped', 'line'));
  expect((await pour()).body.detail).toBe(
    'Seamer is out since its check failed. Nothing more is closed on line 1 until three checks in a row have passed.',
  );
});

test('a pail that a hand closes is poured while the seamer is out', async () => {
  bodyOf(await pour({ containerKindId: hall.shelves.kinds['pail-5-gallon-bare'], treatment: 'none' }), 201);
});

test('what was closed before the machine stopped, and was on its way, is logged and held with the rest', async () => {
  expect(await heldSerials()).toEqual([1, 2]);
  const before = new Date(app.clock.now.getTime() - 60_000).toISOString();
  const { containers } = bodyOf(await pour({ pouredAt: before, grams: [10] }), 201);
  expect(await heldSerials()).toEqual([1, 2, containers[0].serial]);
});

test('a trial of what is in doubt already lets no machine run again; three trials since do', async () => {
  for (const serial of [1, 2, 5]) bodyOf(await seamer.check(day, { serial, occasion: 'suspect' }), 201);
  expect((await pour()).status).toBe(409);
  bodyOf(await seamer.check(day, { occasion: 'clearing' }), 201);
  bodyOf(await seamer.check(day, { occasion: 'clearing' }), 201);
  expect((await pour()).status).toBe(409);
  const third = bodyOf(await seamer.check(day, { occasion: 'clearing' }), 201);
  expect(third.machine.outSince).toBeNull();
  expect((await pour()).status).toBe(201);
});

test('what the trials stood good for is in no later doubt', async () => {
  bodyOf(await seamer.check(day, { looksGood: false }), 201); // 6 and 7 were closed since the trials
  expect(await heldSerials()).toEqual([1, 2, 5, 6, 7]);
});

test('another machine on the line lets it pour, and the only ones that are out stop a line that was not checked', async () => {
  expect((await pour({ line: 2 })).status).toBe(409);
  spare = await aSeamer(storehouse, hall, 'Spare seamer');
  expect((await pour()).status).toBe(409);
  bodyOf(await spare.check(day, { occasion: 'first' }), 201);
  expect((await pour()).status).toBe(201);
  expect((await pour({ line: 2 })).status).toBe(201);
});

test('a good can from before the stop tells nothing of how the machine closes now, however often it is looked at', async () => {
  const { containers } = bodyOf(await pour({ grams: [10] }), 201);
  const { serial } = containers[0];
  bodyOf(await spare.check(day, { serial }), 201); // it vouches for itself, so no window reaches it
  bodyOf(await spare.check(day, { looksGood: false }), 201);
  expect(await heldSerials()).not.toContain(serial);
  for (let look = 0; look < 3; look += 1)
    expect(bodyOf(await spare.check(day, { serial }), 201).machine.outSince).not.toBeNull();
  expect((await pour()).status).toBe(409);
  for (let trial = 0; trial < 3; trial += 1) bodyOf(await spare.check(day, { occasion: 'clearing' }), 201);
  expect((await pour()).status).toBe(201);
});
