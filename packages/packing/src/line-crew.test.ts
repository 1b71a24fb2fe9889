import { fraction } from '@sheafbook/units';
import { expect, test } from 'vitest';
import { CAN_LINE, cycleWithOneMoreAt, placeCrew, pouredPerHour } from './line-crew.ts';

const minutes = (...at: number[]) => at.map((one) => one * 60_000);

test('what was poured an hour counts the steps between the first and the last, whatever their order', () => {
  expect(pouredPerHour(minutes(0, 1, 2, 3, 4))).toBe(60);
  expect(pouredPerHour(minutes(30, 0, 20))).toBe(4);
});

test('nothing an hour is told of what was written down in one go', () => {
  expect(pouredPerHour([])).toBeNull();
  expect(pouredPerHour(minutes(5))).toBeNull();
  expect(pouredPerHour(minutes(5, 5, 5))).toBeNull();
});

// Job map 7.3: five people are 27, 24 and 15 s; a third at the filling makes 18, so that the seamer's 24 set the pace.
test('one person more at a station buys what the next slowest lets it, and at a machine nothing', () => {
  const five = placeCrew(CAN_LINE, 5);
  const then = (station: string) => five && cycleWithOneMoreAt(five, CAN_LINE, station);
  expect(then('weigh')).toEqual(fraction(24));
  expect(then('label')).toEqual(fraction(27));
  expect(then('seam')).toEqual(fraction(27));
});
