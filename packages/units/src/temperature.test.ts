import fc from 'fast-check';
import { expect, test } from 'vitest';
import { AssertionError } from './assert.ts';
import { fahrenheitFromTenthsCelsius, tenthsCelsiusFromFahrenheit } from './temperature.ts';

// 21.1 °C is 69.98 °F; 12.5 °C is 54.5 °F, a half; −17.5 °C is 0.5 °F, a half.
test.for([
  { tenths: 0, fahrenheit: 32 },
  { tenths: 1000, fahrenheit: 212 },
  { tenths: 211, fahrenheit: 70 },
  { tenths: 125, fahrenheit: 55 },
  { tenths: -175, fahrenheit: 1 },
  { tenths: -400, fahrenheit: -40 },
])('$tenths tenths of a degree Celsius show as $fahrenheit °F', ({ tenths, fahrenheit }) => {
  expect(fahrenheitFromTenthsCelsius(tenths)).toBe(fahrenheit);
});

test('a whole Fahrenheit reading is shown again as it was typed', () => {
  fc.assert(
    fc.property(fc.integer({ min: -459, max: 1000 }), (fahrenheit) => {
      expect(fahrenheitFromTenthsCelsius(tenthsCelsiusFromFahrenheit(fahrenheit))).toBe(fahrenheit);
    }),
  );
});

test('nothing is colder than absolute zero', () => {
  expect(() => fahrenheitFromTenthsCelsius(-2732)).toThrow(AssertionError);
  expect(() => tenthsCelsiusFromFahrenheit(-460)).toThrow(AssertionError);
});

test('parts of a tenth are refused', () => {
  expect(() => fahrenheitFromTenthsCelsius(0.5)).toThrow(AssertionError);
  expect(() => tenthsCelsiusFromFahrenheit(70.5)).toThrow(AssertionError);
});
