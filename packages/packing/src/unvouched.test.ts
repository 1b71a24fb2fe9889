import fc from 'fast-check';
import { expect, test } from 'vitest';
import { listUnvouched } from './unvouched.ts';

const good = (machineId: string, closedThrough: number, goodThrough = closedThrough) => ({
  ...{ machineId, closedThrough, goodThrough },
});
const bad = (machineId: string, closedThrough: number) => ({ machineId, closedThrough, goodThrough: null });

test.for([
  {
    because: 'nobody ever checked',
    ...{ serials: [1, 2, 3], checks: [] },
    left: [{ machineId: null, fromSerial: 1, toSerial: 3 }],
  },
  { because: 'the last one passed', serials: [1, 2, 3], checks: [good('a', 0), good('a', 3)], left: [] },
  {
    because: 'more was closed since',
    ...{ serials: [1, 2, 3, 4, 5], checks: [good('a', 0), good('a', 3)] },
    left: [{ machineId: 'a', fromSerial: 4, toSerial: 5 }],
  },
  {
    because: 'a fault stands good for nothing',
    ...{ serials: [1, 2, 3], checks: [good('a', 1), bad('a', 3)] },
    left: [{ machineId: 'a', fromSerial: 2, toSerial: 3 }],
  },
  {
    because: 'an earlier one opened later takes nothing back',
    ...{ serials: [1, 2, 3], checks: [good('a', 3), good('a', 3, 1)] },
    left: [],
  },
  {
    because: 'what another machine closed before is not vouched for by the one that took over at 2',
    ...{ serials: [1, 2, 3, 4], checks: [good('a', 1), good('b', 2), good('b', 4)] },
    left: [{ machineId: 'a', fromSerial: 2, toSerial: 2 }],
  },
  {
    because: 'both have closed something since',
    ...{ serials: [1, 2, 3, 4], checks: [good('a', 0), good('b', 2)] },
    left: [
      { machineId: 'a', fromSerial: 1, toSerial: 2 },
      { machineId: 'b', fromSerial: 3, toSerial: 4 },
    ],
  },
  { because: 'nothing was closed', serials: [], checks: [], left: [] },
])('$because', ({ serials, checks, left }) => {
  expect(listUnvouched(serials, checks)).toEqual(left);
});

test('one machine: what is left is what was closed after its furthest good check, for any checks', () => {
  const someChecks = fc.array(fc.record({ step: fc.nat(5), passed: fc.boolean() }), { maxLength: 8 });
  fc.assert(
    fc.property(fc.nat(40), someChecks, (closed, steps) => {
      let at = 0;
      const checks = steps.map(({ step, passed }) => {
        at = Math.min(closed, at + step);
        return { machineId: 'a', closedThrough: at, goodThrough: passed ? at : null };
      });
      const serials = Array.from({ length: closed }, (_, index) => index + 1);
      const through = Math.max(0, ...checks.map(({ goodThrough }) => goodThrough ?? 0));
      const left = listUnvouched(serials, checks);
      if (through >= closed) expect(left).toEqual([]);
      else expect(left).toMatchObject([{ fromSerial: through + 1, toSerial: closed }]);
    }),
  );
});

test('serials and checks that run backwards are no log', () => {
  expect(() => listUnvouched([2, 1], [])).toThrow('serials rise');
  expect(() => listUnvouched([1], [good('a', 2), good('a', 1)])).toThrow('checks come in their order');
});
