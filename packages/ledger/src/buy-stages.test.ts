import { expect, test } from 'vitest';
import { BUY_STAGES, mayMove } from './buy-stages.ts';

// The guard table of job map 2, "the only permitted moves".
const PERMITTED = new Set([
  'planning → gathering',
  'gathering → fixed',
  'fixed → gathering',
  'fixed → ordered',
  'ordered → landed',
  'landed → shared-out',
  'shared-out → closed',
  'planning → called-off',
  'gathering → called-off',
  'fixed → called-off',
  'ordered → called-off',
]);

test.for(BUY_STAGES.flatMap((from) => BUY_STAGES.map((to) => ({ from, to }))))(
  '$from → $to',
  ({ from, to }) => {
    expect(mayMove(from, to)).toBe(PERMITTED.has(`${from} → ${to}`));
  },
);
