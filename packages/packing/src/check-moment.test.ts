import { expect, test } from 'vitest';
import { checkDueAt } from './check-moment.ts';

const MINUTE = 60_000;
const can = (minute: number, kind = 'can') => ({ atMs: minute * MINUTE, kind });
const cans = (count: number, fromMinute = 1) =>
  Array.from({ length: count }, (_, at) => can(fromMinute + at / 10));

test('a check is due with the first container of a run, and none while nothing is closed', () => {
  expect(checkDueAt(null, [])).toBeNull();
  expect(checkDueAt(can(0), [])).toBeNull();
  expect(checkDueAt(null, [can(5), can(6)])).toBe(5 * MINUTE);
});

test('after a good one it is due in an hour, with the 150th can or with another size, whichever is first', () => {
  const good = can(0);
  expect(checkDueAt(good, cans(149))).toBe(60 * MINUTE);
  expect(checkDueAt(good, cans(150))).toBe((1 + 14.9) * MINUTE);
  expect(checkDueAt(good, cans(150, 100))).toBe(60 * MINUTE);
  expect(checkDueAt(good, [can(1), can(7, 'jar'), can(8)])).toBe(7 * MINUTE);
});

test('a plan of its own counts as it says', () => {
  const plan = { everyContainers: 2, everyMinutes: 10 };
  expect(checkDueAt(can(0), [can(1)], plan)).toBe(10 * MINUTE);
  expect(checkDueAt(can(0), [can(1), can(3)], plan)).toBe(3 * MINUTE);
});
