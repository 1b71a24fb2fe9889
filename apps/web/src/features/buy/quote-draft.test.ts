import { expect, test } from 'vitest';
import { type QuoteDraft, readQuote } from './quote-draft.ts';

const DRAFT: QuoteDraft = {
  ...{
    supplierId: 'mill',
    supplierName: '',
    supplierContact: '',
    reference: 'MH 1',
    validUntil: '2026-10-26',
  },
  ...{ leadDays: '6', cropYear: '2026', moistureNote: '9.4 %', foreignPriceNote: '' },
  ...{ minimumGoods: '250', minimumMass: '', freeFrom: '600.00' },
  steps: [
    { from: '0', price: '95,00' },
    { from: '500 lb', price: '120' },
  ],
  offers: [
    {
      ...{ buyLineId: 'wheat', bagSize: '50', breakKind: 'all-units', mostBags: '' },
      breaks: [
        { fromBags: '1', price: '27.00' },
        { fromBags: '10', price: '25,50' },
      ],
    },
  ],
};

test('what was typed becomes whole cents, grams and bags', () => {
  const { terms, unread } = readQuote(DRAFT, 'lb', 'USD');
  expect(unread).toEqual({});
  expect(terms).toMatchObject({
    minimumGoodsMinorUnits: 25_000,
    minimumGrams: 0,
    // 500 lb are 226,796.185 g, rounded once.
    freightSteps: [
      { fromGrams: 0, minorUnits: 9500 },
      { fromGrams: 226_796, minorUnits: 12_000 },
    ],
    freightFreeFromMinorUnits: 60_000,
    leadDays: 6,
    cropYear: 2026,
  });
  expect(terms.offers[0]).toMatchObject({
    bagSize: 50,
    mostBags: null,
    breaks: [
      { fromBags: 1, bagPriceMinorUnits: 2700 },
      { fromBags: 10, bagPriceMinorUnits: 2550 },
    ],
  });
});

test('every field that can’t be read is named as the server would name it', () => {
  const offer = { ...DRAFT.offers[0], bagSize: 'fifty', breaks: [{ fromBags: '0', price: '' }] };
  const { unread } = readQuote(
    {
      ...DRAFT,
      ...{ supplierId: '', validUntil: '', minimumMass: 'a lot', cropYear: 'last year', freeFrom: '-5' },
      steps: [{ from: 'here', price: 'cheap' }],
      offers: [offer as QuoteDraft['offers'][number]],
    },
    'lb',
    'USD',
  );
  expect(unread).toEqual({
    supplierId: 'supplier',
    validUntil: 'day',
    minimumGrams: 'mass',
    cropYear: 'count',
    freightFreeFromMinorUnits: 'money',
    'freightSteps.0.fromGrams': 'mass',
    'freightSteps.0.minorUnits': 'money',
    'offers.0.bagSize': 'count',
    'offers.0.breaks.0.fromBags': 'count',
    'offers.0.breaks.0.bagPriceMinorUnits': 'money',
  });
});

test('a new supplier needs its name, and left-out terms are none', () => {
  const named = { ...DRAFT, supplierId: 'new', supplierName: 'Pell & Daughter' };
  expect(readQuote(named, 'lb', 'USD').unread).toEqual({});
  expect(readQuote({ ...named, supplierName: ' ' }, 'lb', 'USD').unread).toEqual({ supplierId: 'supplier' });
  const bare = { ...DRAFT, leadDays: '', cropYear: '', minimumGoods: '', freeFrom: '', steps: [] };
  expect(readQuote(bare, 'lb', 'USD').terms).toMatchObject({
    ...{ leadDays: 0, cropYear: null, minimumGoodsMinorUnits: 0 },
    ...{ freightFreeFromMinorUnits: null, freightSteps: [] },
  });
});
