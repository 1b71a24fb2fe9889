import { expect, test } from 'vitest';
import { massAccount } from '../mass-account.ts';
import {
  composted,
  discarded,
  fedToAnimals,
  given,
  poured,
  sampled,
  spilled,
  takenToEat,
  takenToKitchen,
} from './vessel-events.ts';

const wheat = { lotId: 'wheat', ownerId: 'ashdown', amountGrams: 2600 };

test('a pour leaves its grams with their owner', () => {
  const [pour] = poured({ ...wheat, bagVesselId: 'bag-1', containerVesselId: 'can-1' });
  expect(pour).toEqual({
    unit: { kind: 'lot', lotId: 'wheat' },
    source: massAccount('bag-1', 'ashdown'),
    destination: massAccount('can-1', 'ashdown'),
    amount: 2600,
  });
});

test('what is taken to the kitchen stays with its household, in the vessel that has its id', () => {
  const { ownerId, ...grams } = wheat;
  const [taken] = takenToKitchen({ ...grams, containerVesselId: 'can-1', householdId: ownerId });
  expect(taken).toMatchObject({
    source: massAccount('can-1', 'ashdown'),
    destination: massAccount('ashdown', 'ashdown'),
    amount: 2600,
  });
});

test.for([
  ['eaten', takenToEat],
  ['discarded', discarded],
  ['composted', composted],
  ['fed to animals', fedToAnimals],
  ['spilled', spilled],
  ['sampled', sampled],
  ['given', given],
] as const)('grams that are %s leave the can and stay in the account of whoever owned them', ([, leave]) => {
  const [left] = leave({ ...wheat, fromVesselId: 'can-1', outsideVesselId: 'outside' });
  expect(left?.source).toEqual(massAccount('can-1', 'ashdown'));
  expect(left?.destination).toEqual(massAccount('outside', 'ashdown'));
});
