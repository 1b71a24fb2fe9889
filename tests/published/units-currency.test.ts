import { CURRENCY_CODES, currencyExponent, isCurrencyCode } from '@sheafbook/units';
import { codes, code as findCurrency, publishDate } from 'currency-codes';
import { expect, test } from 'vitest';

// The package `currency-codes` carries ISO 4217 list one as published by its maintenance agency on this day.
test('the list that ours is compared with is that of June 2024', () => {
  expect(publishDate).toBe('2024-06-25');
});

test('every currency of both lists has the same count of decimals', () => {
  const shared = CURRENCY_CODES.filter((code) => findCurrency(code));
  expect(shared.length).toBeGreaterThan(150);
  const disagreeing = shared.filter((code) => findCurrency(code)?.digits !== currencyExponent(code));
  expect(disagreeing).toEqual([]);
});

// Each code that only one list has, with its reason; a new one makes a test fail.
const LATER_AMENDMENTS = [
  { code: 'ANG', because: 'amendment 176: replaced by XCG on 31 March 2025' },
  { code: 'BGN', because: 'the euro replaced it on 1 January 2026 (from memory)' },
  { code: 'CUC', because: 'amendment 178: withdrawn in June 2021, struck from the list in 2025' },
];
const NO_MINOR_UNIT = [
  'XAG',
  'XAU',
  'XBA',
  'XBB',
  'XBC',
  'XBD',
  'XDR',
  'XPD',
  'XPT',
  'XSU',
  'XTS',
  'XUA',
  'XXX',
];
const ADDED_LATER = [
  { code: 'XAD', because: 'amendment 179: effective from 12 May 2025' },
  { code: 'XCG', because: 'amendment 176: effective from 31 March 2025' },
];

test('the published list has only those codes more that were struck later or have no minor unit', () => {
  const onlyThere = codes().filter((code) => !isCurrencyCode(code));
  const explained = [...LATER_AMENDMENTS.map((row) => row.code), ...NO_MINOR_UNIT];
  expect(onlyThere.toSorted()).toEqual(explained.toSorted());
});

test('our list has only those codes more that were added later', () => {
  const onlyHere = CURRENCY_CODES.filter((code) => !findCurrency(code));
  expect(onlyHere).toEqual(ADDED_LATER.map((row) => row.code));
});

// ISO 4217 minor units of currencies that a storehouse may meet (from memory).
test.for([
  { exponent: 2, currencies: ['USD', 'CAD', 'MXN', 'EUR', 'GBP', 'AUD', 'CHF'] },
  { exponent: 0, currencies: ['JPY', 'KRW', 'VND', 'ISK', 'CLP', 'UGX', 'XOF', 'XAF'] },
  { exponent: 3, currencies: ['BHD', 'KWD', 'OMR', 'JOD', 'TND', 'IQD', 'LYD'] },
  { exponent: 4, currencies: ['CLF', 'UYW'] },
])('$currencies have $exponent decimals', ({ exponent, currencies }) => {
  expect(currencies.map(currencyExponent)).toEqual(currencies.map(() => exponent));
});
