import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  areInConflict,
  freeTimes,
  type Interval,
  isFree,
  isOutAndLate,
  NOBODY_KNOWS_MS,
  reckonedTime,
  unitFor,
} from './index.ts';

const NONE = { preMs: 0, postMs: 0 };

describe('what is out and past its time', () => {
  test.for([
    { says: 'booked and not fetched', isOut: false, endMs: 10, nowMs: 20, isLate: false },
    { says: 'out and not due yet', isOut: true, endMs: 20, nowMs: 10, isLate: false },
    { says: 'out and due at this very moment', isOut: true, endMs: 20, nowMs: 20, isLate: false },
    { says: 'out and due a moment ago', isOut: true, endMs: 20, nowMs: 21, isLate: true },
    { says: 'out and due long ago', isOut: true, endMs: 20, nowMs: 2_000_000_000_000, isLate: true },
  ])('$says: late is $isLate', ({ isOut, endMs, nowMs, isLate }) => {
    const booking = { startMs: 5, endMs, isOut };
    expect(isOutAndLate(booking, nowMs)).toBe(isLate);
    expect(reckonedTime(booking, nowMs)).toEqual({ startMs: 5, endMs: isLate ? NOBODY_KNOWS_MS : endMs });
  });

  test('has its end at the last instant that a date can name', () => {
    expect(new Date(NOBODY_KNOWS_MS).getTime()).toBe(NOBODY_KNOWS_MS);
    expect(new Date(NOBODY_KNOWS_MS + 1).getTime()).toBeNaN();
  });

  test('a booking that is empty is no booking', () => {
    expect(() => reckonedTime({ startMs: 5, endMs: 5, isOut: true }, 9)).toThrow('ends after it starts');
  });
});

describe('free times of what is lent', () => {
  const outing = fc
    .tuple(fc.nat(60), fc.integer({ min: 1, max: 20 }), fc.boolean())
    .map(([startMs, length, isOut]) => ({ startMs, endMs: startMs + length, isOut }));
  const buffers = fc.record({ preMs: fc.nat(4), postMs: fc.nat(4) });
  const outings = fc.array(
    fc.tuple(outing, buffers).map(([time, own]) => ({ ...time, ...own })),
    { maxLength: 4 },
  );

  // The brute force knows no end: at each minute of the window it asks whether somebody has the thing still, cleans it, or
  // will fetch it, and takes whoever is late to have it at every minute from the start of their booking on.
  test('are those that a walk over every minute finds, and none of a thing that is out and late', () => {
    fc.assert(
      fc.property(
        outings,
        buffers,
        fc.integer({ min: 1, max: 12 }),
        fc.nat(90),
        (booked, own, leastMs, nowMs) => {
          const window = { startMs: nowMs, endMs: nowMs + 90 };
          const taken = booked.map((one) => ({ ...one, ...reckonedTime(one, nowMs) }));
          const free = freeTimes(window, taken, { ...own, leastMs });
          const isHeldAt = (minute: number) =>
            booked.some(({ startMs, endMs, isOut, preMs, postMs }) => {
              const isLate = isOut && endMs < nowMs;
              return minute >= startMs - preMs && (isLate || minute < endMs + postMs);
            });
          for (let minute = window.startMs; minute + leastMs <= window.endMs; minute += 1) {
            let byWalk = true;
            for (let at = minute - own.preMs; at < minute + leastMs + own.postMs; at += 1)
              if (isHeldAt(at)) byWalk = false;
            const byAnswer = free.some((gap) => gap.startMs <= minute && minute + leastMs <= gap.endMs);
            expect(byAnswer).toBe(byWalk);
            expect(isFree({ startMs: minute, endMs: minute + leastMs, ...own }, taken)).toBe(byWalk);
          }
          if (booked.some((one) => isOutAndLate(one, nowMs))) expect(free).toEqual([]);
        },
      ),
    );
  });

  test('of several that are alike a late one is nobody’s, and the others are lent on', () => {
    fc.assert(
      fc.property(fc.array(outing, { maxLength: 3 }), fc.nat(90), (first, nowMs) => {
        const bookings = first.map((one, at) => ({ ...reckonedTime(one, nowMs), ...NONE, unit: at + 1 }));
        const wished: Interval = { startMs: nowMs + 1, endMs: nowMs + 5 };
        const unit = unitFor({ ...wished, ...NONE }, bookings, 3);
        const clear = [1, 2, 3].filter((no) => {
          const one = first[no - 1];
          return (
            !one || (!isOutAndLate(one, nowMs) && !areInConflict({ ...one, ...NONE }, { ...wished, ...NONE }))
          );
        });
        if (unit === null) expect(clear).toEqual([]);
        else expect(clear).toContain(unit);
      }),
    );
  });
});
