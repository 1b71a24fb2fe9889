import { expect, test } from 'vitest';
import { fetchersOf, type PickUp, type Piece } from './fetchers.ts';

const households = ['Ashdown', 'Birchall', 'Corran'].map((name, at) => ({ id: name, name, seat: at + 1 }));
const piece = (householdId: string, grams: number): Piece => ({
  ...{
    householdId,
    grams,
    lineId: 'l',
    bagId: `b${householdId}`,
    bagCode: 'K7M4Q',
    bagNo: 1,
    isOnHold: false,
  },
});
const pickUp = (householdId: string, startsAt: string, collectedAt: string | null): PickUp => ({
  ...{ id: `p${householdId}`, buyId: 'buy', householdId, seat: 0, name: '', startsAt, endsAt: startsAt },
  ...{ signedBy: '', handedOverBy: null, collectedAt, version: 1, pieces: [] },
});

test('whoever still has to fetch stands first, the next hour first, and whoever is done stands last', () => {
  const fetchers = fetchersOf({
    waiting: [piece('Ashdown', 5), piece('Corran', 7)],
    pickUps: [
      pickUp('Birchall', '2026-10-03T15:00:00Z', '2026-10-03T15:10:00Z'),
      pickUp('Corran', '2026-10-04T15:00:00Z', null),
    ],
    households,
    uncollected: {
      uncollectedDays: 14,
      warning: '',
      waiting: [{ ...piece('Ashdown', 5), fetchUntil: '2026-10-17' }],
    },
  });
  expect(fetchers.map(({ name, until }) => [name, until])).toEqual([
    ['Corran', null],
    ['Ashdown', '2026-10-17'],
    ['Birchall', null],
  ]);
  expect(fetchers[0]?.open?.id).toBe('pCorran');
  expect(fetchers[2]?.fetched).toHaveLength(1);
});
