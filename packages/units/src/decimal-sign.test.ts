import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { settleDecimalSign } from './decimal-sign.ts';
import { compareFractions, fraction } from './fraction.ts';
import { parseMass } from './mass-text.ts';
import { readDecimal } from './number-text.ts';

describe('a number of a sheet', () => {
  test.for([
    { text: '1.250,50', sign: 'comma', settled: '1250.50' },
    { text: '1.250', sign: 'comma', settled: '1250' },
    { text: '1,250', sign: 'comma', settled: '1.250' },
    { text: '1,250', sign: 'point', settled: '1250' },
    { text: '1,250.5', sign: 'point', settled: '1250.5' },
    { text: '12.500 kg', sign: 'comma', settled: '12500 kg' },
    { text: '2 lb 3,5 oz', sign: 'comma', settled: '2 lb 3.5 oz' },
    { text: '1\u00a0250,5', sign: 'comma', settled: '1250.5' },
    { text: ',5', sign: 'comma', settled: '.5' },
    { text: '1/2 bu', sign: 'comma', settled: '1/2 bu' },
    { text: '41.20', sign: undefined, settled: '41.20' },
    { text: '41,20', sign: undefined, settled: '41,20' },
    { text: '1.250.000', sign: undefined, settled: '1.250.000' },
    { text: 'two pails', sign: 'point', settled: 'two pails' },
  ] as const)('$text by the $sign is $settled', ({ text, sign, settled }) => {
    expect(settleDecimalSign(text, sign)).toEqual({ text: settled });
  });

  test.for([
    { text: '1.250', sign: undefined, problem: 'ambiguous-number' },
    { text: '5,443 kg', sign: undefined, problem: 'ambiguous-number' },
    { text: '41.20', sign: 'comma', problem: 'not-a-number' },
    { text: '1,250.50', sign: 'comma', problem: 'not-a-number' },
    { text: '1.2.3', sign: 'point', problem: 'not-a-number' },
    { text: '12,50', sign: 'point', problem: 'not-a-number' },
    { text: '0,250', sign: 'point', problem: 'not-a-number' },
  ] as const)('$text by $sign is refused: $problem', ({ text, sign, problem }) => {
    expect(settleDecimalSign(text, sign)).toEqual({ problem });
  });

  test('means the same, grouped or not, by either sign', () => {
    const anyNumber = fc.record({ whole: fc.nat(), cents: fc.nat(99), isGrouped: fc.boolean() });
    fc.assert(
      fc.property(anyNumber, fc.constantFrom('comma', 'point'), ({ whole, cents, isGrouped }, sign) => {
        const [decimal, group] = sign === 'comma' ? [',', '.'] : ['.', ','];
        const digits = isGrouped ? `${whole}`.replace(/\B(?=(\d{3})+$)/g, group) : `${whole}`;
        const settled = settleDecimalSign(`${digits}${decimal}${`${cents}`.padStart(2, '0')}`, sign);
        expect(settled).toHaveProperty('text');
        const read = readDecimal('text' in settled ? settled.text : '');
        expect(read && compareFractions(read, fraction(whole * 100 + cents, 100))).toBe(0);
      }),
    );
  });

  test('reaches the mass that was meant', () => {
    const settled = settleDecimalSign('12.500 g', 'comma');
    expect('text' in settled && parseMass(settled.text, { defaultUnit: 'kg' })).toMatchObject({
      grams: 12_500,
    });
  });
});
