import { expect, test } from 'vitest';
import { keeperSteps } from './keeper-next.ts';

const loan = (id: string, wish: { dueAt: string; isLate?: boolean; blocks?: boolean }) => ({
  ...{ id, itemId: `item ${id}`, itemName: `Thing ${id}`, unitNo: 1, isLate: true, blocks: false },
  ...{ household: { id: 'h', seat: 1, name: 'Hale' } },
  ...wish,
});
const unit = (id: string, wish: Record<string, unknown>) => ({
  ...{ id, itemId: `item ${id}`, itemName: `Thing ${id}`, unitNo: 1, condition: 'ready', dueBackAt: null },
  ...{ missing: [], blockers: [] },
  ...wish,
});
const part = { partId: 'p', name: 'Chuck', pieces: 1, isCritical: true, valueMinorUnits: 0 };

test('what somebody waits for comes first, then what is late, broken, dirty, not whole, due for service', () => {
  const out = [
    loan('a', { dueAt: '2026-09-02T10:00:00Z' }),
    loan('b', { dueAt: '2026-09-03T10:00:00Z', blocks: true }),
    loan('c', { dueAt: '2026-09-01T10:00:00Z' }),
    loan('d', { dueAt: '2026-09-09T10:00:00Z', isLate: false }),
  ];
  const units = [
    unit('e', { blockers: ['service-due'] }),
    unit('f', { missing: [part], blockers: ['critical-part-missing'] }),
    unit('g', { condition: 'dirty' }),
    unit('i', { condition: 'broken', missing: [part] }),
    unit('h', { condition: 'broken' }),
    unit('j', { condition: 'retired' }),
    unit('k', { condition: 'dirty', dueBackAt: '2026-09-09T10:00:00Z' }),
    unit('l', {}),
  ];
  expect(keeperSteps({ out, units }).map(({ kind, key }) => [kind, key])).toEqual([
    ['late-blocking', 'b'],
    ['late', 'c'],
    ['late', 'a'],
    ['broken', 'h'],
    ['broken', 'i'],
    ['dirty', 'g'],
    ['part-missing', 'f'],
    ['service-due', 'e'],
  ]);
  expect(keeperSteps({ out: [], units: [unit('l', {})] })).toEqual([]);
});
