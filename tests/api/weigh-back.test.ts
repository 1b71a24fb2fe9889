import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aPackingSession, bringWheat, openHall, type TestHall } from '../support/packing.ts';

let app: TestApp;
let hall: TestHall;
let day: string;
beforeAll(async () => {
  const opened = await openHall();
  ({ app, hall } = opened);
  day = await aPackingSession(opened.storehouse, hall);
});
afterAll(() => app.close());

test('what waited on a phone and is sent twice counts once: it never covers what was weighed after it', async () => {
  const { caller } = hall.lead;
  bodyOf(await caller.post(`${day}/start`));
  const brought = await bringWheat(hall, day, 'Ashdown');
  const { bagId } = hall.wheat.Ashdown;
  const { householdId } = hall.buy.households.Ashdown;
  const send = (leftGrams: number, key: string) =>
    caller.put(`${day}/left`, { bagId, householdId, leftGrams }, { 'Idempotency-Key': key });
  const first = bodyOf(await send(brought - 40, 'first'));
  expect(first.mass).toMatchObject({ leftInBagsGrams: brought - 40, unaccountedGrams: 40 });
  bodyOf(await send(brought - 12, 'second'));
  const again = await send(brought - 40, 'first');
  expect(again).toMatchObject({ status: 200, body: first });
  const { mass } = bodyOf(await caller.get(`${day}/log`));
  expect(mass).toMatchObject({ leftInBagsGrams: brought - 12, unaccountedGrams: 12 });
  expect((await send(brought - 41, 'first')).body.code).toBe('idempotency-key-reused');
});
