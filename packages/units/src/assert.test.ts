import { expect, test } from 'vitest';
import { AssertionError, assert, assertWhole } from './assert.ts';

test('a condition that holds passes without a word', () => {
  expect(() => assert(1 < 2, 'order of numbers')).not.toThrow();
});

test('a broken condition stops with its own sentence', () => {
  expect(() => assert(false, 'a bag has a number')).toThrow(new AssertionError('a bag has a number'));
});

test.for([0, 1, 22_680, Number.MAX_SAFE_INTEGER])('%d is a whole amount', (value) => {
  expect(() => assertWhole(value, 'grams')).not.toThrow();
});

test.for([-1, 0.5, Number.NaN, Number.POSITIVE_INFINITY, 2 ** 53])('%d is no whole amount', (value) => {
  expect(() => assertWhole(value, 'grams')).toThrow(
    `grams must be a whole number of 0 or more, got ${value}`,
  );
});
