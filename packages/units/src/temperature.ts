import { assert } from './assert.ts';
import { fraction, roundFraction } from './fraction.ts';

// −273.15 °C is absolute zero, so −273.1 is the coldest tenth there is.
const COLDEST_TENTHS = -2731;

/**
 * The whole degrees Fahrenheit to show for a stored temperature, a half going up. Ageing sums keep the stored tenths.
 * Units: tenths of a degree Celsius in, °F out. Errors: AssertionError when not whole or below absolute zero.
 */
export function fahrenheitFromTenthsCelsius(tenthsCelsius: number): number {
  assert(Number.isSafeInteger(tenthsCelsius), `whole tenths of °C are needed, got ${tenthsCelsius}`);
  assert(tenthsCelsius >= COLDEST_TENTHS, 'nothing is colder than absolute zero');
  return Number(roundFraction(fraction(BigInt(tenthsCelsius) * 9n + 1600n, 50n)));
}

/**
 * The tenths of a degree to store for a temperature read off a Fahrenheit thermometer, a half going up.
 * Units: whole °F in, tenths of a degree Celsius out. Errors: AssertionError when not whole or below absolute zero.
 */
export function tenthsCelsiusFromFahrenheit(fahrenheit: number): number {
  assert(Number.isSafeInteger(fahrenheit), `whole °F are needed, got ${fahrenheit}`);
  const tenths = Number(roundFraction(fraction((BigInt(fahrenheit) - 32n) * 50n, 9n)));
  assert(tenths >= COLDEST_TENTHS, 'nothing is colder than absolute zero');
  return tenths;
}

/**
 * By how much warmer (above zero) or colder in °C, where somebody read off how much it is in °F.
 * Units: tenths of °F in, tenths of °C out, never a half. Errors: AssertionError when not whole.
 */
export function celsiusStepFromFahrenheit(tenthsFahrenheit: number): number {
  assert(Number.isSafeInteger(tenthsFahrenheit), `whole tenths of °F are needed, got ${tenthsFahrenheit}`);
  return Number(roundFraction(fraction(BigInt(tenthsFahrenheit) * 5n, 9n)));
}

/**
 * The other way round, as it was typed: whole °F where these are kept as the same tenths of °C, else the nearest tenth.
 * Units: tenths of °C in, tenths of °F out. Errors: AssertionError when not whole.
 */
export function fahrenheitStepFromCelsius(tenthsCelsius: number): number {
  assert(Number.isSafeInteger(tenthsCelsius), `whole tenths of °C are needed, got ${tenthsCelsius}`);
  const whole = 10 * Number(roundFraction(fraction(BigInt(tenthsCelsius) * 9n, 50n)));
  if (celsiusStepFromFahrenheit(whole) === tenthsCelsius) return whole;
  return Number(roundFraction(fraction(BigInt(tenthsCelsius) * 9n, 5n)));
}
