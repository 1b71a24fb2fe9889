import { expect, test } from 'vitest';
import { degreesTyped, tenthsTyped } from './degrees.ts';

test.for([
  { text: '32', tenths: 320 },
  { text: '0.5', tenths: 5 },
  { text: '12,5', tenths: 125 },
  { text: '-18', tenths: -180 },
  { text: '−1.5', tenths: -15 }, // a true minus, as it is shown again
  { text: ' – 4', tenths: -40 },
  { text: '-0', tenths: 0 },
  { text: ' ', tenths: null },
  { text: '-', tenths: undefined },
  { text: '--4', tenths: undefined },
  { text: 'cold', tenths: undefined },
])('"$text" are $tenths tenths', ({ text, tenths }) => {
  expect(tenthsTyped(text)).toBe(tenths);
});

test('a freezer is typed below nought in either unit', () => {
  expect(degreesTyped('-18', 'C')).toBe(-180);
  expect(degreesTyped('-4', 'F')).toBe(-200);
});
