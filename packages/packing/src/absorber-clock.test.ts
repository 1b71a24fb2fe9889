import { expect, test } from 'vitest';
import { judgeOpenPack, mayOpenNextPack } from './absorber-clock.ts';

test.for([
  [0, 'fresh'],
  [15 * 60 + 59, 'fresh'],
  [16 * 60, 'jar-them-now'], // 80 % of 20 minutes
  [20 * 60, 'past-window'],
  [30 * 60, 'stop'],
  [4 * 3600, 'stop'],
  [4 * 3600 + 1, 'discard'],
] as const)('a pack that has been open for %d seconds is %s', ([seconds, state]) => {
  expect(judgeOpenPack(seconds)).toBe(state);
});

test('the next pack is opened when the open one lasts no longer than a minute', () => {
  expect(mayOpenNextPack(3, 2.5)).toBe(false);
  expect(mayOpenNextPack(2, 2.5)).toBe(true);
});
