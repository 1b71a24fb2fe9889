import fc from 'fast-check';
import { expect, test } from 'vitest';
import { carriesAfter } from './carry.ts';
import { splitByRule } from './split-rules.ts';
import type { SplitClaim } from './split-rules-terms.ts';

const claimsOf = (claimed: readonly number[], carries: readonly number[] = []): SplitClaim[] =>
  claimed.map((claimUnits, position) => ({
    ownerId: `owner ${position}`,
    seat: position + 1,
    claimUnits,
    pledgeOrder: position,
    carryUnits: carries[position] ?? 0,
  }));
const carried = (claims: readonly SplitClaim[], carries: readonly { carryUnits: number }[]) =>
  claims.map((claim, position) => ({ ...claim, carryUnits: carries[position]?.carryUnits ?? 0 }));

test('rotation of loss brings carries of +30, −20, 0 and −10 to nothing', () => {
  // Losses 10/50/20/20 against proportional 40/30/20/10: the changes are −30/+20/0/+10.
  const claims = claimsOf([200, 150, 100, 50], [30, -20, 0, -10]);
  const answer = splitByRule({ rule: 'rotation-of-loss', availableUnits: 400, claims });
  expect(carriesAfter(answer, claims).map((carry) => carry.carryUnits)).toEqual([0, 0, 0, 0]);
});

test('a household that was rounded down to whole bags gets its bag back at the next buy', () => {
  // Claims 4/3/2/1 bags of 100, seven came: 3/2/1/1, losses 100/100/100/0 against proportional 120/90/60/30.
  const claims = claimsOf([400, 300, 200, 100]);
  const buy = { rule: 'rotation-of-loss', availableUnits: 700, stepUnits: 100 } as const;
  const first = splitByRule({ ...buy, claims });
  expect(first.awards.map((award) => award.awardUnits)).toEqual([300, 200, 100, 100]);
  const carries = carriesAfter(first, claims);
  expect(carries.map((carry) => carry.carryUnits)).toEqual([-20, 10, 40, -30]);
  // The same again: exact losses 140/80/20/60, awards 2.6/2.2/1.8/0.4, and C, who bore 40 too much, gets both its bags.
  const second = splitByRule({ ...buy, claims: carried(claims, carries) });
  expect(second.awards.map((award) => award.awardUnits)).toEqual([300, 200, 200, 0]);
});

test('the carry of a delivery in two parts comes from its awards added up', () => {
  const claims = claimsOf([10, 10]);
  const added = { awards: claims.map(({ ownerId }, position) => ({ ownerId, awardUnits: 7 + position })) };
  expect(carriesAfter(added, claims)).toEqual([
    { ownerId: 'owner 0', carryUnits: 0 }, // loss 3, proportional 2.5, rounded up to 3 for the lower seat
    { ownerId: 'owner 1', carryUnits: 0 },
  ]);
});

test('carries that add up to nothing still do after a split by any rule', () => {
  const someCase = fc.record({
    claimed: fc.array(fc.nat(60), { minLength: 1, maxLength: 7 }),
    carries: fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 7, maxLength: 7 }),
    availableUnits: fc.nat(300),
    rule: fc.constantFrom('proportional', 'equal-awards', 'equal-losses', 'first-come', 'rotation-of-loss'),
  });
  fc.assert(
    fc.property(someCase, ({ claimed, carries, availableUnits, rule }) => {
      const balanced = claimed.map((_, position) => carries[position] ?? 0);
      balanced[0] = -balanced.slice(1).reduce((sum, carry) => sum + carry, 0);
      const claims = claimsOf(claimed, balanced);
      const after = carriesAfter(splitByRule({ rule, availableUnits, claims }), claims.toReversed());
      expect(after.map((carry) => carry.ownerId)).toEqual(claims.map((claim) => claim.ownerId));
      expect(after.reduce((sum, carry) => sum + carry.carryUnits, 0)).toBe(0);
    }),
  );
});

test('carries stay small over many short buys, however whole bags fall', () => {
  // The same four claims again and again, seven bags of ten: rotation keeps everyone within one bag of its part.
  let claims = claimsOf([400, 300, 200, 100]);
  for (let buy = 0; buy < 50; buy += 1) {
    const answer = splitByRule({ rule: 'rotation-of-loss', availableUnits: 700, stepUnits: 100, claims });
    const carries = carriesAfter(answer, claims);
    for (const { carryUnits } of carries) expect(Math.abs(carryUnits)).toBeLessThan(100);
    claims = carried(claims, carries);
  }
});

test.for([
  { awards: [], message: /has no award/ },
  { awards: [{ ownerId: 'owner 0', awardUnits: 6 }], message: /exceeds its claim/ },
])('a carry without sense is refused: $message', ({ awards, message }) => {
  expect(() => carriesAfter({ awards }, claimsOf([5]))).toThrow(message);
});
