import { assert } from './assert.ts';

// ISO 4217 list one as published on 2024-06-25, with its amendments 176 (XCG for ANG, 31 March 2025), 178 (CUC
// withdrawn) and 179 (XAD, 12 May 2025), and without BGN, which the euro replaced on 1 January 2026 (from memory).
// Left out on purpose: the codes that the list gives no minor unit, such as XAU and XXX. No books are kept in them.
const CODES_BY_EXPONENT = {
  0: 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF',
  2: `AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD CDF CHE CHF
    CHW CNY COP COU CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF
    IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN
    MXV MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS
    SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD USN UYU UZS VED VES WST XAD XCD XCG YER ZAR ZMW
    ZWG`,
  3: 'BHD IQD JOD KWD LYD OMR TND',
  4: 'CLF UYW',
} as const;

/** How many decimals a currency has. Units: decimal places. Errors: none. */
export type CurrencyExponent = keyof typeof CODES_BY_EXPONENT;

const EXPONENTS: readonly CurrencyExponent[] = [0, 2, 3, 4];

const EXPONENT_OF_CODE = new Map(
  EXPONENTS.flatMap((exponent) => CODES_BY_EXPONENT[exponent].split(/\s+/).map((code) => [code, exponent])),
);

/**
 * The codes that a storehouse may keep its books in, in alphabetical order: the active ones that have minor units.
 * Units: none; three capitals each. Errors: none. Source: ISO 4217 list one, see the note at the table.
 */
export const CURRENCY_CODES: readonly string[] = [...EXPONENT_OF_CODE.keys()].toSorted();

/** Whether a text is an active ISO 4217 code with minor units, in capitals. Units: none. Errors: none. */
export function isCurrencyCode(code: string): boolean {
  return EXPONENT_OF_CODE.has(code);
}

/**
 * How many decimals a currency's minor unit stands for: 2 for most, 0 for yen and won, 3 for dinars, 4 for two funds.
 * Units: decimal places. Errors: AssertionError when the code is unknown. Source: ISO 4217 list one.
 */
export function currencyExponent(code: string): CurrencyExponent {
  const exponent = EXPONENT_OF_CODE.get(code);
  assert(exponent !== undefined, `${code} is no currency that books are kept in`);
  return exponent;
}
