import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf } from '../support/fingerprint.ts';
import { aPackingSession, aPourBody, bringWheat, openHall, type TestHall } from '../support/packing.ts';
import { aSeamer, type TestSeamer, THICK } from '../support/seam.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
let seamer: TestSeamer;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
  seamer = await aSeamer(storehouse, hall);
});
afterAll(() => app.close());

const lead = () => hall.lead.caller;
const GRAMS = 10;

/** A day at which Ashdown fills containers, and what is left is weighed back to the gram. */
async function aDayWith(cans: number, wish: Record<string, unknown> = {}) {
  const day = await aPackingSession(storehouse, hall);
  bodyOf(await lead().post(`${day}/start`));
  const brought = await bringWheat(hall, day, 'Ashdown');
  const pour = async (count: number) => {
    const grams = Array.from({ length: count }, () => GRAMS);
    const body = { ...aPourBody(hall, { name: 'Ashdown', grams, targetGrams: GRAMS }), treatment: 'none' };
    bodyOf(await lead().post(`${day}/pours`, { ...body, ...wish }), 201);
  };
  const weigh = async (poured: number) => {
    const bag = { bagId: hall.wheat.Ashdown.bagId, householdId: hall.buy.households.Ashdown.householdId };
    bodyOf(await lead().put(`${day}/left`, { ...bag, leftGrams: brought - poured * GRAMS }));
  };
  if (cans > 0) await pour(cans);
  await weigh(cans);
  return { day, pour, weigh, sign: () => lead().post(`${day}/signing`) };
}
const uncheckedOf = async (day: string) => bodyOf(await lead().get(`${day}/log`)).unchecked;

test('a day of which no seal was checked is not signed; a good trial at its end stands behind all of it', async () => {
  const { day, sign } = await aDayWith(3);
  expect(await refusalOf(app, sign)).toMatchObject({ status: 409, code: 'cannot-sign' });
  const refusal = await sign();
  expect(refusal.body.detail).toBe(
    'Numbers 1 to 3 of line 1 were closed, and no seal of Seamer was checked. Check the last one, or one closed for trial. If that can’t be done, write it down as failed: they are held, and the day can be signed.',
  );
  expect(refusal.body.unchecked).toEqual([
    { line: 1, machines: ['Seamer'], wasChecked: false, fromSerial: 1, toSerial: 3 },
  ]);
  bodyOf(await seamer.check(day, { occasion: 'last' }), 201);
  expect((await sign()).status).toBe(201);
});

test('what was closed since the last good check waits for a further one; a look stands behind no seam', async () => {
  const { day, pour, weigh, sign } = await aDayWith(2);
  bodyOf(await seamer.check(day, { serial: 2 }), 201);
  await pour(2);
  await weigh(4);
  expect(await uncheckedOf(day)).toEqual([{ line: 1, machines: ['Seamer'], fromSerial: 3, toSerial: 4 }]);
  bodyOf(await seamer.check(day, { how: 'visual', measures: null, serial: 4 }), 201);
  expect((await sign()).body.detail).toMatch(
    /^Numbers 3 to 4 of line 1 were closed since the last good check of Seamer\. /,
  );
  bodyOf(await seamer.check(day, { serial: 3 }), 201);
  expect(await uncheckedOf(day)).toMatchObject([{ fromSerial: 4, toSerial: 4 }]);
  bodyOf(await seamer.check(day, { serial: 4 }), 201);
  expect((await sign()).status).toBe(201);
});

test('a pail that a hand closes needs no check', async () => {
  const { sign } = await aDayWith(1, { containerKindId: hall.shelves.kinds['pail-5-gallon-bare'] });
  expect((await sign()).status).toBe(201);
});

test('a check that fails at the end holds what it leaves in doubt, and the day can be signed while the machine is out', async () => {
  const { day, pour, weigh, sign } = await aDayWith(1);
  bodyOf(await seamer.check(day, { serial: 1 }), 201);
  app.clock.now = new Date(app.clock.now.getTime() + 60 * 60_000);
  await pour(2);
  await weigh(3);
  const whyDue = async () => bodyOf(await lead().get(`${day}/seals`)).lines[0].why;
  expect(await whyDue()).toBe('time');
  expect((await sign()).status).toBe(409);
  bodyOf(await seamer.check(day, { serial: 3, measures: THICK }), 201);
  expect(await uncheckedOf(day)).toEqual([]);
  expect((await sign()).status).toBe(201);
  expect(await whyDue()).toBeNull(); // nothing more is closed, so nothing is due
  const { holds, machines } = bodyOf(await lead().get(`${storehouse.path}/seals`));
  expect(holds.map(({ serial }: { serial: number }) => serial)).toEqual([2, 3]);
  expect(machines[0].outSince).not.toBeNull();
});
