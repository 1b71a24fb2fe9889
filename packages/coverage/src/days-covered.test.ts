import {
  addFractions,
  compareFractions,
  divideFractions,
  type Fraction,
  fraction,
  multiplyFractions,
  subtractFractions,
  sumFractions,
} from '@sheafbook/units';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compareDays } from './days.ts';
import { type DaysCovered, daysCovered } from './days-covered.ts';
import type { DaysCoveredInput, EaterRate, EdibleLot } from './edible-stock.ts';
import { gapAt, gapPieces } from './gap-pieces.ts';

const NONE = fraction(0);

/** Some eaters, and for each of them the day until which they need nothing that only they can have. */
type Choice = { readonly eaters: readonly EaterRate[]; readonly from: ReadonlyMap<string, number> };

/** Every nonempty set of eaters with every way to give each of them day 0 or the last day of some lot. */
function choicesOf({ rates, lots }: DaysCoveredInput): Choice[] {
  const days = [
    0,
    ...new Set(lots.flatMap(({ daysLeft }) => (daysLeft !== null && daysLeft > 0 ? daysLeft : []))),
  ];
  const all = rates.reduce<Choice[]>(
    (choices, rate) =>
      choices.flatMap(({ eaters, from }) => [
        { eaters, from },
        ...days.map((day) => ({ eaters: [...eaters, rate], from: new Map(from).set(rate.eaterId, day) })),
      ]),
    [{ eaters: [], from: new Map() }],
  );
  return all.filter(({ eaters }) => eaters.some(({ perDay }) => perDay.numerator > 0n));
}

/** The food that a choice's eaters can have after their days. */
function foodFor({ from }: Choice, lots: readonly EdibleLot[]): Fraction {
  const usable = lots.filter(({ daysLeft, eaterIds }) =>
    eaterIds.some((id) => from.has(id) && (daysLeft ?? Number.POSITIVE_INFINITY) > (from.get(id) ?? 0)),
  );
  return sumFractions(usable.map(({ amount }) => (typeof amount === 'bigint' ? fraction(amount) : amount)));
}

function eatenBefore({ eaters, from }: Choice): Fraction {
  return sumFractions(
    eaters.map(({ eaterId, perDay }) => multiplyFractions(perDay, fraction(from.get(eaterId) ?? 0))),
  );
}

function perDayOf({ eaters }: Choice): Fraction {
  return sumFractions(eaters.map(({ perDay }) => perDay));
}

/** The formula itself: the least over all choices of (food + what they eat before) over what they eat a day. */
function daysByFormula(input: DaysCoveredInput): Fraction | 'no-end' {
  const ends = choicesOf(input).map((choice) =>
    divideFractions(addFractions(foodFor(choice, input.lots), eatenBefore(choice)), perDayOf(choice)),
  );
  return ends.toSorted(compareFractions)[0] ?? 'no-end';
}

/** How much is lacking when each eater is to be fed until a day of their own: the largest lack of any choice, or 0. */
function lackingByFormula(input: DaysCoveredInput, endOf: (eaterId: string) => Fraction): Fraction {
  const lacks = choicesOf(input).map((choice) => {
    const needs = choice.eaters.map(({ eaterId, perDay }) => {
      const span = subtractFractions(endOf(eaterId), fraction(choice.from.get(eaterId) ?? 0));
      return span.numerator > 0n ? multiplyFractions(perDay, span) : NONE;
    });
    return subtractFractions(sumFractions(needs), foodFor(choice, input.lots));
  });
  return lacks.reduce((most, lack) => (compareFractions(lack, most) > 0 ? lack : most), NONE);
}

const EATERS = ['Ana', 'Ben', 'Cy'] as const;
const someRates: fc.Arbitrary<EaterRate[]> = fc
  .subarray([...EATERS], { minLength: 1 })
  .chain((ids) =>
    fc.tuple(
      ...ids.map((eaterId) =>
        fc
          .record({ top: fc.integer({ min: 0, max: 9 }), bottom: fc.integer({ min: 1, max: 3 }) })
          .map(({ top, bottom }) => ({ eaterId, perDay: fraction(top, bottom) })),
      ),
    ),
  );
const aDay = fc.oneof(fc.constant(null), fc.integer({ min: -1, max: 12 }));
const someStock: fc.Arbitrary<DaysCoveredInput> = someRates.chain((rates) => {
  const ids = rates.map(({ eaterId }) => eaterId);
  const aLot = fc.record({
    amount: fc.integer({ min: 0, max: 60 }).map(BigInt),
    daysLeft: aDay,
    eaterIds: fc.subarray(ids),
  });
  return fc
    .array(aLot, { maxLength: 4 })
    .map((lots) => ({ rates, lots: lots.map((lot, place) => ({ lotId: `lot ${place}`, ...lot })) }));
});

function expectNotAbove(a: DaysCovered['days'], b: DaysCovered['days']): void {
  if (b === 'no-end') return;
  expect(a).not.toBe('no-end');
  if (a !== 'no-end') expect(compareFractions(a, b)).toBeLessThanOrEqual(0);
}

describe('the exact days of a stock', () => {
  test('are the least that the formula over all sets of eaters gives', () => {
    fc.assert(
      fc.property(someStock, (input) => {
        expect(daysCovered(input).days).toEqual(daysByFormula(input));
      }),
      { numRuns: 400 },
    );
  });

  test('never pass what the whole mass over the whole rate would last', () => {
    fc.assert(
      fc.property(someStock, (input) => {
        const { days, naiveDays } = daysCovered(input);
        expectNotAbove(days, naiveDays);
      }),
    );
  });

  test('never fall when stock is added', () => {
    fc.assert(
      fc.property(
        someStock,
        fc.integer({ min: 0, max: 60 }),
        aDay,
        fc.subarray([...EATERS]),
        (input, grams, daysLeft, who) => {
          const eaterIds = input.rates.flatMap(({ eaterId }) =>
            who.some((id) => id === eaterId) ? eaterId : [],
          );
          const more = { lotId: 'added', amount: BigInt(grams), daysLeft, eaterIds };
          expectNotAbove(
            daysCovered(input).days,
            daysCovered({ ...input, lots: [...input.lots, more] }).days,
          );
        },
      ),
    );
  });

  test('never rise when an eater is added, whatever that eater may eat', () => {
    fc.assert(
      fc.property(
        someStock,
        fc.integer({ min: 0, max: 9 }),
        fc.array(fc.boolean()),
        (input, perDay, eats) => {
          const rates = [...input.rates, { eaterId: 'Dee', perDay: fraction(perDay) }];
          const lots = input.lots.map((lot, place) => ({
            ...lot,
            eaterIds: eats[place] ? [...lot.eaterIds, 'Dee'] : lot.eaterIds,
          }));
          expectNotAbove(daysCovered({ rates, lots }).days, daysCovered(input).days);
        },
      ),
    );
  });

  test('never fall when an exclusion is removed', () => {
    fc.assert(
      fc.property(someStock, fc.nat(), fc.nat(), (input, whichLot, whichEater) => {
        const eater = input.rates[whichEater % input.rates.length]?.eaterId ?? 'Ana';
        const lots = input.lots.map((lot, place) => {
          const isFreed = place === whichLot % input.lots.length && !lot.eaterIds.includes(eater);
          return isFreed ? { ...lot, eaterIds: [...lot.eaterIds, eater] } : lot;
        });
        expectNotAbove(daysCovered(input).days, daysCovered({ ...input, lots }).days);
      }),
    );
  });

  test('do not depend on the order in which eaters and lots are listed', () => {
    fc.assert(
      fc.property(someStock, (input) => {
        const turned = { rates: input.rates.toReversed(), lots: input.lots.toReversed() };
        const [one, other] = [daysCovered(input), daysCovered(turned)];
        expect(other.days).toEqual(one.days);
        expect(other.limitingEaterIds.toSorted()).toEqual(one.limitingEaterIds.toSorted());
        expect(other.endsByEater.toReversed()).toEqual(one.endsByEater);
      }),
    );
  });

  test('are the same for two eaters of one diet as for one who eats for both', () => {
    const wheat = { lotId: 'wheat', amount: 90_000n, daysLeft: 100, eaterIds: ['Ana', 'Ben'] };
    const rates = [
      { eaterId: 'Ana', perDay: fraction(400) },
      { eaterId: 'Ben', perDay: fraction(500) },
    ];
    const both = daysCovered({ rates, lots: [wheat] });
    const one = daysCovered({
      rates: [{ eaterId: 'Ana', perDay: fraction(900) }],
      lots: [{ ...wheat, eaterIds: ['Ana'] }],
    });
    expect(both.days).toEqual(fraction(100));
    expect(one.days).toEqual(both.days);
  });
});

describe('the end of each eater', () => {
  const endsOf = (input: DaysCoveredInput): Map<string, DaysCovered['days']> =>
    new Map(daysCovered(input).endsByEater.map(({ eaterId, days }) => [eaterId, days]));
  const endIn = (ends: ReadonlyMap<string, DaysCovered['days']>, eaterId: string): Fraction => {
    const end = ends.get(eaterId);
    return end === undefined || end === 'no-end' ? NONE : end;
  };

  test('can be reached by all of them at once', () => {
    fc.assert(
      fc.property(someStock, (input) => {
        const ends = endsOf(input);
        expect(lackingByFormula(input, (eaterId) => endIn(ends, eaterId))).toEqual(NONE);
      }),
    );
  });

  test('cannot come a moment later even if those who last longer gave up all they have beyond it', () => {
    const moment = fraction(1, 1_000_000);
    fc.assert(
      fc.property(someStock, (input) => {
        const ends = endsOf(input);
        for (const { eaterId } of input.rates.filter(({ perDay }) => perDay.numerator > 0n)) {
          const mine = endIn(ends, eaterId);
          const lacking = lackingByFormula(input, (id) => {
            if (id === eaterId) return addFractions(mine, moment);
            return compareFractions(endIn(ends, id), mine) > 0 ? mine : endIn(ends, id);
          });
          expect(lacking.numerator).toBeGreaterThan(0n);
        }
      }),
    );
  });

  test('is the end of the household for exactly the limiting eaters', () => {
    fc.assert(
      fc.property(someStock, (input) => {
        const { days, limitingEaterIds, endsByEater } = daysCovered(input);
        const first = endsByEater
          .filter((end) => end.days !== 'no-end')
          .filter((end) => {
            return days !== 'no-end' && end.days !== 'no-end' && compareFractions(end.days, days) === 0;
          });
        expect(first.map(({ eaterId }) => eaterId)).toEqual(limitingEaterIds);
      }),
    );
  });
});

describe('food at risk', () => {
  /** By the cut of the flow without a horizon: nobody can eat more than the least over all choices of every eater. */
  function mostEaten({ rates, lots }: DaysCoveredInput): Fraction {
    const ending = lots.filter(({ daysLeft }) => daysLeft !== null);
    const everyone = choicesOf({ rates, lots: ending }).filter(
      ({ eaters }) => eaters.length === rates.length,
    );
    const eaten = everyone.map((choice) => addFractions(foodFor(choice, ending), eatenBefore(choice)));
    return eaten.toSorted(compareFractions)[0] ?? NONE;
  }

  test('is as little as any plan can leave', () => {
    fc.assert(
      fc.property(someStock, (input) => {
        const held = input.lots.flatMap(({ daysLeft, amount }) =>
          daysLeft !== null && typeof amount === 'bigint' ? fraction(amount) : [],
        );
        const left = subtractFractions(sumFractions(held), mostEaten(input));
        expect(sumFractions(daysCovered(input).atRisk.map(({ amount }) => amount))).toEqual(left);
      }),
    );
  });

  test('lies in what ends later, since what ends first is eaten first', () => {
    const { atRisk } = daysCovered({
      rates: [{ eaterId: 'Ana', perDay: fraction(1000) }],
      lots: [
        { lotId: 'rice', amount: 60_000n, daysLeft: 60, eaterIds: ['Ana'] },
        { lotId: 'oats', amount: 10_000n, daysLeft: 30, eaterIds: ['Ana'] },
      ],
    });
    expect(atRisk).toEqual([{ lotId: 'rice', amount: fraction(10_000) }]);
  });

  test('is the whole of a lot that nobody may eat or that is past, and nothing of a lot without a last day', () => {
    const { atRisk, naiveDays } = daysCovered({
      rates: [{ eaterId: 'Ana', perDay: fraction(10) }],
      lots: [
        { lotId: 'past', amount: 500n, daysLeft: 0, eaterIds: ['Ana'] },
        { lotId: 'not hers', amount: 300n, daysLeft: 90, eaterIds: [] },
        { lotId: 'sugar', amount: 200n, daysLeft: null, eaterIds: ['Ana'] },
      ],
    });
    expect(atRisk).toEqual([
      { lotId: 'past', amount: fraction(500) },
      { lotId: 'not hers', amount: fraction(300) },
    ]);
    expect(naiveDays).toEqual(fraction(50));
  });
});

describe('the gap', () => {
  test('is the largest lack of any set of eaters, at every day up to the target', () => {
    const target = 15;
    fc.assert(
      fc.property(someStock, fc.integer({ min: 0, max: 30 }), (input, halfDays) => {
        const pieces = gapPieces(input, target);
        const days = fraction(halfDays, 2);
        expect(gapAt(pieces, days)).toEqual(lackingByFormula(input, () => days));
      }),
      { numRuns: 250 },
    );
  });

  test('closes with exactly that much of a food that all may eat, and not with a gram less', () => {
    const target = fraction(15);
    fc.assert(
      fc.property(someStock, (input) => {
        const gap = gapAt(gapPieces(input, 15), target);
        const eaterIds = input.rates.map(({ eaterId }) => eaterId);
        const withMore = (amount: Fraction): DaysCovered['days'] =>
          daysCovered({
            ...input,
            lots: [...input.lots, { lotId: 'bought', amount, daysLeft: null, eaterIds }],
          }).days;
        expectNotAbove(target, withMore(gap));
        if (gap.numerator === 0n) return;
        const less = withMore(multiplyFractions(gap, fraction(999, 1000)));
        expect(less === 'no-end' ? 1 : compareFractions(less, target)).toBeLessThan(0);
      }),
    );
  });
});

describe('a stock that makes no sense', () => {
  const ana = { eaterId: 'Ana', perDay: fraction(1) };
  const lot = { lotId: 'a', amount: 1n, daysLeft: 1, eaterIds: ['Ana'] };
  test.for([
    { because: 'an eater stands once', rates: [ana, ana], lots: [] },
    { because: 'a lot stands once', rates: [ana], lots: [lot, lot] },
    { because: 'eats less than nothing', rates: [{ ...ana, perDay: fraction(-1) }], lots: [] },
    { because: 'holds less than nothing', rates: [ana], lots: [{ ...lot, amount: -1n }] },
    { because: 'whole days left', rates: [ana], lots: [{ ...lot, daysLeft: 1.5 }] },
    { because: 'without a rate', rates: [ana], lots: [{ ...lot, eaterIds: ['Ben'] }] },
  ])('is refused: $because', ({ because, rates, lots }) => {
    expect(() => daysCovered({ rates, lots })).toThrow(because);
  });

  test('has no end when nobody eats', () => {
    expect(daysCovered({ rates: [{ ...ana, perDay: NONE }], lots: [lot] })).toEqual({
      days: 'no-end',
      wholeDays: null,
      limitingEaterIds: [],
      atRisk: [{ lotId: 'a', amount: fraction(1) }],
      naiveDays: 'no-end',
      endsByEater: [{ eaterId: 'Ana', days: 'no-end' }],
    });
  });
});

/** Twelve eaters of four diets and two hundred lots, each with its own last day: the largest household we plan for. */
test('a household of twelve eaters and two hundred lots is answered within what its food naively lasts', () => {
  const rates = Array.from({ length: 12 }, (_, place) => ({
    eaterId: `eater ${place}`,
    perDay: fraction(2485 + place, 5),
  }));
  const lots = Array.from({ length: 200 }, (_, place) => ({
    lotId: `lot ${place}`,
    amount: BigInt(5000 + ((place * 7919) % 17_000)),
    daysLeft: 20 + ((place * 37) % 400),
    eaterIds: rates.filter((_rate, eater) => (place * 5) % 7 !== eater % 4).map(({ eaterId }) => eaterId),
  }));
  const { days, naiveDays } = daysCovered({ rates, lots });
  expect(compareDays(days, fraction(0))).toBeGreaterThan(0);
  expect(compareDays(days, naiveDays)).toBeLessThanOrEqual(0);
});
