import { expect, test } from 'vitest';
import { dryIceOf } from './dry-ice.ts';

const PAIL = { treatment: 'dry-ice', capacityMicrolitres: 18_927_059 } as const; // 5 US gallons

test('a run of pails takes an ounce a gallon in each, and its lids wait an hour', () => {
  expect(dryIceOf({ ...PAIL, containers: 3 })).toEqual({ gramsEach: 142, gramsInAll: 426, waitMinutes: 60 });
  expect(dryIceOf({ ...PAIL, containers: 0 })).toMatchObject({ gramsEach: 142, gramsInAll: 0 });
});

test('no other treatment takes any, and half a pail is no count', () => {
  for (const treatment of ['oxygen-absorber', 'vacuum', 'none'] as const)
    expect(dryIceOf({ ...PAIL, treatment, containers: 3 })).toBeNull();
  expect(() => dryIceOf({ ...PAIL, containers: 0.5 })).toThrow('containers');
});
