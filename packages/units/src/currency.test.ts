import { expect, test } from 'vitest';
import { AssertionError } from './assert.ts';
import { CURRENCY_CODES, currencyExponent, isCurrencyCode } from './currency.ts';

test.for([
  { code: 'USD', exponent: 2 },
  { code: 'EUR', exponent: 2 },
  { code: 'JPY', exponent: 0 },
  { code: 'KWD', exponent: 3 },
  { code: 'CLF', exponent: 4 },
])('$code has $exponent decimals', ({ code, exponent }) => {
  expect(currencyExponent(code)).toBe(exponent);
});

test.for(['usd', 'US', 'USDT', 'XAU', 'XXX', 'DEM', '', 'toString'])('no books are kept in "%s"', (code) => {
  expect(isCurrencyCode(code)).toBe(false);
  expect(() => currencyExponent(code)).toThrow(AssertionError);
});

test('every listed code is three capitals, listed once', () => {
  expect(CURRENCY_CODES.filter((code) => !/^[A-Z]{3}$/.test(code))).toEqual([]);
  expect(new Set(CURRENCY_CODES).size).toBe(CURRENCY_CODES.length);
  expect(CURRENCY_CODES.every(isCurrencyCode)).toBe(true);
});
