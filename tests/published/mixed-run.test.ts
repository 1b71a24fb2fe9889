import { shareMixedRun } from '@sheafbook/packing';
import { expect, test } from 'vitest';

/* Job map, sections 6 and 7.7: the lot of 133,812 g, split 115/100/50/30 lb, at 2,600 g a can. */
const AWARDS = [52_164, 45_360, 22_680, 13_608];

test('the worked lot fills 51 cans where it is mixed, and 50 where it is not', () => {
  const parts = AWARDS.map((putInGrams, at) => ({ householdId: `H${at + 1}`, seat: at + 1, putInGrams }));
  const { containers, leftGrams, shares } = shareMixedRun(parts, 2600);
  expect(shares.map(({ aloneContainers }) => aloneContainers)).toEqual([20, 17, 8, 5]); // 50 in the job map
  // 133,812 = 51 × 2,600 + 1,212. Quotas 19.88, 17.29, 8.64, 5.19: the two cans beyond 49 go to .88 and .64.
  expect([containers, leftGrams]).toEqual([51, 1212]);
  expect(shares.map((share) => share.containers)).toEqual([20, 17, 9, 5]);
  // 1,212 over the same weights: 472.48, 410.85, 205.42, 123.25; the two grams beyond 1,210 go to .85 and .48.
  expect(shares.map((share) => share.leftGrams)).toEqual([473, 411, 205, 123]);
  // 20 × 2,600 + 473 − 52,164 = 309, and so on; what two gave two got.
  expect(shares.map(({ gotGrams }) => gotGrams)).toEqual([309, -749, 925, -485]);
});
