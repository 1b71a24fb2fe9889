import { expect, test } from 'vitest';
import { CONTAINER_KINDS, findContainerKind } from './container-kind.ts';

test('every container kind has its own code, both names, a whole capacity and a source', () => {
  expect(new Set(CONTAINER_KINDS.map((row) => row.kindCode)).size).toBe(CONTAINER_KINDS.length);
  expect(new Set(CONTAINER_KINDS.map((row) => row.names.es)).size).toBe(CONTAINER_KINDS.length);
  const lacking = CONTAINER_KINDS.filter((row) => {
    return (
      !Number.isSafeInteger(row.capacityMicrolitres) || row.capacityMicrolitres <= 0 || row.source === ''
    );
  });
  expect(lacking).toEqual([]);
});

test('no tare is claimed before someone has weighed one', () => {
  expect(CONTAINER_KINDS.filter((row) => row.tareGrams !== null)).toEqual([]);
});

test('a kind is found by its code, and an unknown code finds nothing', () => {
  expect(findContainerKind('can-no-10')).toMatchObject({ capacityMicrolitres: 3_108_180, perCarton: 6 });
  expect(findContainerKind('bathtub')).toBeUndefined();
});
