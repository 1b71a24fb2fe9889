import { randomBytes } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { newId } from '../../apps/api/src/platform/new-id.ts';
import { openTestApp, type TestApp } from '../support/app.ts';

const AT = new Date('2026-09-01T15:00:00.123Z');

let app: TestApp;
let other: TestApp;
let now = AT;
beforeAll(async () => {
  [app, other] = [await openTestApp(), await openTestApp()];
});
afterAll(async () => {
  await app.close();
  await other.close();
});
beforeEach(() => {
  now = new Date(now.getTime() + 3_600_000);
});

const makeId = ({ db }: TestApp) => newId({ db, now: () => now, randomBytes });
const makeIds = (count: number) => Array.from({ length: count }, () => makeId(app));
const millisecondsOf = (id: string) => Number.parseInt(id.replaceAll('-', '').slice(0, 12), 16);

test('an id has the version and the variant of a version 7 UUID, and begins with the milliseconds', () => {
  const id = makeId(app);
  // RFC 9562, section 5.7: version 0b0111, variant 0b10.
  expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  expect(millisecondsOf(id)).toBe(now.getTime());
});

test('ids of one millisecond sort in the order of their making, more than the twelve bits can count too', () => {
  const ids = makeIds(10_000);
  expect(new Set(ids).size).toBe(10_000);
  expect(ids.toSorted()).toEqual(ids);
  // A count begins below 2,048 and ends at 4,095, so a millisecond has from 2,048 to 4,096 ids: 10,000 borrow 2 to 4.
  const borrowed = millisecondsOf(ids.at(-1) ?? '') - now.getTime();
  expect(borrowed).toBeGreaterThanOrEqual(2);
  expect(borrowed).toBeLessThanOrEqual(4);
});

test('an id made after the clock stepped back still sorts after the one before it', () => {
  const before = makeId(app);
  now = new Date(now.getTime() - 1000);
  expect(makeId(app) > before).toBe(true);
  now = new Date(now.getTime() + 5000);
  expect(millisecondsOf(makeId(app))).toBe(now.getTime());
});

test('what one app makes does not move the ids of another', () => {
  now = new Date(now.getTime() + 86_400_000);
  makeId(app);
  now = new Date(now.getTime() - 86_400_000);
  expect(millisecondsOf(makeId(other))).toBe(now.getTime());
});
