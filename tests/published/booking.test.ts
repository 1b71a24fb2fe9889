import {
  areInConflict,
  assignLines,
  type Buffers,
  freeTimes,
  type Interval,
  isFree,
  LENDING_STARTERS,
  lateFee,
  missingParts,
  mostAtOnce,
  moveToFit,
  nextWaiting,
  type Request,
  readWallTime,
  relayRefusals,
  sameTimeDaysLater,
  serviceAhead,
  serviceDue,
  settleDeposit,
  unitFor,
  unitsNeeded,
} from '@sheafbook/booking';
import { instantOfWallTime, wallTimeInZone } from '@sheafbook/units';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const HOUR = 3_600_000;
const NONE: Buffers = { preMs: 0, postMs: 0 };
const request = (requestId: string, startMs: number, endMs: number): Request => ({
  requestId,
  startMs,
  endMs,
});

// Job map 7.6, in minutes from midnight.
describe('lines of a packing day', () => {
  const requests = [
    request('B1', 540, 660),
    request('B2', 600, 720),
    request('B4', 630, 690),
    request('B3', 660, 780),
    request('B5', 720, 840),
  ];

  test('five requests need three lines', () => {
    expect(mostAtOnce(requests)).toBe(3);
    const { lines, assignments } = assignLines(requests);
    expect(lines).toBe(3);
    expect(Object.fromEntries(assignments.map(({ requestId, line }) => [requestId, line]))).toEqual({
      B1: 1,
      B2: 2,
      B4: 3,
      B3: 1,
      B5: 3,
    });
  });

  test('with two lines the shortest one whose going is enough moves: B4', () => {
    expect(moveToFit(requests, 2)).toBe('B4');
    expect(moveToFit(requests, 3)).toBeNull();
    expect(moveToFit(requests, 1)).toBeNull();
  });

  // Kleinberg and Tardos, Algorithm Design, figure 4.4 (from memory): ten lectures, three rooms.
  test('the textbook’s ten lectures fit in three rooms', () => {
    const lectures = [
      ['a', 900, 1030],
      ['b', 900, 1230],
      ['c', 900, 1030],
      ['d', 1100, 1230],
      ['e', 1100, 1400],
      ['f', 1300, 1430],
      ['g', 1300, 1430],
      ['h', 1400, 1630],
      ['i', 1500, 1630],
      ['j', 1500, 1630],
    ] as const;
    expect(assignLines(lectures.map(([id, start, end]) => request(id, start, end))).lines).toBe(3);
  });

  test('as many lines as overlap at once, and nobody shares one', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(40), fc.integer({ min: 1, max: 15 })), { maxLength: 12 }),
        (pairs) => {
          const some = pairs.map(([start, length], position) =>
            request(`r${position}`, start, start + length),
          );
          const { lines, assignments } = assignLines(some);
          expect(lines).toBe(mostAtOnce(some));
          const lineOf = new Map(assignments.map(({ requestId, line }) => [requestId, line]));
          const clashes = some.filter((a) =>
            some.some((b) => {
              const isSame = lineOf.get(a.requestId) === lineOf.get(b.requestId) && a !== b;
              return isSame && areInConflict({ ...a, ...NONE }, { ...b, ...NONE });
            }),
          );
          expect(clashes).toEqual([]);
        },
      ),
    );
  });
});

describe('free times', () => {
  const smallInterval = fc
    .tuple(fc.nat(60), fc.integer({ min: 1, max: 20 }))
    .map(([startMs, length]): Interval => ({ startMs, endMs: startMs + length }));
  const buffers = fc.record({ preMs: fc.nat(4), postMs: fc.nat(4) });
  const bookings = fc.array(
    fc.tuple(smallInterval, buffers).map(([time, own]) => ({ ...time, ...own })),
    { maxLength: 6 },
  );

  // The brute force walks every minute: a booking of the least length may start at m when nothing is in its way.
  test('are those that a walk over every minute finds', () => {
    const window = { startMs: 0, endMs: 90 };
    fc.assert(
      fc.property(bookings, buffers, fc.integer({ min: 1, max: 12 }), (taken, own, leastMs) => {
        const free = freeTimes(window, taken, { ...own, leastMs });
        for (let minute = 0; minute + leastMs <= window.endMs; minute += 1) {
          const wished = { startMs: minute, endMs: minute + leastMs, ...own };
          const byWalk = taken.every((other) => !areInConflict(wished, other));
          const byAnswer = free.some((gap) => gap.startMs <= minute && minute + leastMs <= gap.endMs);
          expect(byAnswer).toBe(byWalk);
          expect(isFree(wished, taken)).toBe(byWalk);
        }
      }),
    );
  });

  test('touching is free, an hour of cleaning too little is not', () => {
    const sealer = { preMs: 0, postMs: 12 * HOUR };
    const out = { startMs: 0, endMs: 24 * HOUR, ...sealer };
    expect(isFree({ startMs: 36 * HOUR, endMs: 40 * HOUR, ...sealer }, [out])).toBe(true);
    expect(isFree({ startMs: 35 * HOUR, endMs: 40 * HOUR, ...sealer }, [out])).toBe(false);
  });
});

describe('a pool of things that are alike', () => {
  const booked = (unit: number, startMs: number, endMs: number) => ({ unit, startMs, endMs, ...NONE });
  test('the one that has been free longest is lent, the lowest number of those that tie', () => {
    expect(unitFor({ startMs: 10, endMs: 20, ...NONE }, [], 3)).toBe(1);
    expect(unitFor({ startMs: 10, endMs: 20, ...NONE }, [booked(1, 0, 10), booked(2, 0, 5)], 2)).toBe(2);
    expect(unitFor({ startMs: 10, endMs: 20, ...NONE }, [booked(1, 0, 10), booked(2, 15, 16)], 2)).toBe(1);
  });
  test('with all of them taken nobody gets one', () => {
    expect(unitFor({ startMs: 10, endMs: 20, ...NONE }, [booked(1, 0, 11), booked(2, 19, 30)], 2)).toBeNull();
  });
  test('one more is needed than the most that are out at once', () => {
    const hour = { preMs: 0, postMs: 5 };
    expect(
      unitsNeeded([
        { startMs: 0, endMs: 10, ...hour },
        { startMs: 12, endMs: 20, ...hour },
      ]),
    ).toBe(2);
    expect(
      unitsNeeded([
        { startMs: 0, endMs: 10, ...hour },
        { startMs: 15, endMs: 20, ...hour },
      ]),
    ).toBe(1);
  });
});

// IANA time zones; the clocks of Chicago change on 1 November 2026 and 14 March 2027, those of Berlin a week and two earlier and later.
describe('clocks that change', () => {
  test.for([
    ['America/Chicago', '2026-11-01', 7],
    ['America/Chicago', '2027-03-14', 5],
    ['Europe/Berlin', '2026-10-25', 7],
    ['Europe/Berlin', '2027-03-28', 5],
    ['America/Chicago', '2026-11-02', 6],
  ] as const)('in %s the first six hours of %s are %d', ([zone, day, hours]) => {
    const [from, to] = ['00:00', '06:00'].map((time) => instantOfWallTime(`${day}T${time}`, zone));
    expect(((to ?? 0) - (from ?? 0)) / HOUR).toBe(hours);
  });

  test('half past two never comes in spring; three o’clock does', () => {
    expect(readWallTime('2027-03-14T02:30', 'America/Chicago')).toMatchObject({
      comes: 'never',
      nextWallTime: '2027-03-14T03:00',
    });
    expect(readWallTime('2027-03-28T02:00', 'Europe/Berlin')).toMatchObject({
      comes: 'never',
      nextWallTime: '2027-03-28T03:00',
    });
  });

  test('half past one comes twice in autumn, an hour apart', () => {
    const reading = readWallTime('2026-11-01T01:30', 'America/Chicago');
    expect(reading.comes).toBe('twice');
    if (reading.comes !== 'twice') return;
    expect(new Date(reading.firstMs).toISOString()).toBe('2026-11-01T06:30:00.000Z');
    expect(new Date(reading.secondMs).toISOString()).toBe('2026-11-01T07:30:00.000Z');
  });

  test('a loan of a day ends at the same time on the wall', () => {
    const friday = instantOfWallTime('2026-10-31T18:00', 'America/Chicago');
    expect((sameTimeDaysLater(friday, 1, 'America/Chicago') - friday) / HOUR).toBe(25);
    const early = instantOfWallTime('2027-03-13T02:30', 'America/Chicago');
    expect(wallTimeInZone(sameTimeDaysLater(early, 1, 'America/Chicago'), 'America/Chicago')).toBe(
      '2027-03-14T03:00',
    );
  });

  test('a time that the wall shows reads back to the instant that it was', () => {
    const zones = fc.constantFrom(
      'America/Chicago',
      'Europe/Berlin',
      'Asia/Kolkata',
      'Australia/Lord_Howe',
      'Pacific/Apia',
    );
    const minutes = fc.integer({ min: Date.UTC(2010, 0) / 60_000, max: Date.UTC(2035, 0) / 60_000 });
    fc.assert(
      fc.property(minutes, zones, (minute, zone) => {
        const atMs = minute * 60_000;
        const reading = readWallTime(wallTimeInZone(atMs, zone), zone);
        expect(reading.comes).not.toBe('never');
        if (reading.comes === 'once') expect(reading.atMs).toBe(atMs);
        if (reading.comes === 'twice') expect([reading.firstMs, reading.secondMs]).toContain(atMs);
      }),
      { numRuns: 500 },
    );
  });
});

// Job map section 8.
describe('lending', () => {
  test.for([
    [1, 0],
    [2, 0],
    [2.5, 500],
    [26, 500],
    [26.01, 1000],
  ] as const)('%d hours late costs %d', ([hours, fee]) => {
    expect(lateFee({ dueMs: 0, backMs: hours * HOUR }, 500)).toBe(fee);
  });

  test('a deposit pays for what is missing, and the rest is charged', () => {
    const costs = { lateMinorUnits: 500, partsMinorUnits: 4_000, damageMinorUnits: 0 };
    expect(settleDeposit(5_000, costs)).toEqual({
      refundMinorUnits: 500,
      keptMinorUnits: 4_500,
      chargedMinorUnits: 0,
    });
    expect(settleDeposit(3_000, costs)).toEqual({
      refundMinorUnits: 0,
      keptMinorUnits: 3_000,
      chargedMinorUnits: 1_500,
    });
  });

  test('nothing of a deposit is lost, whatever it cost', () => {
    const cents = fc.nat(20_000);
    fc.assert(
      fc.property(
        cents,
        cents,
        cents,
        cents,
        (deposit, lateMinorUnits, partsMinorUnits, damageMinorUnits) => {
          const { refundMinorUnits, keptMinorUnits, chargedMinorUnits } = settleDeposit(deposit, {
            lateMinorUnits,
            partsMinorUnits,
            damageMinorUnits,
          });
          expect(refundMinorUnits + keptMinorUnits).toBe(deposit);
          expect(keptMinorUnits + chargedMinorUnits).toBe(
            lateMinorUnits + partsMinorUnits + damageMinorUnits,
          );
        },
      ),
    );
  });

  test('a critical part that is missing takes the thing out of service', () => {
    const chuck = { partId: 'chuck', out: 1, back: 0, minorUnits: 6_500, isCritical: true };
    const pins = { partId: 'pin', out: 4, back: 3, minorUnits: 150, isCritical: false };
    expect(missingParts([chuck, pins])).toEqual({
      missing: [
        { partId: 'chuck', pieces: 1 },
        { partId: 'pin', pieces: 1 },
      ],
      minorUnits: 6_650,
      isOutOfService: true,
    });
    expect(missingParts([pins]).isOutOfService).toBe(false);
  });

  test('a thing goes from hand to hand when the first loan ends in time and the keeper can still say no', () => {
    const from = { borrowerId: 'A', startMs: 0, endMs: 40 * HOUR };
    const to = { borrowerId: 'B', startMs: 40 * HOUR, endMs: 60 * HOUR };
    const facts = { mayRelay: true, changesAllergen: false, nowMs: 10 * HOUR };
    expect(relayRefusals(from, to, facts)).toEqual([]);
    expect(relayRefusals({ ...from, endMs: 41 * HOUR }, to, facts)).toEqual(['overlap']);
    expect(relayRefusals(from, to, { ...facts, nowMs: 17 * HOUR })).toEqual(['too-late-to-veto']);
    expect(relayRefusals(from, to, { ...facts, changesAllergen: true })).toEqual(['allergen-change']);
  });

  test('what comes free goes to the earliest request that fits whole', () => {
    const waits = (waitingId: string, startMs: number, endMs: number, askedAtMs: number, seat: number) => {
      return { waitingId, startMs, endMs, askedAtMs, seat, ...NONE };
    };
    const waiting = [waits('long', 0, 20, 1, 3), waits('early', 2, 8, 2, 5), waits('tie', 3, 9, 2, 4)];
    expect(nextWaiting(waiting, [{ startMs: 10, endMs: 12, ...NONE }])).toBe('tie');
    expect(nextWaiting(waiting, [])).toBe('long');
    expect(nextWaiting(waiting, [{ startMs: 0, endMs: 30, ...NONE }])).toBeNull();
  });

  test('what is booked ahead tells when uses run out, and the calendar when days do', () => {
    const ahead = { bookingsInDays: [30, 5, 12], usesEach: 40, horizonDays: 60 };
    expect(serviceAhead({ usesLeft: 41, daysLeft: 100 }, ahead)).toEqual({ inDays: 12, because: 'uses' });
    expect(serviceAhead({ usesLeft: 40, daysLeft: 5 }, ahead)).toEqual({ inDays: 5, because: 'days' });
    expect(serviceAhead({ usesLeft: 121, daysLeft: 60 }, ahead)).toEqual({ inDays: 60, because: 'days' });
    expect(serviceAhead({ usesLeft: 121, daysLeft: 61 }, ahead)).toBeNull();
    expect(serviceAhead({ usesLeft: 0, daysLeft: null }, ahead)).toEqual({ inDays: 0, because: 'uses' });
    expect(serviceAhead({ usesLeft: null, daysLeft: null }, ahead)).toBeNull();
  });

  test('a thing starts with the terms of its sort: hours to clean it, days of its longest loan, and its service', () => {
    const rows = Object.entries(LENDING_STARTERS).map(([code, terms]) => {
      const { preHours, postHours, longestDays, serviceEveryUses, serviceEveryDays } = terms;
      return [code, preHours, postHours, longestDays, serviceEveryUses, serviceEveryDays];
    });
    expect(rows).toEqual([
      ['can-sealer', 0, 12, 3, 500, 180],
      ['mill', 0, 24, 3, null, 365],
      ['dolly', 0, 0, 3, null, null],
      ['scale', 0, 1, 3, null, null],
      ['thermometer', 0, 0, 3, null, null],
      ['seam-gauge', 0, 0, 3, null, 365],
      ['extension-cord', 0, 0, 3, null, 365],
    ]);
  });

  test('a seamer is due after 500 cans or 180 days', () => {
    const plan = { everyUses: 500, everyDays: 180 };
    expect(serviceDue({ uses: 499, days: 30 }, plan)).toEqual({ isDue: false, usesLeft: 1, daysLeft: 150 });
    expect(serviceDue({ uses: 12, days: 180 }, plan).isDue).toBe(true);
    expect(serviceDue({ uses: 9_999, days: 30 }, { everyUses: null, everyDays: 365 }).isDue).toBe(false);
  });
});
