import { expect, test } from 'vitest';
import { en } from '../../text/en/said.ts';
import { es } from '../../text/es/said.ts';
import { readSaid, saidWordsOf } from './said-bag.ts';

const nothing = { bagNo: null, condition: null, reading: null, unit: null, isKept: false, strange: null };

test.for([
  ['bag seven, dry, twenty-two point seven', { bagNo: 7, condition: 'dry', reading: '22.7' }],
  ['Bag 7, dry, 22.7', { bagNo: 7, condition: 'dry', reading: '22.7' }],
  ['Bag 7 torn 22.7kg keep', { bagNo: 7, condition: 'torn', reading: '22.7', unit: 'kg', isKept: true }],
  ['bag seven twenty-two point six eight', { bagNo: 7, reading: '22.68' }],
  ['bag twelve wet fifty pounds', { bagNo: 12, condition: 'wet', reading: '50', unit: 'lb' }],
  ['sack twenty one one hundred and five point oh five', { bagNo: 21, reading: '105.05' }],
  ['dry fifty', { condition: 'dry', reading: '50' }],
  ['dry no, torn', { condition: 'torn', strange: 'no' }],
  ['twenty two point seven twenty three point one', { reading: '23.1' }],
  ['bag', {}],
  ['', {}],
  ['purple', { strange: 'purple' }],
] as const)('“%s” is understood', ([text, heard]) => {
  expect(readSaid(text, saidWordsOf(en))).toEqual({ ...nothing, ...heard });
});

test.for([
  ['saco siete, seco, veintidós coma siete', { bagNo: 7, condition: 'dry', reading: '22.7' }],
  ['Saco 7, seco, 22,7', { bagNo: 7, condition: 'dry', reading: '22.7' }],
  [
    'saco treinta y dos mojado ciento cinco libras guardar',
    {
      ...{ bagNo: 32, condition: 'wet', reading: '105', unit: 'lb', isKept: true },
    },
  ],
  [
    'bolsa uno huele cuarenta y nueve coma cero cinco kilos',
    {
      ...{ bagNo: 1, condition: 'odour', reading: '49.05', unit: 'kg' },
    },
  ],
] as const)('“%s” is understood in Spanish', ([text, heard]) => {
  expect(readSaid(text, saidWordsOf(es))).toEqual({ ...nothing, ...heard });
});

/** Numbers as people say them, made by hand the other way round. */
const ONES =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  );
const TENS = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];
const inWords = (n: number): string =>
  n < 20
    ? (ONES[n] ?? '')
    : n < 100
      ? [TENS[Math.floor(n / 10)], n % 10 === 0 ? '' : ONES[n % 10]].filter(Boolean).join('-')
      : [`${ONES[Math.floor(n / 100)]} hundred`, n % 100 === 0 ? '' : `and ${inWords(n % 100)}`]
          .filter(Boolean)
          .join(' ');

test('every whole number under a thousand is understood as it is said', () => {
  const english = saidWordsOf(en);
  for (let n = 0; n < 1000; n += 1)
    expect([n, readSaid(`dry ${inWords(n)}`, english).reading]).toEqual([n, String(n)]);
});
