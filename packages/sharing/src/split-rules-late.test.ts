import { fraction } from '@sheafbook/units';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { splitByRule } from './split-rules.ts';
import { remainingClaims } from './split-rules-late.ts';
import { SPLIT_RULES, type SplitClaim } from './split-rules-terms.ts';

const claimsOf = (claimed: readonly number[]): SplitClaim[] =>
  claimed.map((claimUnits, position) => ({
    ownerId: `owner ${position}`,
    seat: position + 1,
    claimUnits,
    pledgeOrder: position,
    dailyNeedUnits: fraction(position + 1),
    stockUnits: 5 * position,
    carryUnits: 0,
  }));

test('a bag released from a hold is split by the same rule among what is still claimed', () => {
  // Beans 50/35/25/15 with 100 there, 25 on hold: first 40/28/20/12, open claims 10/7/5/3; the released bag meets them all.
  const claims = claimsOf([50, 35, 25, 15]);
  const first = splitByRule({ rule: 'proportional', availableUnits: 100, claims });
  const open = remainingClaims(first, claims);
  expect(open.map((claim) => claim.claimUnits)).toEqual([10, 7, 5, 3]);
  const late = splitByRule({ rule: 'proportional', availableUnits: 25, claims: open });
  expect(late.awards.map((award) => award.awardUnits)).toEqual([10, 7, 5, 3]);
});

test('what was awarded counts as stock in the late split, and a carry is spent', () => {
  const claims = claimsOf([50, 30]).map((claim) => ({ ...claim, carryUnits: 7 }));
  const first = splitByRule({ rule: 'proportional', availableUnits: 40, claims });
  expect(remainingClaims(first, claims)).toMatchObject([
    { claimUnits: 25, stockUnits: 25, carryUnits: 0 },
    { claimUnits: 15, stockUnits: 20, carryUnits: 0 },
  ]);
});

test.for(SPLIT_RULES)(
  '%s in two parts never awards more than was claimed, and gives out all that came',
  (rule) => {
    const someClaims = fc.array(fc.nat(60), { minLength: 1, maxLength: 6 }).map(claimsOf);
    fc.assert(
      fc.property(someClaims, fc.nat(150), fc.nat(150), (claims, firstUnits, lateUnits) => {
        const first = splitByRule({ rule, availableUnits: firstUnits, claims });
        const late = splitByRule({ rule, availableUnits: lateUnits, claims: remainingClaims(first, claims) });
        const awarded = claims.map(
          (_, position) =>
            (first.awards[position]?.awardUnits ?? 0) + (late.awards[position]?.awardUnits ?? 0),
        );
        const claimed = claims.reduce((sum, claim) => sum + claim.claimUnits, 0);
        claims.forEach((claim, position) => {
          expect(awarded[position]).toBeLessThanOrEqual(claim.claimUnits);
        });
        // What the first part left over had met every claim already, so it does not serve the second.
        const total = awarded.reduce((sum, award) => sum + award, 0);
        expect(total).toBe(Math.min(claimed, Math.min(claimed, firstUnits) + lateUnits));
      }),
    );
  },
);

test.for([
  { awards: [], message: /has no award/ },
  { awards: [{ ownerId: 'owner 0', awardUnits: 6 }], message: /exceeds its claim/ },
])('a late split without sense is refused: $message', ({ awards, message }) => {
  expect(() => remainingClaims({ awards }, claimsOf([5]))).toThrow(message);
});
