import { expect, test } from 'vitest';
import { pageFor } from './run-links.ts';

const API = '/api/storehouses/S/buys/B';
const as = (isTreasurer: boolean) => (what: string) => pageFor(`${API}${what}`, { isTreasurer });

test.for([
  ['', '/s/S/buys/B/run'],
  ['/next', '/s/S/buys/B/run'],
  ['/quotes', '/s/S/buys/B/quotes'],
  ['/comparison', '/s/S/buys/B/quotes'],
  ['/fixing', '/s/S/buys/B/fixing'],
  ['/order-consents', '/s/S/buys/B/order'],
  ['/deposits', '/s/S/buys/B/run'],
  ['/deposits/own', '/s/S/buys/B'],
  ['/landing', '/s/S/buys/B/landing'],
])('what the API answers at %s a coordinator sees at %s', ([what = '', page = '']) => {
  expect(as(false)(what)).toBe(page);
});

test('bills, charges and claims are read at the treasurer’s desk, and nowhere by others', () => {
  expect(['/invoices', '/charges', '/claims', '/deposits'].map(as(true))).toEqual([
    '/s/S/books/clearing/B',
    '/s/S/books/clearing/B',
    '/s/S/books/claims',
    '/s/S/books/deposits',
  ]);
  expect(['/invoices', '/charges', '/claims'].map(as(false))).toEqual([null, null, null]);
});

test('whom nobody reached is seen beside what was written', () => {
  expect(pageFor('/api/storehouses/S/notices/N/reach', { isTreasurer: false })).toBe('/s/S/notices/written');
});

test.for(['', '/seals'])('a packing day is seen at its own page, its seals at theirs: “%s”', (part) => {
  const path = `/api/storehouses/S/packing-sessions/D${part}`;
  expect(pageFor(path, { isTreasurer: false })).toBe(`/s/S/packing/D${part}`);
});

test('own containers in doubt are seen at the page that says what to do with each', () => {
  expect(pageFor('/api/storehouses/S/own-doubts', { isTreasurer: false })).toBe('/s/S/shelf/doubts');
});

test.for(['', '?of=common'])('lids of jars are seen at their page: “%s”', (of) => {
  expect(pageFor(`/api/storehouses/S/lids${of}`, { isTreasurer: false })).toBe(`/s/S/shelf/lids${of}`);
});

test('a hold is seen at its own page', () => {
  expect(pageFor('/api/storehouses/S/holds/H', { isTreasurer: false })).toBe('/s/S/holds/H');
});

test('what is about no buy, or has no page, leads nowhere', () => {
  expect(pageFor(null, { isTreasurer: true })).toBeNull();
  expect(as(false)('/something-new')).toBeNull();
});
