import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { aPackingSession, cansOf, openHall, type TestHall } from '../support/packing.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
let day: string;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
  day = await aPackingSession(storehouse, hall, { peopleALine: 5 });
  bodyOf(await hall.buy.households.Dell.caller.put(`${day}/wishes`, { wishes: [cansOf(hall)] }));
});
afterAll(() => app.close());

const helper = () => hall.buy.households.Dell.caller;
const say = (wish: Record<string, unknown> = {}, key?: string) =>
  helper().post(
    `${day}/queues`,
    { line: 1, station: 'label', waiting: 5, ...wish },
    key === undefined ? {} : { 'Idempotency-Key': key },
  );
const queues = async () => bodyOf(await hall.lead.caller.get(`${day}/log`)).queues;

test('before the day runs nobody waits at a line', async () => {
  expect(await refusalOf(app, () => say())).toMatchObject({ status: 409, code: 'session-stage-wrong' });
  bodyOf(await hall.lead.caller.post(`${day}/start`));
});

test.each([
  { told: 'another line than the day has', wish: { line: 2 }, field: 'line' },
  { told: 'a station that no line has', wish: { station: 'oven' }, field: 'station' },
  { told: 'fewer than none', wish: { waiting: -1 }, field: 'waiting' },
  { told: 'what is still to come', wish: { saidAt: '2026-09-01T16:00:00Z' }, field: 'saidAt' },
])('$told is refused at its field', async ({ wish, field }) => {
  expect(await refusalOf(app, () => say(wish))).toMatchObject(refused(400, 'invalid-input', field));
});

test('whoever stands at the line tells how many wait; sent twice it is told once, and of nobody', async () => {
  const early = { waiting: 2, saidAt: '2026-09-01T14:59:00.000Z' };
  const told = bodyOf(await say(), 201);
  expect(told).toEqual({ line: 1, station: 'label', waiting: 5, saidAt: '2026-09-01T15:00:00.000Z' });
  bodyOf(await say(early, 'a phone without a signal'), 201); // it waited on a phone
  bodyOf(await say(early, 'a phone without a signal'), 201);
  expect(await queues()).toEqual([{ line: 1, station: 'label', ...early }, told]);
});

test('the plan tells what one person more at each block would make of the line (job map 7.3)', async () => {
  const { lines } = bodyOf(await hall.lead.caller.get(`${day}/plan`));
  expect(
    lines[0].blocks.map((block: { people: number; oneMoreSeconds: number }) => [
      block.people,
      block.oneMoreSeconds,
    ]),
  ).toEqual([
    [2, 24], // a third at the filling: the seamer sets the pace
    [1, 27],
    [2, 27],
  ]);
});
