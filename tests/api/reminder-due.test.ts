import { addDays } from '@sheafbook/units';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Fact,
  isDigestInHours,
  isInHours,
  stageOf,
  tellingsDue,
  type Wishes,
} from '../../apps/api/src/features/reminder/due.ts';
import { REMINDER_KINDS } from '../../apps/api/src/features/reminder/kinds.ts';

const CHICAGO = 'America/Chicago';
const BERLIN = 'Europe/Berlin';
const wishes = (change: Partial<Wishes> = {}): Wishes => ({
  ...{ timeZone: CHICAGO, fromHour: 8, toHour: 20, digestHour: null, isOn: true, stopped: new Set() },
  ...change,
});
const deposit = (change: Partial<Fact> = {}): Fact => ({
  ...{ kind: 'deposit-due', thing: 'rye', dueOn: '2026-09-24', dueAt: null },
  ...change,
});
/** Noon in Chicago, in summer. */
const noonOn = (day: string) => new Date(`${day}T17:00:00Z`);
const dueAt = (
  now: Date,
  facts: readonly Fact[],
  change: { told?: Iterable<string>; wishes?: Wishes } = {},
) =>
  tellingsDue(facts, {
    now,
    storehouseZone: CHICAGO,
    wishes: change.wishes ?? wishes(),
    told: new Set(change.told ?? []),
  });
const keysOf = (due: ReturnType<typeof dueAt>) => [
  ...due.single.map(({ key }) => key),
  ...(due.digest ? [due.digest.key, ...due.digest.tellings.map(({ key }) => key)] : []),
];

describe('how near a thing is', () => {
  test.for([
    ['2026-09-20', null],
    ['2026-09-21', '3-days'],
    ['2026-09-23', '3-days'],
    ['2026-09-24', 'day'],
    ['2026-09-25', 'overdue'],
  ] as const)('a deposit that is due on 24 September is told on %s as %s', ([todayOn, stage]) => {
    expect(stageOf(deposit(), { now: noonOn(todayOn), todayOn })).toBe(stage);
  });

  test('an hour that is over is over, though its day is not; a window counts until its end', () => {
    const at = (time: string) => ({ now: new Date(`2026-09-24T${time}Z`), todayOn: '2026-09-24' });
    const closing = deposit({ kind: 'pledge-closing', dueAt: new Date('2026-09-24T18:00:00Z') });
    expect(stageOf(closing, at('17:59:59'))).toBe('day');
    expect(stageOf(closing, at('18:00:00'))).toBeNull();
    const fetching = deposit({
      ...{ kind: 'pick-up', dueAt: new Date('2026-09-24T18:00:00Z') },
      endsAt: new Date('2026-09-24T19:00:00Z'),
    });
    expect(stageOf(fetching, at('18:30:00'))).toBe('day');
    expect(stageOf(fetching, at('19:00:00'))).toBe('overdue');
  });

  test('a debt without a day is told once in each month', () => {
    const owed = deposit({ kind: 'balance-due', dueOn: null });
    const [september] = keysOf(dueAt(noonOn('2026-09-24'), [owed]));
    expect(keysOf(dueAt(noonOn('2026-09-30'), [owed], { told: [september ?? ''] }))).toEqual([]);
    expect(keysOf(dueAt(noonOn('2026-10-01'), [owed], { told: [september ?? ''] }))).toEqual([
      'balance-due|rye|-|open 2026-10',
    ]);
  });
});

const someDay = fc.integer({ min: 0, max: 60 }).map((days) => addDays('2026-09-01', days));
const someFact = fc
  .record({
    kind: fc.constantFrom(...REMINDER_KINDS),
    thing: fc.constantFrom('rye', 'spelt', 'oats'),
    dueOn: fc.option(someDay),
  })
  .map(({ kind, thing, dueOn }): Fact => ({ kind, thing, dueOn, dueAt: null }));
const someWishes = fc
  .record({
    timeZone: fc.constantFrom(CHICAGO, BERLIN, 'Asia/Kolkata', 'Pacific/Auckland'),
    fromHour: fc.integer({ min: 0, max: 23 }),
    hours: fc.integer({ min: 1, max: 23 }),
    digest: fc.option(fc.integer({ min: 0, max: 22 })),
  })
  .map(({ timeZone, fromHour, hours, digest }) =>
    wishes({
      ...{ timeZone, fromHour, toHour: (fromHour + hours) % 24 || 24 },
      digestHour: digest === null ? null : (fromHour + (digest % hours)) % 24,
    }),
  );

describe('told once', () => {
  test('the same facts at the same moment never tell twice', () => {
    fc.assert(
      fc.property(
        fc.array(someFact, { maxLength: 12 }),
        someWishes,
        fc.integer({ min: 0, max: 60 * 24 }),
        (facts, wished, hours) => {
          const now = new Date(Date.parse('2026-09-01T00:30:00Z') + hours * 3_600_000);
          const told = keysOf(dueAt(now, facts, { wishes: wished }));
          expect(keysOf(dueAt(now, facts, { wishes: wished, told }))).toEqual([]);
        },
      ),
    );
  });

  test('over two months asked every quarter of an hour, each stage is told once and a digest comes once a day', () => {
    fc.assert(
      fc.property(fc.array(someFact, { minLength: 1, maxLength: 4 }), someWishes, (facts, wished) => {
        const told = new Set<string>();
        let digests = 0;
        for (let quarter = 0; quarter < 61 * 24 * 4; quarter += 4) {
          const now = new Date(Date.parse('2026-09-01T05:00:00Z') + quarter * 900_000);
          const due = dueAt(now, facts, { wishes: wished, told });
          if (due.digest) digests += 1;
          for (const key of keysOf(due)) {
            expect(told.has(key)).toBe(false);
            told.add(key);
          }
        }
        expect(digests).toBe([...told].filter((key) => key.startsWith('digest|')).length);
      }),
      { numRuns: 8 },
    );
  });

  test('moving the day tells anew, whatever was told of the day before', () => {
    fc.assert(
      fc.property(someDay, fc.integer({ min: 1, max: 30 }), (dueOn, later) => {
        const movedOn = addDays(dueOn, later);
        const before = keysOf(dueAt(noonOn(dueOn), [deposit({ dueOn })]));
        expect(before).toHaveLength(1);
        expect(keysOf(dueAt(noonOn(movedOn), [deposit({ dueOn: movedOn })], { told: before }))).toEqual([
          `deposit-due|rye|${movedOn}|day`,
        ]);
      }),
    );
  });

  test('what is gone from the book is not told', () => {
    expect(keysOf(dueAt(noonOn('2026-09-24'), [deposit()]))).toHaveLength(1);
    expect(keysOf(dueAt(noonOn('2026-09-24'), []))).toEqual([]);
  });
});

describe('in their hours', () => {
  test.for([
    // Chicago, 1 November 2026: the clock shows 01:00 to 01:59 twice, first five hours behind UTC, then six.
    {
      hours: [8, 20],
      zone: CHICAGO,
      at: '2026-10-31T12:59Z',
      isOpen: false,
      because: '07:59 in summer time',
    },
    { hours: [8, 20], zone: CHICAGO, at: '2026-10-31T13:00Z', isOpen: true, because: '08:00 in summer time' },
    {
      hours: [8, 20],
      zone: CHICAGO,
      at: '2026-11-01T13:00Z',
      isOpen: false,
      because: '07:00 since it changed',
    },
    {
      hours: [8, 20],
      zone: CHICAGO,
      at: '2026-11-01T14:00Z',
      isOpen: true,
      because: '08:00 since it changed',
    },
    { hours: [1, 2], zone: CHICAGO, at: '2026-11-01T06:30Z', isOpen: true, because: 'the first 01:30' },
    { hours: [1, 2], zone: CHICAGO, at: '2026-11-01T07:30Z', isOpen: true, because: 'the second 01:30' },
    { hours: [1, 2], zone: CHICAGO, at: '2026-11-01T08:00Z', isOpen: false, because: '02:00' },
    // Chicago, 14 March 2027: 02:00 to 02:59 is skipped.
    { hours: [8, 20], zone: CHICAGO, at: '2027-03-13T13:59Z', isOpen: false, because: '07:59 in winter' },
    { hours: [8, 20], zone: CHICAGO, at: '2027-03-14T13:00Z', isOpen: true, because: '08:00 in summer time' },
    // Berlin: back on 25 October 2026, forward on 28 March 2027.
    {
      hours: [7, 22],
      zone: BERLIN,
      at: '2026-10-24T05:00Z',
      isOpen: true,
      because: '07:00, two hours ahead',
    },
    {
      hours: [7, 22],
      zone: BERLIN,
      at: '2026-10-25T05:00Z',
      isOpen: false,
      because: '06:00, one hour ahead',
    },
    { hours: [7, 22], zone: BERLIN, at: '2027-03-27T06:00Z', isOpen: true, because: '07:00, one hour ahead' },
    {
      hours: [7, 22],
      zone: BERLIN,
      at: '2027-03-28T04:59Z',
      isOpen: false,
      because: '06:59, two hours ahead',
    },
    {
      hours: [7, 22],
      zone: BERLIN,
      at: '2027-03-28T05:00Z',
      isOpen: true,
      because: '07:00, two hours ahead',
    },
    // Over midnight, and the whole day.
    { hours: [20, 6], zone: BERLIN, at: '2026-10-24T23:00Z', isOpen: true, because: '01:00 at night' },
    { hours: [20, 6], zone: BERLIN, at: '2026-10-24T10:00Z', isOpen: false, because: 'noon' },
    { hours: [0, 24], zone: BERLIN, at: '2026-10-25T01:30Z', isOpen: true, because: 'always' },
  ])('from $hours in $zone, $at: $because', ({ hours: [fromHour = 0, toHour = 24], zone, at, isOpen }) => {
    const hours = { timeZone: zone, fromHour, toHour, digestHour: null };
    expect(isInHours(new Date(at), hours)).toBe(isOpen);
  });

  test.for([
    [8, 20, 7, false],
    [8, 20, 8, true],
    [8, 20, 20, false],
    [20, 6, 23, true],
    [20, 6, 5, true],
    [20, 6, 6, false],
    [8, 20, null, true],
  ] as const)('from %s to %s a digest at %s comes: %s', ([fromHour, toHour, digestHour, comes]) => {
    expect(isDigestInHours({ fromHour, toHour, digestHour })).toBe(comes);
  });
});

describe('a digest of the day', () => {
  /** The instants, asked every quarter of an hour, at which a digest goes out. */
  const digestsFrom = (from: string, hours: number, wished: Wishes): string[] => {
    const told = new Set<string>();
    const found: string[] = [];
    for (let quarter = 0; quarter < hours * 4; quarter += 1) {
      const now = new Date(Date.parse(from) + quarter * 900_000);
      // Every day brings something new.
      const due = dueAt(now, [deposit({ kind: 'notice', dueOn: null, thing: `${quarter}` })], {
        wishes: wished,
        told,
      });
      if (!due.digest) continue;
      told.add(due.digest.key);
      found.push(now.toISOString().slice(0, 16));
    }
    return found;
  };

  test.for([
    {
      because: 'Berlin, clocks back: seven in the morning is an hour later by UTC',
      ...{ zone: BERLIN, from: '2026-10-23T22:00Z', hours: 72, digestHour: 7, open: [7, 22] },
      at: ['2026-10-24T05:00', '2026-10-25T06:00', '2026-10-26T06:00'],
    },
    {
      because: 'Berlin, clocks forward',
      ...{ zone: BERLIN, from: '2027-03-26T23:00Z', hours: 72, digestHour: 7, open: [7, 22] },
      at: ['2027-03-27T06:00', '2027-03-28T05:00', '2027-03-29T05:00'],
    },
    {
      because: 'Berlin, the hour of the digest is skipped: the next one is as good',
      ...{ zone: BERLIN, from: '2027-03-26T23:00Z', hours: 72, digestHour: 2, open: [0, 24] },
      at: ['2027-03-27T01:00', '2027-03-28T01:00', '2027-03-29T00:00'],
    },
    {
      because: 'Chicago, the hour of the digest comes twice: one digest',
      ...{ zone: CHICAGO, from: '2026-10-31T05:00Z', hours: 73, digestHour: 1, open: [0, 24] },
      at: ['2026-10-31T06:00', '2026-11-01T06:00', '2026-11-02T07:00'],
    },
    {
      because: 'Chicago, clocks forward',
      ...{ zone: CHICAGO, from: '2027-03-13T06:00Z', hours: 71, digestHour: 2, open: [0, 24] },
      at: ['2027-03-13T08:00', '2027-03-14T08:00', '2027-03-15T07:00'],
    },
    {
      because: 'hours over midnight: the digest of the evening may still come after it',
      ...{ zone: BERLIN, from: '2026-07-01T22:30Z', hours: 40, digestHour: 23, open: [20, 6] },
      at: ['2026-07-01T22:30', '2026-07-02T21:00'],
    },
  ])('$because', ({ zone: timeZone, from, hours, digestHour, open: [fromHour = 0, toHour = 24], at }) => {
    expect(digestsFrom(from, hours, wishes({ timeZone, digestHour, fromHour, toHour }))).toEqual(at);
  });

  test('holds everything of the day, and what is about safety does not wait for it', () => {
    const facts = [
      deposit(),
      deposit({ kind: 'safety', thing: 'bag', dueOn: null }),
      deposit({ thing: 'oats' }),
    ];
    const wished = wishes({ digestHour: 18 });
    const noon = dueAt(noonOn('2026-09-24'), facts, { wishes: wished });
    expect(noon.single.map(({ fact }) => fact.kind)).toEqual(['safety']);
    expect(noon.digest).toBeNull();
    const evening = dueAt(new Date('2026-09-24T23:00:00Z'), facts, { wishes: wished, told: keysOf(noon) });
    expect(evening.single).toEqual([]);
    expect(evening.digest?.tellings.map(({ fact }) => fact.thing)).toEqual(['rye', 'oats']);
  });
});

describe('what is stopped', () => {
  test('is not told, unless it is about safety, which also does not wait for the morning', () => {
    const facts = REMINDER_KINDS.map((kind) => deposit({ kind, dueOn: null }));
    const midnight = new Date('2026-09-24T05:00:00Z');
    const told = (change: Partial<Wishes>) =>
      dueAt(midnight, facts, { wishes: wishes(change) }).single.map(({ fact }) => fact.kind);
    const safety = ['hold-open', 'suspects-open', 'safety'];
    expect(told({})).toEqual(safety);
    expect(told({ isOn: false, stopped: new Set(REMINDER_KINDS) })).toEqual(safety);
    const noon = (change: Partial<Wishes>) =>
      dueAt(noonOn('2026-09-24'), facts, { wishes: wishes(change) }).single.map(({ fact }) => fact.kind);
    const open = [
      'service-due',
      'unfit-equipment',
      'offer-near',
      'gift-closes-near',
      'eat-first-near',
      'balance-due',
    ];
    expect(noon({})).toEqual([...safety, ...open, 'notice']);
    expect(noon({ stopped: new Set(['notice']) })).toEqual([...safety, ...open]);
    expect(noon({ isOn: false })).toEqual(safety);
  });
});
