import { fraction } from '@sheafbook/units';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type FrozenSplit, freezeSplit, frozenSplitText, thawSplit } from './split-rules-frozen.ts';
import { SPLIT_RULES, type SplitInput } from './split-rules-terms.ts';

const someInput = fc
  .record({
    rule: fc.constantFrom(...SPLIT_RULES),
    availableUnits: fc.nat(200),
    stepUnits: fc.integer({ min: 1, max: 5 }),
    rows: fc.array(fc.tuple(fc.nat(60), fc.nat(5), fc.integer({ min: 1, max: 9 }), fc.nat(40)), {
      maxLength: 6,
    }),
  })
  .map(
    ({ rows, ...input }): SplitInput => ({
      ...input,
      claims: rows.map(([claimUnits, need, per, stockUnits], position) => ({
        ownerId: `owner ${position}`,
        seat: rows.length - position,
        claimUnits,
        pledgeOrder: position,
        dailyNeedUnits: fraction(need, per),
        stockUnits,
        carryUnits: need - per,
      })),
    }),
  );

test('a frozen split that was stored as JSON gives the same bytes when run again', () => {
  fc.assert(
    fc.property(someInput, (input) => {
      const text = frozenSplitText(freezeSplit(input));
      const stored: FrozenSplit = JSON.parse(text);
      expect(frozenSplitText(freezeSplit(thawSplit(stored)))).toBe(text);
    }),
  );
});

test('a store that turns the keys round changes no byte', () => {
  const frozen = freezeSplit({
    rule: 'proportional',
    availableUnits: 2,
    claims: [{ ownerId: 'A', seat: 1, claimUnits: 5, pledgeOrder: 0 }],
  });
  const turned = Object.fromEntries(Object.entries(frozen).toReversed()) as FrozenSplit;
  expect(JSON.stringify(turned)).not.toBe(JSON.stringify(frozen));
  expect(frozenSplitText(turned)).toBe(frozenSplitText(frozen));
});

test('a frozen split shows exact awards and needs as fractions', () => {
  const frozen = freezeSplit({
    rule: 'need-first',
    availableUnits: 5,
    claims: [
      { ownerId: 'B', seat: 2, claimUnits: 5, pledgeOrder: 1, dailyNeedUnits: fraction(1, 3), stockUnits: 0 },
      { ownerId: 'A', seat: 1, claimUnits: 5, pledgeOrder: 0, dailyNeedUnits: fraction(1, 3), stockUnits: 0 },
    ],
  });
  expect(frozen.claims.map((claim) => [claim.ownerId, claim.dailyNeedUnits])).toEqual([
    ['A', '1/3'],
    ['B', '1/3'],
  ]);
  expect(frozen.awards.map((award) => [award.exactUnits, award.awardUnits])).toEqual([
    ['5/2', 3],
    ['5/2', 2],
  ]);
});

test('another order of the claims freezes to the same bytes', () => {
  fc.assert(
    fc.property(someInput, (input) => {
      const turned = { ...input, claims: input.claims.toReversed() };
      expect(frozenSplitText(freezeSplit(turned))).toBe(frozenSplitText(freezeSplit(input)));
    }),
  );
});

test('a fraction that is no fraction is refused', () => {
  const frozen = freezeSplit({
    rule: 'need-first',
    availableUnits: 1,
    claims: [
      { ownerId: 'A', seat: 1, claimUnits: 5, pledgeOrder: 0, dailyNeedUnits: fraction(1, 3), stockUnits: 0 },
    ],
  });
  const spoilt = { ...frozen, claims: frozen.claims.map((claim) => ({ ...claim, dailyNeedUnits: 'much' })) };
  expect(() => thawSplit(spoilt)).toThrow(SyntaxError);
});
