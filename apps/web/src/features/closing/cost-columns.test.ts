import { expect, test } from 'vitest';
import { costColumns, ownersOf } from './cost-columns.ts';
import type { Charges } from './queries.ts';

type Line = Charges['lines'][number];
const line = (costLine: string, parts: Record<string, number>, spare = ''): Line => ({
  ...{ id: costLine, costLine, buyLineId: null, weightSum: 1 },
  minorUnits: Object.values(parts).reduce((sum, part) => sum + part, 0),
  shares: Object.entries(parts).map(([ownerId, minorUnits]) => ({
    ...{ ownerId, minorUnits, weight: 1, gotSpareUnit: ownerId === spare, name: ownerId },
    ...{ isCommonStock: false, seat: ownerId === 'Dell' ? 4 : 1 },
  })),
});

test('what is credited late stands in the column of its cost, and the column comes to what it cost in the end', () => {
  const lines = [
    line('freight:by-weight', { Dell: 420, Ashdown: 1494 }, 'Dell'),
    line('late:freight:by-weight', { Dell: -20, Ashdown: -94 }),
    line('levy', { Ashdown: 10 }),
  ];
  const [freight, levy] = costColumns(lines);
  expect(freight).toMatchObject({ costLine: 'freight:by-weight', minorUnits: 1800 });
  expect(Object.fromEntries(freight?.partOf ?? [])).toEqual({ Dell: 400, Ashdown: 1400 });
  expect([...(freight?.spareOf ?? [])]).toEqual(['Dell']);
  expect(levy?.partOf.get('Dell')).toBeUndefined();
  expect(ownersOf(lines).map(({ ownerId }) => ownerId)).toEqual(['Ashdown', 'Dell']);
});
