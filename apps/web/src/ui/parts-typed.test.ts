import fc from 'fast-check';
import { expect, test } from 'vitest';
import { partsTyped, shownPart } from './parts-typed.ts';

test.for([
  { text: '', parts: 1000, value: null, because: 'nothing typed is nothing known' },
  { text: '10.3', parts: 1000, value: 10_300, because: 'grams in milligrams' },
  { text: '0,79', parts: 1_000_000, value: 790_000, because: 'a decimal comma is one' },
  { text: 'some', parts: 1000, value: undefined, because: 'a word is no number' },
])('"$text": $because', ({ text, parts, value }) => {
  expect(partsTyped(text, parts)).toBe(value);
});

test('what is shown is read back as the same number', () => {
  const parts = fc.constantFrom(1, 100, 1000, 1_000_000);
  fc.assert(
    fc.property(fc.nat(), parts, (value, each) => {
      expect(partsTyped(shownPart(value, each), each)).toBe(value);
    }),
  );
});

test('noughts at the end of a fraction are left out, and those of a whole number stay', () => {
  expect([shownPart(10_300, 1000), shownPart(100_000, 1000), shownPart(20, 1)]).toEqual([
    '10.3',
    '100',
    '20',
  ]);
});
