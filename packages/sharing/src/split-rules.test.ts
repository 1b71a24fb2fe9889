import { fraction } from '@sheafbook/units';
import { expect, test } from 'vitest';
import { splitByRule } from './split-rules.ts';
import type { SplitClaim, SplitRule } from './split-rules-terms.ts';

/** Claims of households A, B, C … in seats 1, 2, 3 …, pledged in that order, with what each rule may read. */
function claimsOf(claimed: readonly number[], more: (position: number) => Partial<SplitClaim> = () => ({})) {
  return claimed.map(
    (claimUnits, position): SplitClaim => ({
      ownerId: String.fromCharCode(65 + position),
      seat: position + 1,
      claimUnits,
      pledgeOrder: position,
      ...more(position),
    }),
  );
}

function awardsOf(rule: SplitRule, availableUnits: number, claims: readonly SplitClaim[]): number[] {
  return splitByRule({ rule, availableUnits, claims }).awards.map((award) => award.awardUnits);
}

// Claims 200/150/100/50, 400 available: λ = 125, μ = 25, T = 128; needs 4/3/2/1 a day on stocks of 400/60/80/90;
// carries +30/−20/0/−10 against proportional losses of 40/30/20/10.
const fourClaims = claimsOf([200, 150, 100, 50], (position) => ({
  dailyNeedUnits: fraction([4, 3, 2, 1][position] ?? 0),
  stockUnits: [400, 60, 80, 90][position] ?? 0,
  carryUnits: [30, -20, 0, -10][position] ?? 0,
}));

test.for<{ rule: SplitRule; awards: number[] }>([
  { rule: 'proportional', awards: [160, 120, 80, 40] },
  { rule: 'equal-awards', awards: [125, 125, 100, 50] },
  { rule: 'equal-losses', awards: [175, 125, 75, 25] },
  { rule: 'first-come', awards: [200, 150, 50, 0] },
  { rule: 'need-first', awards: [112, 150, 100, 38] },
  { rule: 'rotation-of-loss', awards: [190, 100, 80, 30] },
])('$rule divides 400 among claims of 200, 150, 100 and 50 as $awards', ({ rule, awards }) => {
  expect(awardsOf(rule, 400, fourClaims)).toEqual(awards);
});

test('first come follows the order of the pledges, not of the seats', () => {
  const pledged = fourClaims.map((claim) => ({ ...claim, pledgeOrder: 'DBAC'.indexOf(claim.ownerId) }));
  expect(awardsOf('first-come', 400, pledged)).toEqual([200, 150, 0, 50]);
});

test('pledges made at one moment come by seat', () => {
  const pledged = fourClaims.map((claim) => ({ ...claim, pledgeOrder: 7 })).toReversed();
  expect(awardsOf('first-come', 400, pledged)).toEqual([200, 150, 50, 0]);
});

test('need first levels the coverage of all who are not met in full', () => {
  // Coverage after: (400 + 112) / 4 = 128 and (90 + 38) / 1 = 128 days; B and C stop at their claims with 70 and 90.
  const exact = splitByRule({ rule: 'need-first', availableUnits: 400, claims: fourClaims }).awards.map(
    (award) => award.exactUnits,
  );
  expect(exact).toEqual([fraction(112), fraction(150), fraction(100), fraction(38)]);
});

test('need first fills whoever eats none of it last, in proportion to their claims', () => {
  const claims = claimsOf([10, 20, 40], (position) => ({
    dailyNeedUnits: fraction([1, 0, 0][position] ?? 0, 3),
    stockUnits: [999, 0, 0][position] ?? 0,
  }));
  expect(awardsOf('need-first', 10, claims)).toEqual([10, 0, 0]);
  expect(awardsOf('need-first', 40, claims)).toEqual([10, 10, 20]);
});

test('rotation of loss spreads what a capped household cannot bear over the others by one level', () => {
  // Loss 8 of claims 4/8/8, proportional 1.6/3.2/3.2, carries −12/6/6: targets 13.6/−2.8/−2.8. A loses its whole claim of 4,
  // the other 4 fall on B and C by λ = 4.8: 2 each.
  const claims = claimsOf([4, 8, 8], (position) => ({ carryUnits: [-12, 6, 6][position] ?? 0 }));
  expect(awardsOf('rotation-of-loss', 12, claims)).toEqual([0, 6, 6]);
});

// Autumn grain, in pounds: wheat with 5 of 300 lost, and beans with one bag of five short.
test('autumn grain shares wheat by equal awards, capped at 115', () => {
  const answer = splitByRule({
    rule: 'equal-awards',
    availableUnits: 295,
    claims: claimsOf([120, 100, 50, 30]),
  });
  expect(answer.awards.map((award) => award.awardUnits)).toEqual([115, 100, 50, 30]);
  expect(answer.sentence).toBe('Equal awards: each gets its claim or 115, whichever is less.');
});

test('autumn grain shares beans in proportion, in pounds and in grams', () => {
  const claims = claimsOf([50, 35, 25, 15]);
  expect(awardsOf('proportional', 100, claims)).toEqual([40, 28, 20, 12]);
  // Four bags of 11,340 g by claims in grams at 453.59237 g a pound: exact 12,700.8 and 5,443.2.
  const inGrams = splitByRule({
    rule: 'proportional',
    availableUnits: 45_360,
    claims: claimsOf([22_680, 15_876, 11_340, 6804]),
  });
  expect(inGrams.awards.map((award) => award.awardUnits)).toEqual([18_144, 12_701, 9072, 5443]);
  expect(inGrams.awards.map((award) => award.exactUnits)).toEqual([
    fraction(18_144),
    fraction(127_008, 10),
    fraction(9072),
    fraction(54_432, 10),
  ]);
  expect(inGrams.awards.map((award) => award.gotSpareUnit)).toEqual([false, true, false, false]);
});

test('the wheat of autumn grain splits to the gram with a torn bag', () => {
  // Five bags of 22,680 g and one of 20,412 g; the claims are the pounds of the fill, the awards 115/100/50/30 lb.
  const claims = claimsOf([120, 100, 50, 30].map((pounds) => (pounds * 22_680) / 50));
  expect(awardsOf('equal-awards', 5 * 22_680 + 20_412, claims)).toEqual([52_164, 45_360, 22_680, 13_608]);
});

// Whole bags, claims 4/3/2/1: of 7 the remainders are 8, 1, 4, 7 tenths; of 8 they are 2, 4, 6, 8 tenths.
test.for([
  { landed: 7, awards: [3, 2, 1, 1], remainders: [8, 1, 4, 7] },
  { landed: 8, awards: [3, 2, 2, 1], remainders: [2, 4, 6, 8] },
])('$landed whole bags for 4, 3, 2 and 1 claimed give $awards', ({ landed, awards, remainders }) => {
  const answer = splitByRule({
    rule: 'proportional',
    availableUnits: landed,
    claims: claimsOf([4, 3, 2, 1]),
  });
  expect(answer.awards.map((award) => award.awardUnits)).toEqual(awards);
  const tenths = answer.awards.map(({ exactUnits }) =>
    Number((exactUnits.numerator * 10n) / exactUnits.denominator),
  );
  expect(tenths.map((tenth) => tenth % 10)).toEqual(remainders);
});

test('whole bags counted in grams come out as whole bags counted in bags', () => {
  const bagGrams = 22_680;
  const answer = splitByRule({
    rule: 'proportional',
    availableUnits: 7 * bagGrams,
    stepUnits: bagGrams,
    claims: claimsOf([4, 3, 2, 1].map((bags) => bags * bagGrams)),
  });
  expect(answer.awards.map((award) => award.awardUnits / bagGrams)).toEqual([3, 2, 1, 1]);
});

test('what makes no whole step is set aside for the common stock before the rule divides', () => {
  const answer = splitByRule({
    rule: 'equal-losses',
    availableUnits: 403,
    stepUnits: 50,
    claims: claimsOf([200, 150, 100, 50]),
  });
  expect(answer.awards.map((award) => award.awardUnits)).toEqual([200, 150, 50, 0]);
  expect(answer.awards.map((award) => award.exactUnits)).toEqual(
    [175, 125, 75, 25].map((units) => fraction(units)),
  );
  expect(answer.surplusUnits).toBe(3);
  expect(answer.sentence).toContain('Left for the common stock: 3, which is no whole step of 50');
});

test('a step that would pass a claim goes to the next largest remainder', () => {
  // Exact 5.25, 5.25 and 19.5 of 7, 7 and 26 in steps of 5: remainders 1/20, 1/20, 9/10; whole steps 1, 1, 3, one left to C.
  expect(
    splitByRule({ rule: 'proportional', availableUnits: 30, stepUnits: 5, claims: claimsOf([7, 7, 26]) })
      .awards,
  ).toMatchObject([{ awardUnits: 5 }, { awardUnits: 5 }, { awardUnits: 20 }]);
  // Exact 9 and 11 in steps of 5: A has the larger remainder, 4/5, but a second step would pass its claim of 9.
  const answer = splitByRule({
    rule: 'equal-awards',
    availableUnits: 20,
    stepUnits: 5,
    claims: claimsOf([9, 17]),
  });
  expect(answer.awards).toMatchObject([
    { exactUnits: fraction(9), awardUnits: 5, gotSpareUnit: false },
    { exactUnits: fraction(11), awardUnits: 15, gotSpareUnit: true },
  ]);
});

test('steps that no claim has room for stay in the common stock', () => {
  const answer = splitByRule({
    rule: 'proportional',
    availableUnits: 15,
    stepUnits: 5,
    claims: claimsOf([9, 9]),
  });
  expect(answer).toMatchObject({ awards: [{ awardUnits: 5 }, { awardUnits: 5 }], surplusUnits: 5 });
});

test.for<SplitRule>([
  'proportional',
  'equal-awards',
  'equal-losses',
  'first-come',
  'need-first',
  'rotation-of-loss',
])('%s meets every claim when there is enough and leaves the rest to the common stock', (rule) => {
  const answer = splitByRule({ rule, availableUnits: 510, stepUnits: 7, claims: fourClaims });
  expect(answer.awards.map((award) => award.awardUnits)).toEqual([200, 150, 100, 50]);
  expect(answer.surplusUnits).toBe(10);
  expect(answer.sentence).toBe(
    'All 500 claimed are there, so every claim is met in full. Left for the common stock: 10.',
  );
});

test('a delivery that nobody claims goes to the common stock whole', () => {
  expect(splitByRule({ rule: 'proportional', availableUnits: 9, claims: [] })).toMatchObject({
    awards: [],
    surplusUnits: 9,
  });
});

test('the sentence of need first tells nothing of anyone’s coverage', () => {
  const { sentence } = splitByRule({ rule: 'need-first', availableUnits: 400, claims: fourClaims });
  expect(sentence).not.toMatch(/\d/);
});

test.for<{ rule: SplitRule; sentence: string }>([
  {
    rule: 'proportional',
    sentence: 'Proportional: 200 to divide among 500 claimed, so each gets 2/5 of its claim.',
  },
  { rule: 'equal-awards', sentence: 'Equal awards: each gets its claim or 50, whichever is less.' },
  {
    rule: 'equal-losses',
    sentence:
      'Equal losses: each goes without 83 1/3 of its claim, or without all of it if it claimed less. Shares are rounded ' +
      'down to whole units; those left over go to the largest remainders, and among equals to the lower seat.',
  },
  {
    rule: 'rotation-of-loss',
    sentence:
      'Rotation of loss: the missing 300 is borne in proportion to claims, set right by what each has borne before.',
  },
])('$rule says in a sentence how it divided', ({ rule, sentence }) => {
  expect(splitByRule({ rule, availableUnits: 200, claims: fourClaims }).sentence).toBe(sentence);
});

const twoClaims = claimsOf([3, 4]);
test.for([
  { claims: twoClaims, available: 1.5, step: 1, message: /availableUnits must be a whole number/ },
  { claims: twoClaims, available: -1, step: 1, message: /availableUnits must be a whole number/ },
  { claims: twoClaims, available: 5, step: 0, message: /stepUnits must be at least 1/ },
  { claims: claimsOf([-3]), available: 5, step: 1, message: /claimUnits must be a whole number/ },
  { claims: claimsOf([2 ** 52, 2 ** 52]), available: 5, step: 1, message: /sum of the claims/ },
  {
    claims: claimsOf([3, 4], () => ({ seat: 7 })),
    available: 5,
    step: 1,
    message: /two claims have one seat/,
  },
  {
    claims: claimsOf([3, 4], () => ({ ownerId: 'A' })),
    available: 5,
    step: 1,
    message: /two claims have one owner/,
  },
  {
    claims: claimsOf([3, 4], () => ({ carryUnits: 0.5 })),
    available: 5,
    step: 1,
    message: /carryUnits must be a whole/,
  },
])('a split without sense is refused: $message', ({ claims, available, step, message }) => {
  expect(() =>
    splitByRule({ rule: 'proportional', availableUnits: available, stepUnits: step, claims }),
  ).toThrow(message);
});

test.for<{ rule: SplitRule; claims: SplitClaim[]; message: RegExp }>([
  { rule: 'rotation-of-loss', claims: twoClaims, message: /reads the carry/ },
  { rule: 'need-first', claims: twoClaims, message: /reads the daily need/ },
  {
    rule: 'need-first',
    claims: claimsOf([3, 4], () => ({ dailyNeedUnits: fraction(1) })),
    message: /reads the stock/,
  },
  {
    rule: 'need-first',
    claims: claimsOf([3, 4], () => ({ dailyNeedUnits: fraction(-1), stockUnits: 0 })),
    message: /daily need cannot be negative/,
  },
])('$rule is refused without what it reads: $message', ({ rule, claims, message }) => {
  expect(() => splitByRule({ rule, availableUnits: 5, claims })).toThrow(message);
});
