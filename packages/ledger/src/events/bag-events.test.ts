import { expect, test } from 'vitest';
import {
  bagLanded,
  bagReceiptCorrected,
  shareAwarded,
  shareReturned,
  uncollectedTaken,
} from './bag-events.ts';

const inBag = { lotId: 'wheat', bagVesselId: 'bag-1', unassignedOwnerId: 'nobody' };

test('a bag that lands comes from the supplier and is nobody’s yet', () => {
  const [landed] = bagLanded({ ...inBag, supplierVesselId: 'mill', amountGrams: 22_680 });
  expect(landed).toEqual({
    unit: { kind: 'lot', lotId: 'wheat' },
    source: { kind: 'mass', vesselId: 'mill', ownerId: 'nobody', causeId: null },
    destination: { kind: 'mass', vesselId: 'bag-1', ownerId: 'nobody', causeId: null },
    amount: 22_680,
  });
});

test.for([
  { bookedGrams: 22_680, weighedGrams: 22_400, moved: [['bag-1', 'mill', 280]] },
  { bookedGrams: 22_400, weighedGrams: 22_680, moved: [['mill', 'bag-1', 280]] },
  { bookedGrams: 22_680, weighedGrams: 22_680, moved: [] },
])(
  'a bag booked with $bookedGrams g and weighed with $weighedGrams g is put right',
  ({ moved, ...weights }) => {
    const drafts = bagReceiptCorrected({ ...inBag, supplierVesselId: 'mill', ...weights });
    expect(
      drafts.map(({ source, destination, amount }) => [source.vesselId, destination.vesselId, amount]),
    ).toEqual(moved);
  },
);

test('a share changes the owner of grams and leaves them in the bag; returning it is the way back', () => {
  const share = { ...inBag, ownerId: 'ashdown', amountGrams: 5_000 };
  const [awarded] = shareAwarded(share);
  const [returned] = shareReturned(share);
  expect(awarded?.source.vesselId).toBe(awarded?.destination.vesselId);
  expect(awarded?.destination.ownerId).toBe('ashdown');
  expect(returned?.source).toEqual(awarded?.destination);
  expect(returned?.destination).toEqual(awarded?.source);
});

test('a share that was never fetched goes from its household to common stock', () => {
  const never = { lotId: 'wheat', bagVesselId: 'bag-1', householdId: 'dell', commonOwnerId: 'common' };
  const [taken] = uncollectedTaken({ ...never, amountGrams: 5_000 });
  expect([taken?.source.ownerId, taken?.destination.ownerId]).toEqual(['dell', 'common']);
});
