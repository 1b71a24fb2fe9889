import fc from 'fast-check';
import { expect, test } from 'vitest';
import { AssertionError } from './assert.ts';
import {
  celsiusStepFromFahrenheit,
  fahrenheitFromTenthsCelsius,
  fahrenheitStepFromCelsius,
  tenthsCelsiusFromFahrenheit,
} from './temperature.ts';

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

// Nine degrees Fahrenheit are five degrees Celsius, wherever on the scale they lie.
test.for([
  { fahrenheit: 0, celsius: 0 },
  { fahrenheit: 90, celsius: 50 },
  { fahrenheit: -90, celsius: -50 },
  { fahrenheit: 20, celsius: 11 },
  { fahrenheit: -20, celsius: -11 },
  { fahrenheit: 10, celsius: 6 },
])('$fahrenheit tenths of °F more are $celsius tenths of °C more, and are shown so again', (step) => {
  expect(celsiusStepFromFahrenheit(step.fahrenheit)).toBe(step.celsius);
  expect(fahrenheitStepFromCelsius(step.celsius)).toBe(step.fahrenheit);
});

test('a step that no whole °F is kept as is shown to the tenth', () => {
  expect(fahrenheitStepFromCelsius(1)).toBe(2);
  expect(fahrenheitStepFromCelsius(-3)).toBe(-5);
});

test('a step in whole °F is shown again as it was typed, and a step in tenths of °C is kept through what is shown', () => {
  fc.assert(
    fc.property(fc.integer({ min: -5_000, max: 5_000 }), (some) => {
      expect(fahrenheitStepFromCelsius(celsiusStepFromFahrenheit(some * 10))).toBe(some * 10);
      expect(celsiusStepFromFahrenheit(fahrenheitStepFromCelsius(some))).toBe(some);
    }),
  );
});

test('parts of a tenth are no step', () => {
  expect(() => celsiusStepFromFahrenheit(0.5)).toThrow(AssertionError);
  expect(() => fahrenheitStepFromCelsius(0.5)).toThrow(AssertionError);
});
