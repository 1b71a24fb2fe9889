import { expect, test } from 'vitest';
import { sortedJson } from './sorted-json.ts';

test('keys are told in one order at every depth, and arrays as they stand', () => {
  const value = { b: [3, { d: null, c: 'x' }, 1], a: { z: true, y: 0.5 } };
  expect(sortedJson(value)).toBe('{"a":{"y":0.5,"z":true},"b":[3,{"c":"x","d":null},1]}');
});

test('two objects that differ by the order of their keys alone have the same text', () => {
  expect(sortedJson({ grams: 1, lot: 'a' })).toBe(sortedJson({ lot: 'a', grams: 1 }));
  expect(sortedJson([1, 2])).not.toBe(sortedJson([2, 1]));
});
