import { compareFractions, type Fraction, fraction } from '@sheafbook/units';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { closeGapWhole, type Pack } from './close-gap-whole.ts';
import type { FoodGroupCode } from './food-group.ts';
import type { GroupGap } from './group-gap.ts';

type Question = Parameters<typeof closeGapWhole>[0];
type Answer = {
  readonly counts: number[];
  readonly minorUnits: number;
  readonly packs: number;
  readonly days: Fraction;
};

/** Every number of every pack that the budget pays for, nothing clever. */
function everyAnswer({ groups, packs, budgetMinorUnits, targetDays }: Question): Answer[] {
  let all: number[][] = [[]];
  for (const { minorUnits, mostPacks } of packs) {
    const most = Math.min(mostPacks ?? 12, Math.floor(budgetMinorUnits / minorUnits));
    all = all.flatMap((counts) => Array.from({ length: most + 1 }, (_, count) => [...counts, count]));
  }
  const total = (counts: readonly number[], of: (pack: Pack) => number): number =>
    counts.reduce((sum, count, place) => sum + count * (packs[place] ? of(packs[place]) : 0), 0);
  return all
    .map((counts) => ({
      counts,
      minorUnits: total(counts, (pack) => pack.minorUnits),
      packs: total(counts, () => 1),
      days: groups.reduce((least, gap) => {
        const bought = total(counts, (pack) => (pack.group === gap.group ? pack.grams : 0));
        const { numerator, denominator } = gap.needGramsPerDay;
        if (numerator === 0n) return least;
        const days = fraction(BigInt(gap.stockGrams + bought) * denominator, numerator);
        return compareFractions(days, least) < 0 ? days : least;
      }, fraction(targetDays)),
    }))
    .filter(({ minorUnits }) => minorUnits <= budgetMinorUnits);
}

function better(a: Answer, b: Answer): number {
  const byCount =
    a.counts.map((count, place) => (b.counts[place] ?? 0) - count).find((more) => more !== 0) ?? 0;
  return compareFractions(b.days, a.days) || a.minorUnits - b.minorUnits || a.packs - b.packs || byCount;
}

function expectBest(question: Question): void {
  const [best] = everyAnswer(question).toSorted(better);
  const answer = closeGapWhole(question);
  expect({ days: answer.days, minorUnits: answer.minorUnits }).toEqual({
    days: best?.days,
    minorUnits: best?.minorUnits,
  });
  const counts = question.packs.map(
    ({ packId }) => answer.packs.find((pack) => pack.packId === packId)?.count ?? 0,
  );
  expect(counts).toEqual(best?.counts);
}

const GROUPS: readonly FoodGroupCode[] = ['grains', 'legumes', 'salt'];
const someGroups: fc.Arbitrary<GroupGap[]> = fc.tuple(
  ...GROUPS.map((group) =>
    fc
      .record({ need: fc.integer({ min: 0, max: 9 }), stockGrams: fc.integer({ min: 0, max: 40 }) })
      .map(({ need, stockGrams }) => ({ group, needGramsPerDay: fraction(need, 2), stockGrams })),
  ),
);
const somePacks: fc.Arbitrary<Pack[]> = fc
  .array(
    fc.record({
      group: fc.constantFrom(...GROUPS),
      grams: fc.integer({ min: 1, max: 20 }),
      minorUnits: fc.integer({ min: 3, max: 12 }),
      mostPacks: fc.option(fc.integer({ min: 0, max: 3 })),
    }),
    { maxLength: 4 },
  )
  .map((packs) => packs.map((pack, place) => ({ packId: `pack ${place}`, ...pack })));

describe('whole packs within a budget', () => {
  test('are the best of all that the budget pays for', () => {
    fc.assert(
      fc.property(
        someGroups,
        somePacks,
        fc.integer({ min: 0, max: 30 }),
        fc.integer({ min: 0, max: 20 }),
        (groups, packs, budgetMinorUnits, targetDays) => {
          // In the order of the groups, so that "the earlier" means the same to both.
          const ordered = GROUPS.flatMap((group) => packs.filter((pack) => pack.group === group));
          expectBest({ groups, packs: ordered, budgetMinorUnits, targetDays });
        },
      ),
      { numRuns: 400 },
    );
  });

  test('are none when the stock reaches the target', () => {
    const answer = closeGapWhole({
      groups: [{ group: 'grains', needGramsPerDay: fraction(100), stockGrams: 50_000 }],
      packs: [{ packId: 'rice', group: 'grains', grams: 1000, minorUnits: 200, mostPacks: null }],
      budgetMinorUnits: 10_000,
      targetDays: 365,
    });
    expect(answer.reachesTarget).toBe(true);
    expect(answer.packs).toEqual([]);
    expect(answer.days).toEqual(fraction(365));
  });

  test('follow a gap that diets bend: only what the limiting eater may eat has to be bought', () => {
    // Until day 57,500/250 = 230 nothing lacks; then 250 g a day for one eater, and from day 336.1 on 1,150 g for all.
    const gapPieces = [
      { gramsPerDay: fraction(250), coveredGrams: fraction(57_500) },
      { gramsPerDay: fraction(1150), coveredGrams: fraction(360_000) },
    ];
    const answer = closeGapWhole({
      groups: [{ group: 'grains', needGramsPerDay: fraction(1150), stockGrams: 360_000, gapPieces }],
      packs: [{ packId: 'rice', group: 'grains', grams: 5000, minorUnits: 900, mostPacks: null }],
      budgetMinorUnits: 4500,
      targetDays: 330,
    });
    // Five packs are 25,000 g: (57,500 + 25,000) / 250 = 330 days, the target.
    expect(answer).toMatchObject({
      packs: [{ packId: 'rice', count: 5 }],
      minorUnits: 4500,
      days: fraction(330),
    });
  });

  test('reach a year for twelve eaters in small packs', () => {
    const pack = (packId: string, grams: number, minorUnits: number): Pack => ({
      packId,
      group: 'grains',
      grams,
      minorUnits,
      mostPacks: null,
    });
    const answer = closeGapWhole({
      groups: [{ group: 'grains', needGramsPerDay: fraction(5964), stockGrams: 120_000 }],
      packs: [
        pack('sack', 22_680, 2150),
        pack('half sack', 11_340, 1190),
        pack('kilo', 1000, 129),
        pack('pound', 454, 66),
      ],
      budgetMinorUnits: 250_000,
      targetDays: 365,
    });
    expect(answer.reachesTarget).toBe(true);
  });
});

describe('a question about packs that makes no sense', () => {
  const gap: GroupGap = { group: 'grains', needGramsPerDay: fraction(1), stockGrams: 0 };
  const pack: Pack = { packId: 'rice', group: 'grains', grams: 1000, minorUnits: 200, mostPacks: null };
  test.for([
    { because: 'a group stands once', groups: [gap, gap], packs: [] },
    { because: 'a pack stands once', groups: [gap], packs: [pack, pack] },
    {
      because: 'a group that is not asked about',
      groups: [gap],
      packs: [{ ...pack, group: 'salt' as const }],
    },
    { because: 'holds nothing', groups: [gap], packs: [{ ...pack, grams: 0 }] },
    {
      because: 'minorUnits of pack rice must be a whole number',
      groups: [gap],
      packs: [{ ...pack, minorUnits: 1.5 }],
    },
    {
      because: 'stockGrams of grains must be a whole number',
      groups: [{ ...gap, stockGrams: -1 }],
      packs: [],
    },
  ])('is refused: $because', ({ because, groups, packs }) => {
    expect(() => closeGapWhole({ groups, packs, budgetMinorUnits: 0, targetDays: 10 })).toThrow(because);
  });
});
