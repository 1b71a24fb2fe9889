import { expect, test } from 'vitest';
import { milsSaid, milsTyped } from './mils-typed.ts';

test('a measure is read in thousandths of an inch or in millimetres, with a point or a comma', () => {
  expect(milsTyped('58', 'mil')).toBe(58);
  expect(milsTyped('1.47', 'mm')).toBe(58);
  expect(milsTyped('1,47', 'mm')).toBe(58);
  expect(milsSaid(58, 'mm')).toBe('1.47');
});

test('what is no measure of a seam is none', () => {
  for (const typed of ['', 'thick', '-4', '0', '5 8', '1001'])
    expect(milsTyped(typed, 'mil')).toBeUndefined();
});
