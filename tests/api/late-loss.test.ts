import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { aPackingSession, bringWheat, openHall, type TestHall } from '../support/packing.ts';

const MINUTE = 60_000;

let app: TestApp;
let hall: TestHall;
let day: string;
beforeAll(async () => {
  const opened = await openHall();
  ({ app, hall } = opened);
  day = await aPackingSession(opened.storehouse, hall);
  bodyOf(await hall.lead.caller.post(`${day}/start`));
  await bringWheat(hall, day, 'Ashdown');
  app.clock.now = new Date(app.clock.now.getTime() + 60 * MINUTE);
});
afterAll(() => app.close());

const ago = (minutes: number) => new Date(app.clock.now.getTime() - minutes * MINUTE).toISOString();
const lose = (wish: Record<string, unknown>, headers?: Record<string, string>) => {
  const { bagId } = hall.wheat.Ashdown;
  const { householdId } = hall.buy.households.Ashdown;
  return hall.lead.caller.post(`${day}/losses`, { bagId, householdId, to: 'spilled', ...wish }, headers);
};

test('what was spilled or sampled keeps the hour at which a pen or a phone wrote it, and comes in that order', async () => {
  bodyOf(await lose({ grams: 31 }), 201);
  const wish = { grams: 25, to: 'sampled', lostAt: ago(40) };
  const sent = bodyOf(await lose(wish, { 'Idempotency-Key': 'phone' }), 201);
  expect(bodyOf(await lose(wish, { 'Idempotency-Key': 'phone' }), 201)).toEqual(sent); // its answer was lost
  const { losses, mass } = bodyOf(await hall.lead.caller.get(`${day}/log`));
  const recordedAt = app.clock.now.toISOString();
  expect(losses).toMatchObject([
    { to: 'sampled', grams: 25, lostAt: ago(40), recordedAt },
    { to: 'spilled', grams: 31, lostAt: recordedAt, recordedAt },
  ]);
  expect(mass).toMatchObject({ spilledGrams: 31, sampledGrams: 25 });
});

test('the clock of a phone that runs a little ahead loses nothing in time to come, and one that is far off is refused', async () => {
  bodyOf(await lose({ grams: 7, lostAt: ago(-4) }), 201);
  const { losses } = bodyOf(await hall.lead.caller.get(`${day}/log`));
  expect(losses.at(-1)).toMatchObject({ grams: 7, lostAt: app.clock.now.toISOString() });
  expect(await refusalOf(app, () => lose({ grams: 7, lostAt: ago(-40) }))).toEqual(
    refused(400, 'invalid-input', 'lostAt'),
  );
});
