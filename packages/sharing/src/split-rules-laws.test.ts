import {
  addFractions,
  compareFractions,
  type Fraction,
  fraction,
  multiplyFractions,
  subtractFractions,
} from '@sheafbook/units';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { splitByRule } from './split-rules.ts';
import { SPLIT_RULES, type SplitClaim, type SplitRule } from './split-rules-terms.ts';

type Row = { claim: number; order: number; need: number; per: number; stock: number; carry: number };

const someRow = fc.record<Row>({
  claim: fc.integer({ min: 0, max: 60 }),
  order: fc.integer({ min: 0, max: 3 }),
  need: fc.integer({ min: 0, max: 5 }),
  per: fc.integer({ min: 1, max: 7 }),
  stock: fc.integer({ min: 0, max: 50 }),
  carry: fc.integer({ min: -20, max: 20 }),
});
const someRows = fc.array(someRow, { minLength: 1, maxLength: 7 });

function claimsFrom(rows: readonly Row[], stepUnits = 1): SplitClaim[] {
  return rows.map((row, position) => ({
    ownerId: `owner ${position}`,
    seat: position * 3 + 1,
    claimUnits: row.claim * stepUnits,
    pledgeOrder: row.order,
    dailyNeedUnits: fraction(row.need, row.per),
    stockUnits: row.stock,
    carryUnits: row.carry,
  }));
}

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
const sumExact = (values: readonly Fraction[]) => values.reduce(addFractions, fraction(0));
const exactOf = (rule: SplitRule, availableUnits: number, claims: readonly SplitClaim[]) =>
  splitByRule({ rule, availableUnits, claims }).awards.map((award) => award.exactUnits);
const awardedOf = (rule: SplitRule, availableUnits: number, claims: readonly SplitClaim[], stepUnits = 1) =>
  splitByRule({ rule, availableUnits, stepUnits, claims }).awards.map((award) => award.awardUnits);

/** Claims with something that does not meet them all, so that the rule itself is at work. */
const someShortage = someRows
  .map((rows) => claimsFrom(rows))
  .filter((claims) => claims.some((claim) => claim.claimUnits > 0))
  .chain((claims) => {
    const claimedUnits = sum(claims.map((claim) => claim.claimUnits));
    return fc.record({ claims: fc.constant(claims), availableUnits: fc.nat(claimedUnits - 1) });
  });

test.for(SPLIT_RULES)(
  '%s awards between nothing and the claim, and all that is available is accounted for',
  (rule) => {
    fc.assert(
      fc.property(
        someRows,
        fc.nat(300),
        fc.integer({ min: 1, max: 9 }),
        (rows, availableUnits, stepUnits) => {
          const claims = claimsFrom(rows);
          const answer = splitByRule({ rule, availableUnits, stepUnits, claims });
          const awarded = answer.awards.map((award) => award.awardUnits);
          expect(sum(awarded) + answer.surplusUnits).toBe(availableUnits);
          for (const award of answer.awards) {
            expect(award.awardUnits).toBeGreaterThanOrEqual(0);
            expect(award.awardUnits).toBeLessThanOrEqual(award.claimUnits);
            expect(compareFractions(award.exactUnits, fraction(0))).toBeGreaterThanOrEqual(0);
            expect(compareFractions(award.exactUnits, fraction(award.claimUnits))).toBeLessThanOrEqual(0);
          }
        },
      ),
    );
  },
);

test.for(SPLIT_RULES)('%s gives out everything to the unit while claims are not met', (rule) => {
  fc.assert(
    fc.property(someShortage, ({ claims, availableUnits }) => {
      const { awards, surplusUnits } = splitByRule({ rule, availableUnits, claims });
      expect(surplusUnits).toBe(0);
      expect(sumExact(awards.map((award) => award.exactUnits))).toEqual(fraction(availableUnits));
      for (const { awardUnits, exactUnits } of awards) {
        const gap = subtractFractions(fraction(awardUnits), exactUnits);
        expect(gap.numerator < gap.denominator && -gap.numerator < gap.denominator).toBe(true);
      }
    }),
  );
});

test.for(SPLIT_RULES)('%s sets aside less than a step when claims are whole steps', (rule) => {
  fc.assert(
    fc.property(someRows, fc.nat(300), fc.integer({ min: 1, max: 9 }), (rows, availableUnits, stepUnits) => {
      const claims = claimsFrom(rows, stepUnits);
      fc.pre(availableUnits < sum(claims.map((claim) => claim.claimUnits)));
      const answer = splitByRule({ rule, availableUnits, stepUnits, claims });
      expect(answer.surplusUnits).toBe(availableUnits % stepUnits);
      for (const award of answer.awards) expect(award.awardUnits % stepUnits).toBe(0);
    }),
  );
});

test.for(SPLIT_RULES)('%s does not mind the order in which claims are listed', (rule) => {
  const listed = someShortage.chain(({ claims, availableUnits }) =>
    fc.record({
      claims: fc.constant(claims),
      availableUnits: fc.constant(availableUnits),
      shuffled: fc.shuffledSubarray(claims, { minLength: claims.length }),
    }),
  );
  fc.assert(
    fc.property(listed, ({ claims, shuffled, availableUnits }) => {
      expect(splitByRule({ rule, availableUnits, claims: shuffled })).toEqual(
        splitByRule({ rule, availableUnits, claims }),
      );
    }),
  );
});

test.for(SPLIT_RULES)('%s never lessens an exact award when more is delivered', (rule) => {
  fc.assert(
    fc.property(someShortage, fc.integer({ min: 1, max: 40 }), ({ claims, availableUnits }, moreUnits) => {
      const before = exactOf(rule, availableUnits, claims);
      const after = exactOf(rule, availableUnits + moreUnits, claims);
      before.forEach((award, position) => {
        expect(compareFractions(award, after[position] ?? fraction(-1))).toBeLessThanOrEqual(0);
      });
    }),
  );
});

const KEEPS_PROMISE_IN_STEPS: readonly SplitRule[] = ['equal-awards', 'equal-losses', 'first-come'];

test.for(SPLIT_RULES)(
  '%s loses nobody more than its promise allows in whole steps when more is delivered',
  (rule) => {
    const mayLoseSteps = KEEPS_PROMISE_IN_STEPS.includes(rule) ? 0 : 1;
    const more = fc.record({ step: fc.integer({ min: 1, max: 5 }), units: fc.integer({ min: 1, max: 12 }) });
    fc.assert(
      fc.property(someRows, fc.nat(300), more, (rows, availableUnits, { step, units }) => {
        const claims = claimsFrom(rows, step);
        const before = awardedOf(rule, availableUnits, claims, step);
        const after = awardedOf(rule, availableUnits + units, claims, step);
        before.forEach((award, position) => {
          expect((after[position] ?? -1) - award).toBeGreaterThanOrEqual(-mayLoseSteps * step);
        });
      }),
      { numRuns: 300 },
    );
  },
);

test('equal awards give one and the same to all who are not met in full, and nobody gets more', () => {
  fc.assert(
    fc.property(someShortage, ({ claims, availableUnits }) => {
      const { awards } = splitByRule({ rule: 'equal-awards', availableUnits, claims });
      const unmet = awards.filter(
        (award) => compareFractions(award.exactUnits, fraction(award.claimUnits)) < 0,
      );
      const level = unmet[0]?.exactUnits;
      expect(level).toBeDefined();
      for (const award of unmet) expect(award.exactUnits).toEqual(level);
      for (const award of awards) {
        expect(compareFractions(award.exactUnits, level ?? fraction(0))).toBeLessThanOrEqual(0);
      }
    }),
  );
});

/** The textbook way to equal awards: from the smallest claim up, each gets its claim or an equal part of what is left. */
function fillWater(claimed: readonly number[], availableUnits: number): Fraction[] {
  const rising = claimed
    .map((claim, position) => ({ claim, position }))
    .toSorted((a, b) => a.claim - b.claim);
  const awards = claimed.map(() => fraction(0));
  let left = fraction(availableUnits);
  for (const [index, { claim, position }] of rising.entries()) {
    const evenPart = multiplyFractions(left, fraction(1, rising.length - index));
    const award = compareFractions(evenPart, fraction(claim)) < 0 ? evenPart : fraction(claim);
    awards[position] = award;
    left = subtractFractions(left, award);
  }
  return awards;
}

test('equal awards agree with filling like water from the smallest claim up', () => {
  fc.assert(
    fc.property(someShortage, ({ claims, availableUnits }) => {
      const claimed = claims.map((claim) => claim.claimUnits);
      expect(exactOf('equal-awards', availableUnits, claims)).toEqual(fillWater(claimed, availableUnits));
    }),
  );
});

test('equal losses cost the same to all who get anything, and nobody more than that', () => {
  fc.assert(
    fc.property(someShortage, ({ claims, availableUnits }) => {
      const { awards } = splitByRule({ rule: 'equal-losses', availableUnits, claims });
      const lossOf = (award: (typeof awards)[number]) =>
        subtractFractions(fraction(award.claimUnits), award.exactUnits);
      const served = awards.filter((award) => award.exactUnits.numerator > 0n);
      const level = served[0] ? lossOf(served[0]) : undefined;
      for (const award of served) expect(lossOf(award)).toEqual(level);
      for (const award of level ? awards : []) {
        expect(compareFractions(lossOf(award), level ?? fraction(0))).toBeLessThanOrEqual(0);
      }
    }),
  );
});

test('equal losses are equal awards of the loss, and proportional is its own counterpart', () => {
  fc.assert(
    fc.property(someShortage, ({ claims, availableUnits }) => {
      const claimed = claims.map((claim) => fraction(claim.claimUnits));
      const lossUnits = sum(claims.map((claim) => claim.claimUnits)) - availableUnits;
      const lessWhat = (losses: readonly Fraction[]) =>
        claimed.map((claim, position) => subtractFractions(claim, losses[position] ?? fraction(0)));
      expect(exactOf('equal-losses', availableUnits, claims)).toEqual(
        lessWhat(exactOf('equal-awards', lossUnits, claims)),
      );
      expect(exactOf('proportional', availableUnits, claims)).toEqual(
        lessWhat(exactOf('proportional', lossUnits, claims)),
      );
    }),
  );
});

test('need first leaves nobody below another in days covered who could still have been given some of its award', () => {
  fc.assert(
    fc.property(someShortage, ({ claims, availableUnits }) => {
      const awards = exactOf('need-first', availableUnits, claims);
      const rows = claims.map((claim, position) => {
        const award = awards[position] ?? fraction(0);
        const need = claim.dailyNeedUnits ?? fraction(0);
        const held = addFractions(fraction(claim.stockUnits ?? 0), award);
        return { award, need, held, isMet: compareFractions(award, fraction(claim.claimUnits)) === 0 };
      });
      const gotSome = rows.filter((row) => row.award.numerator > 0n);
      for (const poorer of rows.filter((row) => !row.isMet && row.need.numerator > 0n)) {
        for (const richer of gotSome) {
          // held/need compared crosswise; whoever needs nothing is covered for ever, so it must not have got any.
          const crosswise = compareFractions(
            multiplyFractions(poorer.held, richer.need),
            multiplyFractions(richer.held, poorer.need),
          );
          expect(crosswise).toBeGreaterThanOrEqual(0);
        }
      }
    }),
  );
});

test('rotation of loss with no carries is proportional', () => {
  fc.assert(
    fc.property(someShortage, ({ claims, availableUnits }) => {
      const evened = claims.map((claim) => ({ ...claim, carryUnits: 0 }));
      expect(exactOf('rotation-of-loss', availableUnits, evened)).toEqual(
        exactOf('proportional', availableUnits, evened),
      );
    }),
  );
});

test('equal claims of a proportional or equal rule differ by one unit at most, the lower seat never less', () => {
  const evenRules: readonly SplitRule[] = ['proportional', 'equal-awards', 'equal-losses'];
  fc.assert(
    fc.property(someShortage, fc.constantFrom(...evenRules), ({ claims, availableUnits }, rule) => {
      const awards = awardedOf(rule, availableUnits, claims);
      claims.forEach((claim, position) => {
        const twin = claims.findIndex((other, at) => at > position && other.claimUnits === claim.claimUnits);
        if (twin === -1) return;
        expect([0, 1]).toContain((awards[position] ?? 0) - (awards[twin] ?? 0));
      });
    }),
  );
});
