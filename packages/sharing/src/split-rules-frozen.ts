import { type Fraction, fraction, sortedJson } from '@sheafbook/units';
import { splitByRule } from './split-rules.ts';
import type { SplitAnswer, SplitAward, SplitClaim, SplitInput, SplitRule } from './split-rules-terms.ts';

/** A claim as plain JSON, fractions as text like "5/2". Units: as the claim. Errors: none. */
export type FrozenSplitClaim = Omit<SplitClaim, 'dailyNeedUnits'> & { readonly dailyNeedUnits?: string };

/** An award as plain JSON, fractions as text like "5/2". Units: as the award. Errors: none. */
export type FrozenSplitAward = Omit<SplitAward, 'exactUnits'> & { readonly exactUnits: string };

/**
 * A split with its inputs, rule and version, as plain JSON that is kept for good and can be run again.
 * Units: as the split. Errors: none.
 */
export type FrozenSplit = {
  readonly version: 1;
  readonly rule: SplitRule;
  readonly availableUnits: number;
  readonly stepUnits: number;
  readonly claims: readonly FrozenSplitClaim[];
  readonly awards: readonly FrozenSplitAward[];
  readonly surplusUnits: number;
  readonly sentence: string;
};

/**
 * Runs a split and freezes it together with what it was asked, claims in seat order.
 * Units: as `splitByRule`. Errors: AssertionError as `splitByRule`.
 */
export function freezeSplit(input: SplitInput): FrozenSplit {
  const answer: SplitAnswer = splitByRule(input);
  return {
    version: answer.version,
    rule: answer.rule,
    availableUnits: answer.availableUnits,
    stepUnits: input.stepUnits ?? 1,
    claims: input.claims.toSorted((a, b) => a.seat - b.seat).map(freezeClaim),
    awards: answer.awards.map((award) => ({ ...award, exactUnits: fractionText(award.exactUnits) })),
    surplusUnits: answer.surplusUnits,
    sentence: answer.sentence,
  };
}

/**
 * The question that a frozen split answered, ready for `splitByRule` or `freezeSplit`.
 * Units: as the split. Errors: SyntaxError when a fraction's text is not "n" or "n/d".
 */
export function thawSplit(frozen: FrozenSplit): SplitInput {
  const { rule, availableUnits, stepUnits } = frozen;
  return { rule, availableUnits, stepUnits, claims: frozen.claims.map(thawClaim) };
}

/**
 * The bytes of a frozen split: JSON with sorted keys, so that a store that reorders keys changes nothing.
 * A split re-run from `thawSplit` gives the same text, or the stored one was not made by this version.
 * Units: as the split. Errors: none.
 */
export function frozenSplitText(frozen: FrozenSplit): string {
  return sortedJson(frozen);
}

function freezeClaim({ dailyNeedUnits, ...claim }: SplitClaim): FrozenSplitClaim {
  return dailyNeedUnits ? { ...claim, dailyNeedUnits: fractionText(dailyNeedUnits) } : claim;
}

function thawClaim({ dailyNeedUnits, ...claim }: FrozenSplitClaim): SplitClaim {
  return dailyNeedUnits === undefined
    ? claim
    : { ...claim, dailyNeedUnits: fractionFromText(dailyNeedUnits) };
}

function fractionText({ numerator, denominator }: Fraction): string {
  return denominator === 1n ? String(numerator) : `${numerator}/${denominator}`;
}

function fractionFromText(text: string): Fraction {
  const [numerator = '', denominator = '1'] = text.split('/');
  return fraction(BigInt(numerator), BigInt(denominator));
}
