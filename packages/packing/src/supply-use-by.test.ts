import { expect, test } from 'vitest';
import { lotsOnHand, spoilingBy } from './supply-use-by.ts';

const CAME = [
  { pieces: 100, useBy: '2026-11-30' },
  { pieces: 50, useBy: null },
  { pieces: 25, useBy: '2027-03-01' },
];

test('the oldest is used first, and what no arrival explains is older than all of them', () => {
  expect(lotsOnHand(CAME, 175)).toEqual(CAME);
  expect(lotsOnHand(CAME, 90)).toEqual([{ pieces: 15, useBy: '2026-11-30' }, ...CAME.slice(1)]);
  expect(lotsOnHand(CAME, 75)).toEqual(CAME.slice(1));
  expect(lotsOnHand(CAME, 10)).toEqual([{ pieces: 10, useBy: '2027-03-01' }]);
  expect(lotsOnHand(CAME, 0)).toEqual([]);
  expect(lotsOnHand(CAME, 180)).toEqual([{ pieces: 5, useBy: null }, ...CAME]);
  expect(() => lotsOnHand(CAME, 0.5)).toThrow('pieces on hand');
});

test('a lot is good on its last day; what passes before the day is told apart from what is past', () => {
  const by = (today: string, onDay: string) => spoilingBy(CAME, { today, onDay });
  expect(by('2026-11-30', '2026-11-30')).toEqual([]);
  expect(by('2026-11-30', '2026-12-01')).toEqual([{ standing: 'passes', useBy: '2026-11-30', pieces: 100 }]);
  expect(by('2026-12-01', '2027-03-01')).toEqual([{ standing: 'past', useBy: '2026-11-30', pieces: 100 }]);
  expect(by('2026-12-01', '2027-03-02')).toEqual([
    { standing: 'past', useBy: '2026-11-30', pieces: 100 },
    { standing: 'passes', useBy: '2027-03-01', pieces: 25 },
  ]);
  expect(by('2027-06-01', '2026-12-01')).toEqual([{ standing: 'past', useBy: '2026-11-30', pieces: 125 }]);
});
