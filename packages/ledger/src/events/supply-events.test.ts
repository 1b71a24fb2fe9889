import fc from 'fast-check';
import { expect, test } from 'vitest';
import { averageCost, piecesCameIn, piecesWentOut, suppliesCounted, suppliesPaid } from './supply-events.ts';

const pieces = { supplyId: 'lids', ownerId: 'store', pieces: 40 };

test('pieces come from outside into the store and leave it for the session that used them', () => {
  const [came] = piecesCameIn(pieces);
  expect(came).toMatchObject({
    ...{ unit: { kind: 'supply', supplyId: 'lids' }, amount: 40 },
    ...{ source: { kind: 'pieces', ownerId: null }, destination: { kind: 'pieces', ownerId: 'store' } },
  });
  const [went] = piecesWentOut({ ...pieces, sessionId: 'day' });
  expect(went).toMatchObject({
    source: { ownerId: 'store' },
    destination: { ownerId: null, causeId: 'day' },
  });
});

test('whoever pays for supplies is credited: a till, the household that went to the shop, or the fund for what was there', () => {
  const credited = (paidBy: Parameters<typeof suppliesPaid>[0]['paidBy']) =>
    suppliesPaid({ supplyId: 'lids', paidBy, amountMinorUnits: 500 })[0]?.source;
  expect(credited({ till: 'cash_tin' })).toMatchObject({ kind: 'cash_tin' });
  expect(credited({ householdId: 'Dell' })).toMatchObject({ kind: 'household', ownerId: 'Dell' });
  expect(credited('store-fund')).toMatchObject({ kind: 'store_fund' });
});

test('a count that finds less is a loss, one that finds more takes a loss back, and one that agrees is nothing', () => {
  const of = (differenceMinorUnits: number) => suppliesCounted({ supplyId: 'lids', differenceMinorUnits })[0];
  expect(of(-30)).toMatchObject({
    amount: 30,
    destination: { kind: 'losses' },
    source: { kind: 'supplies' },
  });
  expect(of(30)).toMatchObject({ amount: 30, destination: { kind: 'supplies' }, source: { kind: 'losses' } });
  expect(of(0)).toBeUndefined();
});

test('pieces cost their part of what all of them cost', () => {
  expect(averageCost({ pieces: 100, minorUnits: 1_250, wanted: 40 })).toBe(500);
  expect(averageCost({ pieces: 3, minorUnits: 100, wanted: 1 })).toBe(33);
  expect(averageCost({ pieces: 3, minorUnits: 100, wanted: 6 })).toBe(200);
  expect(averageCost({ pieces: 0, minorUnits: 0, wanted: 6 })).toBe(0);
});

test('used up in any steps, the last piece takes the last cent', () => {
  const steps = fc.array(fc.integer({ min: 1, max: 50 }), { minLength: 1, maxLength: 12 });
  fc.assert(
    fc.property(steps, fc.integer({ min: 0, max: 1_000_000 }), (uses, minorUnits) => {
      let left = { pieces: uses.reduce((sum, use) => sum + use, 0), minorUnits };
      for (const wanted of uses) {
        const cost = averageCost({ ...left, wanted });
        left = { pieces: left.pieces - wanted, minorUnits: left.minorUnits - cost };
        expect(left.minorUnits).toBeGreaterThanOrEqual(0);
      }
      expect(left).toEqual({ pieces: 0, minorUnits: 0 });
    }),
  );
});
