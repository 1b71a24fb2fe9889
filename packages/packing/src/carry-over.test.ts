import { expect, test } from 'vitest';
import { carryOvers, type LinePour, metOnLine } from './carry-over.ts';

const pour = (serial: number, carries: readonly string[], more: Partial<LinePour> = {}): LinePour => ({
  ...{ containerId: `can ${serial}`, sessionId: 'saturday', line: 1, serial, carries },
  ...more,
});
const reached =
  (...ids: readonly string[]) =>
  (containerId: string) =>
    ids.includes(containerId);
const wheat = ['wheat', 'gluten'];

test('what ran after it on its line that day is named with what it may have got, and what ran before is not', () => {
  const day = [pour(1, []), pour(2, wheat), pour(3, wheat), pour(4, []), pour(5, ['soybeans'])];
  expect(carryOvers(day, reached('can 2'))).toEqual([
    { containerId: 'can 3', afterContainerId: 'can 2', newAllergens: [] },
    { containerId: 'can 4', afterContainerId: 'can 2', newAllergens: wheat },
    { containerId: 'can 5', afterContainerId: 'can 2', newAllergens: wheat },
  ]);
});

test('another line and another day got nothing of it', () => {
  const others = [
    pour(2, wheat),
    pour(3, [], { line: 2, containerId: 'other line' }),
    pour(3, [], { sessionId: 'sunday', containerId: 'other day' }),
  ];
  expect(carryOvers(others, reached('can 2'))).toEqual([]);
});

test('two reached foods add up, in whatever order the pours are told', () => {
  const day = [pour(3, []), pour(2, ['soybeans']), pour(1, wheat)];
  expect(carryOvers(day, reached('can 1', 'can 2'))).toEqual([
    { containerId: 'can 3', afterContainerId: 'can 2', newAllergens: ['wheat', 'gluten', 'soybeans'] },
  ]);
});

test('a container met what its line closed before it that day, whosever it was, and never what is its own', () => {
  const day = [
    ...[pour(4, ['gluten']), pour(1, []), pour(2, wheat), pour(3, ['soybeans'])],
    pour(9, [], { line: 2, containerId: 'other line' }),
    pour(9, [], { sessionId: 'sunday', containerId: 'other day' }),
  ];
  expect(Object.fromEntries(metOnLine(day))).toEqual({
    ...{ 'can 1': [], 'can 2': [], 'can 3': wheat, 'can 4': ['wheat', 'soybeans'] },
    ...{ 'other line': [], 'other day': [] },
  });
});
