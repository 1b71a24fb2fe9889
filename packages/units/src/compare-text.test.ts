import { expect, test } from 'vitest';
import { compareText } from './compare-text.ts';

test('texts stand in the order of their code units, upper case before lower and accents last', () => {
  // Unicode: Z is U+005A, a is U+0061, é is U+00E9. A language would order them otherwise.
  expect(['é', 'a', 'Z', 'a', ''].toSorted(compareText)).toEqual(['', 'Z', 'a', 'a', 'é']);
});
