import { fraction } from '@sheafbook/units';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ASKED_TOGETHER, type Asked, firstRefusalGroups, offerStanding, planTurns } from './first-refusal.ts';

const HOUR = 3_600_000;
const asked = (householdId: string, facts: Partial<Asked> = {}): Asked => ({
  ...{ householdId, isUsable: true, coverageDays: fraction(30), lastTookAt: null, seat: 1 },
  ...facts,
});
const orderOf = (households: readonly Asked[]) => firstRefusalGroups(households).flat();

describe('who is asked first (job map 2.15)', () => {
  test.for([
    {
      because: 'the least covered first, to the fraction of a day',
      households: [
        asked('b', { coverageDays: fraction(1, 3) }),
        asked('a', { coverageDays: fraction(33_333_334, 100_000_000) }),
      ],
      order: ['b', 'a'],
    },
    {
      because: 'of whom nothing is known comes after everybody of whom something is',
      households: [asked('a', { coverageDays: null }), asked('b', { coverageDays: fraction(9999) })],
      order: ['b', 'a'],
    },
    {
      because: 'equally covered, whoever took something longest ago, and never is longest',
      households: [asked('a', { lastTookAt: 2 }), asked('b', { lastTookAt: 1 }), asked('c')],
      order: ['c', 'b', 'a'],
    },
    {
      because: 'equal in all, the lower seat',
      households: [asked('a', { seat: 7 }), asked('b', { seat: 2 })],
      order: ['b', 'a'],
    },
    {
      because: 'whoever can’t use it is not asked',
      households: [asked('a', { isUsable: false, coverageDays: fraction(0) }), asked('b')],
      order: ['b'],
    },
  ])('$because', ({ households, order }) => {
    expect(orderOf(households)).toEqual(order);
  });

  test('asks three side by side, and the rest after them', () => {
    const seven = ['a', 'b', 'c', 'd', 'e', 'f', 'g'].map((id, seat) => asked(id, { seat }));
    expect(firstRefusalGroups(seven)).toEqual([['a', 'b', 'c'], ['d', 'e', 'f'], ['g']]);
  });
});

describe('the turns of an offer', () => {
  const groups = [['a', 'b', 'c'], ['d', 'e', 'f'], ['g']];
  const terms = { groups, offeredAt: 0, closesAt: 7 * 24 * HOUR, windowHours: 48, passedAt: new Map() };
  const windowOf = (plan: ReturnType<typeof planTurns>, id: string) => {
    const turn = plan.turns.find(({ householdId }) => householdId === id);
    return turn && [turn.fromAt / HOUR, turn.untilAt / HOUR];
  };

  test('follow each other by 48 hours, and then it is everybody’s', () => {
    const plan = planTurns(terms);
    expect(['a', 'c', 'd', 'g'].map((id) => windowOf(plan, id))).toEqual([
      ...[
        [0, 48],
        [0, 48],
        [48, 96],
      ],
      [96, 144],
    ]);
    expect(plan.openAt).toBe(144 * HOUR);
  });

  test('are cut off where the offer closes', () => {
    const plan = planTurns({ ...terms, closesAt: 60 * HOUR });
    expect(['a', 'd', 'g'].map((id) => windowOf(plan, id))).toEqual([
      [0, 48],
      [48, 60],
      [60, 60],
    ]);
  });

  test('come sooner once everybody of a group has passed, and not before', () => {
    const two = new Map([
      ['a', 5 * HOUR],
      ['b', 6 * HOUR],
    ]);
    expect(windowOf(planTurns({ ...terms, passedAt: two }), 'd')).toEqual([48, 96]);
    const all = new Map([...two, ['c', 10 * HOUR] as const]);
    expect(windowOf(planTurns({ ...terms, passedAt: all }), 'd')).toEqual([10, 58]);
  });

  test('tell how an offer stands to a household by the clock alone', () => {
    const plan = planTurns(terms);
    const offer = { openAt: plan.openAt, closesAt: terms.closesAt };
    const of = (id: string | null, hours: number) =>
      offerStanding(plan.turns.find(({ householdId }) => householdId === id) ?? null, offer, hours * HOUR);
    expect([of('d', 47.99), of('d', 48), of('d', 95.99), of('d', 96), of('d', 144), of('d', 168)]).toEqual([
      ...(['not-yet', 'your-turn', 'your-turn', 'with-others', 'for-all', 'over'] as const),
    ]);
    expect([of(null, 0), of(null, 143.99), of(null, 144)]).toEqual(['not-yet', 'not-yet', 'for-all']);
  });

  test('refuse an offer that closes before it was made', () => {
    expect(() => planTurns({ ...terms, closesAt: 0 })).toThrow('closes after');
  });
});

const someHouseholds = fc.uniqueArray(
  fc.record({
    householdId: fc.uuid(),
    isUsable: fc.boolean(),
    coverageDays: fc.option(fc.nat(20).map((days) => fraction(days, 7))),
    lastTookAt: fc.option(fc.nat(5)),
    seat: fc.integer({ min: 1, max: 9 }),
  }),
  { selector: ({ householdId }) => householdId, maxLength: 20 },
);

describe('whatever the households and the passes', () => {
  test('the order given does not matter', () => {
    const shuffled = someHouseholds.chain((households) =>
      fc.tuple(fc.constant(households), fc.shuffledSubarray(households, { minLength: households.length })),
    );
    fc.assert(
      fc.property(shuffled, ([households, others]) => {
        expect(firstRefusalGroups(others)).toEqual(firstRefusalGroups(households));
      }),
    );
  });

  test('each usable household has one turn, at most three have theirs at once, and no two groups overlap', () => {
    const some = fc.record({
      households: someHouseholds,
      windowHours: fc.integer({ min: 1, max: 100 }),
      lasts: fc.integer({ min: 1, max: 400 }),
      passes: fc.array(fc.option(fc.nat(400)), { minLength: 20, maxLength: 20 }),
      at: fc.nat(400),
    });
    fc.assert(
      fc.property(some, ({ households, windowHours, lasts, passes, at }) => {
        const groups = firstRefusalGroups(households);
        const passedAt = new Map(
          groups.flat().flatMap((id, index) => {
            const hours = passes[index] ?? null;
            return hours === null ? [] : [[id, hours * HOUR] as const];
          }),
        );
        const closesAt = lasts * HOUR;
        const plan = planTurns({ groups, offeredAt: 0, closesAt, windowHours, passedAt });
        const usable = households.filter(({ isUsable }) => isUsable).map(({ householdId }) => householdId);
        expect(plan.turns.map(({ householdId }) => householdId).toSorted()).toEqual(usable.toSorted());
        const now = plan.turns.filter(
          (turn) => offerStanding(turn, { openAt: plan.openAt, closesAt }, at * HOUR) === 'your-turn',
        );
        expect(now.length).toBeLessThanOrEqual(ASKED_TOGETHER);
        expect(new Set(now.map(({ groupNo }) => groupNo)).size).toBeLessThanOrEqual(1);
        for (const turn of plan.turns) {
          expect(turn.fromAt).toBeLessThanOrEqual(turn.untilAt);
          expect(turn.untilAt).toBeLessThanOrEqual(plan.openAt);
          expect(turn.untilAt - turn.fromAt).toBeLessThanOrEqual(windowHours * HOUR);
          for (const later of plan.turns.filter(({ groupNo }) => groupNo === turn.groupNo + 1))
            expect(later.fromAt).toBe(turn.untilAt);
        }
        expect(plan.openAt).toBeLessThanOrEqual(closesAt);
      }),
    );
  });
});
