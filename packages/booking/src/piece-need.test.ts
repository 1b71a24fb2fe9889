import { expect, test } from 'vitest';
import { needOfPiece } from './index.ts';

const critical = { isCritical: true };
const other = { isCritical: false };

test.for([
  { condition: 'ready', missing: [], isServiceDue: false, need: null },
  { condition: 'ready', missing: [], isServiceDue: true, need: 'service-due' },
  { condition: 'ready', missing: [other], isServiceDue: false, need: 'part-missing' },
  { condition: 'ready', missing: [other], isServiceDue: true, need: 'part-missing' },
  { condition: 'ready', missing: [other, critical], isServiceDue: false, need: 'critical-part-missing' },
  { condition: 'dirty', missing: [critical], isServiceDue: true, need: 'dirty' },
  { condition: 'broken', missing: [critical], isServiceDue: true, need: 'broken' },
  { condition: 'retired', missing: [critical], isServiceDue: true, need: null },
])('$condition with $missing missing, service due $isServiceDue: $need', ({ need, ...piece }) => {
  expect(needOfPiece(piece)).toBe(need);
});
