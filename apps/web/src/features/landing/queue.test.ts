import { expect, test } from 'vitest';
import { isLastWord } from '../../api/problem.ts';
import { type Act, EMPTY_QUEUE, type Event, isOfDelivery, mayDrop, nextToSend, step } from './queue.ts';

const facts = { supplierId: 's', carrier: '', arrivedOn: '2026-10-31', countedBy: '', carrierNote: '' };
const delivery: Act = { kind: 'delivery', localId: 'here-1', facts };
const bag = (grossGrams: number): Act => ({
  kind: 'bag',
  unit: 'kg',
  deliveryId: 'here-1',
  bag: {
    ...{
      bagOfferId: 'o',
      supplierMark: '',
      grossGrams,
      tareGrams: 250,
      condition: 'dry',
      decision: 'accepted',
    },
    ...{ note: '', isExemptFromWeighing: false },
  },
});
const wrote = (id: string, act: Act): Event => ({ type: 'wrote', id, at: '2026-10-31T15:00:00Z', act });
const after = (...events: Event[]) => events.reduce(step, EMPTY_QUEUE);
const three = [wrote('a', delivery), wrote('b', bag(20_000)), wrote('c', bag(21_000))];

test('acts leave in the order in which they were written, a bag under the id that the book gave its lorry', () => {
  const begun = after(...three);
  expect(nextToSend(begun)?.id).toBe('a');
  const landed = step(begun, { type: 'sent', id: 'a', bookId: 'book-9' });
  expect(nextToSend(landed)).toMatchObject({
    id: 'b',
    act: { deliveryId: 'book-9', bag: { grossGrams: 20_000 } },
  });
  expect(landed.written.map(({ id }) => id)).toEqual(['b', 'c']);
  expect(isOfDelivery(landed, bag(1), 'book-9')).toBe(true);
  expect(nextToSend(step(landed, { type: 'sent', id: 'b' }))?.id).toBe('c');
});

test('nothing passes a refused reading, which keeps its place, its time and its number until it is put right', () => {
  const refusal = { code: 'does-not-add-up', words: 'Read the scale again.' };
  const refused = after(
    ...three,
    { type: 'sent', id: 'a', bookId: 'book-9' },
    { type: 'refused', id: 'b', refusal },
  );
  expect(nextToSend(refused)).toBeUndefined();
  expect(refused.written[0]).toMatchObject({ act: { bag: { grossGrams: 20_000 } }, refusal });
  const mended = step(refused, { type: 'mended', id: 'b', newId: 'd', act: bag(22_930) });
  expect(mended.written.map(({ id }) => id)).toEqual(['d', 'c']);
  expect(nextToSend(mended)).toMatchObject({
    id: 'd',
    at: '2026-10-31T15:00:00Z',
    act: { bag: { grossGrams: 22_930 } },
  });
});

test('a lorry cannot be thrown away under bags that wait for it; a reading can', () => {
  const begun = after(...three);
  expect(mayDrop(begun, 'a')).toBe(false);
  expect(step(begun, { type: 'dropped', id: 'a' })).toBe(begun);
  expect(step(begun, { type: 'dropped', id: 'c' }).written.map(({ id }) => id)).toEqual(['a', 'b']);
  expect(mayDrop(after(wrote('a', delivery)), 'a')).toBe(true);
});

test('writing one act twice counts once', () => {
  expect(after(...three, three[2] as Event).written).toHaveLength(3);
});

test('only a last word of the server refuses: a lost session or a busy server means later', () => {
  expect([400, 404, 409, 422].map(isLastWord)).toEqual([true, true, true, true]);
  expect([0, 401, 408, 429, 500, 503].map(isLastWord)).toEqual([false, false, false, false, false, false]);
});
