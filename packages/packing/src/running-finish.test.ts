import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type RunningLine, runningFinish } from './running-finish.ts';

const run = (fromSerial: number, containers: number, startsAtSecond: number) => ({
  ...{
    wishId: `${fromSerial}`,
    foodCode: 'wheat',
    householdId: 'h',
    mixId: null,
    containers,
    changeoverMinutes: 0,
  },
  ...{ startsAtSecond, endsAtSecond: startsAtSecond + 24 * containers },
  ...{ fromSerial, toSerial: fromSerial + containers - 1 },
});
/** Set up until 1,800; twenty cans at 24 s, five minutes of wiping, ten more; 45 minutes of cleaning after 2,820. */
const runs = [run(1, 20, 1800), run(21, 10, 2580)];
const line = (closedAtSeconds: readonly number[]): RunningLine => ({
  ...{ runs, finishSeconds: 2820 + 2700, cycleSeconds: 24, closedAtSeconds },
});
const every = (seconds: number, count: number, from = 1824) =>
  Array.from({ length: count }, (_, at) => from + seconds * at);

test.each([
  ['before the line begins it is the plan’s end', [], 1000, 5520],
  ['a line that begins ten minutes late ends ten minutes late', [], 2400, 5520 + 600],
  ['on time and at the plan’s pace', every(24, 10), 2040, 5520],
  ['ten closed, four minutes behind', every(24, 10), 2280, 5520 + 240],
  [
    'six seconds slower each: a minute behind, and two more for the twenty to come',
    every(30, 10),
    2100,
    5520 + 60 + 120,
  ],
  ['logged in one go is no pace', Array(10).fill(2040), 2040, 5520],
  ['ahead of the plan it stays the plan’s end', every(12, 10), 1940, 5520],
  ['all closed in time: what is left is cleaning', every(24, 30), 9000, 5520],
  ['all closed, the last ten minutes late: so is the cleaning', every(24, 30, 2724), 9000, 5520 + 600],
])('%s', (_, closedAt, now, finish) => {
  expect(runningFinish(line(closedAt), now)).toBe(finish);
});

test('one rest among the last ten is counted as being behind and not as a slower pace', () => {
  const rested = [...every(24, 5), ...every(24, 5, 1824 + 24 * 5 + 900)];
  expect(runningFinish(line(rested), 2040 + 900)).toBe(5520 + 900);
});

test('a line without hands has no end', () => {
  expect(runningFinish({ ...line([]), finishSeconds: null }, 0)).toBeNull();
});

test('an end never comes sooner than the plan says, nor sooner as time goes by', () => {
  fc.assert(
    fc.property(fc.array(fc.nat(90), { maxLength: 30 }), fc.nat(7200), fc.nat(600), (gaps, wait, later) => {
      let at = 1800;
      const closedAt = gaps.map((gap) => (at += gap));
      const now = runningFinish(line(closedAt), at + wait) ?? 0;
      expect(now).toBeGreaterThanOrEqual(5520);
      expect(runningFinish(line(closedAt), at + wait + later)).toBeGreaterThanOrEqual(now);
    }),
  );
});
