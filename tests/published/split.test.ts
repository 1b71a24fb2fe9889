import { SPLIT_RULES, type SplitRule, splitByRule } from '@sheafbook/sharing';
import { fractionToNumber } from '@sheafbook/units';
import { expect, test } from 'vitest';

function exactAwards(rule: SplitRule, claimed: readonly number[], availableUnits: number): number[] {
  const claims = claimed.map((claimUnits, position) => ({
    ownerId: `owner ${position + 1}`,
    seat: position + 1,
    claimUnits,
    pledgeOrder: position,
  }));
  return splitByRule({ rule, availableUnits, claims }).awards.map((award) =>
    fractionToNumber(award.exactUnits),
  );
}

function expectClose(awards: readonly number[], published: readonly number[]): void {
  expect(awards).toHaveLength(published.length);
  awards.forEach((award, position) => {
    // 0.0011: one source rounds 66.6667 down to 66.666.
    expect(Math.abs(award - (published[position] ?? Number.NaN))).toBeLessThan(0.0011);
  });
}

// Wikipedia, "Constrained equal awards" and "Constrained equal losses", examples with two and with three claimants;
// both cite W. Thomson, "Axiomatic and game-theoretic analysis of bankruptcy and taxation problems: a survey",
// Mathematical Social Sciences 45 (2003).
test.for<{ rule: SplitRule; claimed: number[]; available: number; awards: number[] }>([
  { rule: 'equal-awards', claimed: [60, 90], available: 100, awards: [50, 50] },
  { rule: 'equal-awards', claimed: [40, 80], available: 100, awards: [40, 60] },
  { rule: 'equal-awards', claimed: [50, 100, 150], available: 100, awards: [33.333, 33.333, 33.333] },
  { rule: 'equal-awards', claimed: [50, 100, 150], available: 200, awards: [50, 75, 75] },
  { rule: 'equal-awards', claimed: [50, 100, 150], available: 300, awards: [50, 100, 150] },
  { rule: 'equal-awards', claimed: [100, 200, 300], available: 300, awards: [100, 100, 100] },
  { rule: 'equal-awards', claimed: [100, 200, 300], available: 500, awards: [100, 200, 200] },
  { rule: 'equal-losses', claimed: [60, 90], available: 100, awards: [35, 65] },
  { rule: 'equal-losses', claimed: [50, 100], available: 100, awards: [25, 75] },
  { rule: 'equal-losses', claimed: [40, 80], available: 100, awards: [30, 70] },
  { rule: 'equal-losses', claimed: [50, 100, 150], available: 100, awards: [0, 25, 75] },
  { rule: 'equal-losses', claimed: [50, 100, 150], available: 200, awards: [16.667, 66.666, 116.667] },
  { rule: 'equal-losses', claimed: [50, 100, 150], available: 300, awards: [50, 100, 150] },
])('$rule of $claimed with $available is as published', ({ rule, claimed, available, awards }) => {
  expectClose(exactAwards(rule, claimed, available), awards);
});

// Claims 200/150/100/50: arithmetic, with λ = 125, μ = 25 for 400 and λ = 50, μ = 250/3 for 200.
test.for<{ rule: SplitRule; available: number; awards: number[] }>([
  { rule: 'proportional', available: 400, awards: [160, 120, 80, 40] },
  { rule: 'equal-awards', available: 400, awards: [125, 125, 100, 50] },
  { rule: 'equal-losses', available: 400, awards: [175, 125, 75, 25] },
  { rule: 'proportional', available: 200, awards: [80, 60, 40, 20] },
  { rule: 'equal-awards', available: 200, awards: [50, 50, 50, 50] },
  { rule: 'equal-losses', available: 200, awards: [116.6667, 66.6667, 16.6667, 0] },
])('$rule of 200, 150, 100 and 50 with $available is $awards', ({ rule, available, awards }) => {
  expectClose(exactAwards(rule, [200, 150, 100, 50], available), awards);
});

// Babylonian Talmud, Ketubot 93a, the estate of 100, 200 or 300 among claims of 100, 200, 300 (as told by S. Schecter, "How
// the Talmud divides an estate among creditors"); 400 and 500 are arithmetic. Aumann and Maschler (Journal of Economic Theory
// 36, 1985) explain it by two of our rules: equal awards of the half claims while the estate is at most half the claims, beyond
// it the half claims and equal losses of the other halves.
test.for([
  { estate: 100, awards: [33.3333, 33.3333, 33.3333] },
  { estate: 200, awards: [50, 75, 75] },
  { estate: 300, awards: [50, 100, 150] },
  { estate: 400, awards: [50, 125, 225] },
  { estate: 500, awards: [66.6667, 166.6667, 266.6667] },
])('equal awards and equal losses of half claims explain the old estate of $estate', ({ estate, awards }) => {
  const halves = [50, 100, 150];
  const explained =
    estate <= 300
      ? exactAwards('equal-awards', halves, estate)
      : exactAwards('equal-losses', halves, estate - 300).map(
          (award, position) => award + (halves[position] ?? 0),
        );
  expectClose(explained, awards);
});

// Wikipedia, "Alabama paradox": claims of 6, 6 and 2 bags. One bag more and the smallest gets one bag less; its exact
// award, 10/7 and then 11/7 bags, did grow.
test('proportional rounding to whole bags can take a bag from the smallest when one more arrives', () => {
  const claims = [6, 6, 2].map((claimUnits, position) => ({
    ownerId: `owner ${position + 1}`,
    seat: position + 1,
    claimUnits,
    pledgeOrder: position,
  }));
  const bagsOf = (availableUnits: number) =>
    splitByRule({ rule: 'proportional', availableUnits, claims }).awards.map((award) => award.awardUnits);
  expect(bagsOf(10)).toEqual([4, 4, 2]);
  expect(bagsOf(11)).toEqual([5, 5, 1]);
});

test('there are exactly the six rules the group can choose from', () => {
  expect([...SPLIT_RULES].toSorted()).toEqual([
    'equal-awards',
    'equal-losses',
    'first-come',
    'need-first',
    'proportional',
    'rotation-of-loss',
  ]);
});
