import { expect, test } from 'vitest';
import { MONEY_KINDS } from './account-key.ts';
import { type Guard, guardOf, respectsGuard } from './guard.ts';
import { OUTSIDE_KINDS } from './outside.ts';

const ownerId = 'the storehouse';

test('what can be counted in the hand never falls below nothing, and deposits never rise above', () => {
  const guards = Object.fromEntries(MONEY_KINDS.map((kind) => [kind, guardOf({ kind, ownerId: null })]));
  const other = { not_below: ['cash_tin', 'supplier_claim', 'supplies', 'common_stock', 'equipment'] };
  for (const kind of other.not_below) expect(guards[kind], kind).toBe('not_below');
  for (const kind of ['buy_deposit', 'loan_deposit']) expect(guards[kind], kind).toBe('not_above');
  const free = Object.entries(guards).filter(([, guard]) => guard === 'none');
  expect(free.length).toBe(MONEY_KINDS.length - 7);
  for (const kind of ['household', 'bank', 'supplier', 'buy_clearing', 'store_fund']) {
    expect(guards[kind], kind).toBe('none');
  }
});

test('a bag, a container and a drawer of lids never hold less than nothing', () => {
  expect(guardOf({ kind: 'mass', ownerId })).toBe('not_below');
  expect(guardOf({ kind: 'mass', ownerId }, null)).toBe('not_below');
  expect(guardOf({ kind: 'pieces', ownerId })).toBe('not_below');
});

test('pieces that nobody owns came from a shop or are used up, and may stand on either side', () => {
  expect(guardOf({ kind: 'pieces', ownerId: null })).toBe('none');
});

test('the supplier gets no more back than it sent; transforms and re-weighs may go either way', () => {
  const guards = OUTSIDE_KINDS.map((kind) => `${kind} ${guardOf({ kind: 'mass', ownerId }, kind)}`);
  expect(guards).toEqual([
    'supplier not_above',
    'eaten not_below',
    'given not_below',
    'animals not_below',
    'composted not_below',
    'spilled not_below',
    'sampled not_below',
    'discarded not_below',
    'transformed none',
    'unexplained none',
    'moisture none',
  ]);
});

test.for<[Guard, number, number, boolean]>([
  ['not_below', 5, 5, true],
  ['not_below', 4, 5, false],
  ['not_above', 5, 5, true],
  ['not_above', 5, 4, false],
  ['none', 0, 9, true],
])('%s with %i in and %i out: %s', ([guard, inflow, outflow, respects]) => {
  expect(respectsGuard(guard, { inflow, outflow })).toBe(respects);
});
