import { fraction } from '@sheafbook/units';
import { expect, test } from 'vitest';
import { type MassMovement, massBalance } from './mass-balance.ts';
import type { VesselKind } from './outside.ts';

const vesselKinds = new Map<string, VesselKind>([
  ['mill', 'supplier'],
  ['bag', 'bag'],
  ['can', 'container'],
  ['changed', 'transformed'],
  ['unexplained', 'unexplained'],
]);
const move = (
  from: string,
  to: string,
  amountGrams: number,
  more: Partial<MassMovement> = {},
): MassMovement => ({
  entryId: `${from}-${to}`,
  reversesEntryId: null,
  source: { vesselId: from, ownerId: 'ashdown' },
  destination: { vesselId: to, ownerId: 'ashdown' },
  amountGrams,
  ...more,
});
const landed = move('mill', 'bag', 1000);
const pour = move('bag', 'can', 600, { entryId: 'pour' });
const undone = move('can', 'bag', 600, { entryId: 'undone', reversesEntryId: 'pour' });
const redone = move('bag', 'can', 600, { entryId: 'redone', reversesEntryId: 'undone' });

test.for([
  { told: 'poured', movements: [landed, pour], pouredGrams: 600 },
  { told: 'poured and undone', movements: [landed, pour, undone], pouredGrams: 0 },
  { told: 'poured, undone and redone', movements: [landed, pour, undone, redone], pouredGrams: 600 },
])('a pour that was $told counts $pouredGrams g', ({ movements, pouredGrams }) => {
  const balance = massBalance({ movements, vesselKinds });
  expect(balance.pouredGrams).toBe(pouredGrams);
  expect(balance.inContainersGrams).toBe(pouredGrams);
});

test('grams that a transform made come in, grams that it took go out', () => {
  const flour = massBalance({ movements: [move('changed', 'bag', 950)], vesselKinds });
  expect([flour.inGrams, flour.outGrams.transformed]).toEqual([950, 0]);
  const wheat = massBalance({ movements: [landed, move('bag', 'changed', 1000)], vesselKinds });
  expect([wheat.inGrams, wheat.outGrams.transformed, wheat.residualGrams]).toEqual([1000, 1000, 0]);
});

test('grams sent back to the supplier never came', () => {
  expect(massBalance({ movements: [landed, move('bag', 'mill', 400)], vesselKinds }).inGrams).toBe(600);
});

test('30 g of 1,000 unexplained leave 97 % reconciled', () => {
  const movements = [landed, move('bag', 'unexplained', 30)];
  expect(massBalance({ movements, vesselKinds }).reconciled).toEqual(fraction(97, 100));
});

test('nothing received is wholly reconciled, and a vessel of unknown kind is refused', () => {
  expect(massBalance({ movements: [], vesselKinds }).reconciled).toEqual(fraction(1));
  expect(() => massBalance({ movements: [move('mill', 'box', 1)], vesselKinds })).toThrow(
    'kind of vessel box',
  );
});
