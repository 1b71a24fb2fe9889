import { expect, test } from 'vitest';
import type { Waiting } from '../../api/outbox.ts';
import type { CheckMade, LogAct } from '../packing/log-act.ts';
import type { Limit, Machine } from './queries.ts';
import { machinesHere } from './watch-here.ts';

const MEASURES = {
  ...{ widthMils: 115, thicknessMils: 58, countersinkMils: 125, coverHookMils: 75, bodyHookMils: 78 },
};
const limit: Limit = {
  ...{ containerKindId: 'k', widthLeast: 110, widthMost: 120, thicknessLeast: 55, thicknessMost: 62 },
  ...{ countersinkLeast: 120, countersinkMost: 130, overlapPercent: 55, lidPlate: 10, bodyPlate: 9 },
  source: 'an invented maker’s sheet',
};
const seamer = { id: 'm', name: 'Seamer', kind: 'can-seamer', outSince: null } as Machine;
const checked = (minute: number, wish: Partial<CheckMade> = {}, refusal: string | null = null) => {
  const at = `2026-09-19T15:${String(minute).padStart(2, '0')}:00.000Z`;
  const json = {
    ...{ machineId: 'm', sessionId: 's', line: 1, serial: null, containerKindId: 'k', how: 'teardown' },
    ...{ looksGood: true, measures: MEASURES, checkedAt: at, ...wish },
  } as CheckMade;
  return { id: String(minute), at, act: { kind: 'check', json }, refusal } satisfies Waiting<LogAct>;
};
const THICK = { measures: { ...MEASURES, thicknessMils: 66 }, serial: 5 };
const outSince = (machine: Machine, ...waiting: Waiting<LogAct>[]) =>
  machinesHere({ machines: [machine], limits: [limit] }, waiting)[0]?.outSince;

test('a seam that is thicker than its maker allows stops its machine on the phone, and three good trials let it run', () => {
  expect(outSince(seamer, checked(1))).toBeNull();
  expect(outSince(seamer, checked(1, THICK))).toBe('2026-09-19T15:01:00.000Z');
  expect(outSince(seamer, checked(1, THICK), checked(2), checked(3))).toBe('2026-09-19T15:01:00.000Z');
  expect(outSince(seamer, checked(1, THICK), checked(2), checked(3), checked(4))).toBeNull();
});

test('a width that no seam has says nothing of its machine, and breaks nothing', () => {
  const narrow = checked(2, { measures: { ...MEASURES, widthMils: 29 } });
  expect(outSince(seamer, narrow)).toBeNull();
  expect(outSince(seamer, checked(1, THICK), narrow, checked(3), checked(4))).toBe(
    '2026-09-19T15:01:00.000Z',
  );
});

test('a machine that is out by the book runs after three good trials on the phone; what was refused counts for nothing', () => {
  const out = { ...seamer, outSince: '2026-09-19T14:00:00.000Z' };
  expect(outSince(out, checked(1), checked(2))).toBe(out.outSince);
  expect(outSince(out, checked(1), checked(2), checked(3))).toBeNull();
  expect(outSince(out, checked(1), checked(2, {}, 'The line has closed none.'), checked(3))).toBe(
    out.outSince,
  );
  expect(outSince(seamer, checked(1, { looksGood: false }, 'The line has closed none.'))).toBeNull();
});
