import { expect, test } from 'vitest';
import { tareTyped } from './tare-here.ts';

test.for([
  ['1', 1],
  [' 0186 ', 186],
  ['100000', 100_000],
  ['100001', undefined],
  ['0', undefined],
  ['', undefined],
  ['18.5', undefined],
  ['-4', undefined],
] as const)('an empty container that is typed as %j', ([text, grams]) => {
  expect(tareTyped(text)).toBe(grams);
});
