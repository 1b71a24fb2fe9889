import {
  compareFractions,
  type Fraction,
  floorFraction,
  fraction,
  subtractFractions,
} from '@sheafbook/units';
import type { SplitAward, SplitRule } from './split-rules-terms.ts';

/** What the sentence under a split is made of. Units: as the claims. Errors: none. */
export type SplitFacts = {
  readonly rule: SplitRule;
  readonly availableUnits: number;
  readonly stepUnits: number;
  readonly awards: readonly SplitAward[];
  readonly surplusUnits: number;
};

/**
 * Says in words how a delivery was divided, for the split sheet. Need-first names the rule only: coverage stays
 * private, so no level of it appears here.
 * Units: bare numbers in the claims' unit. Errors: none.
 */
export function splitSentence(facts: SplitFacts): string {
  const claimedUnits = facts.awards.reduce((sum, award) => sum + award.claimUnits, 0);
  if (facts.availableUnits >= claimedUnits) return sentenceOfPlenty(claimedUnits, facts.surplusUnits);
  return [RULE_WORDS[facts.rule](facts, claimedUnits), roundingWords(facts), surplusWords(facts)]
    .filter((words) => words !== '')
    .join(' ');
}

const RULE_WORDS: Readonly<Record<SplitRule, (facts: SplitFacts, claimedUnits: number) => string>> = {
  proportional: (facts, claimedUnits) =>
    `Proportional: ${dividedUnits(facts)} to divide among ${claimedUnits} claimed, so each gets ` +
    `${fractionText(fraction(dividedUnits(facts), claimedUnits))} of its claim.`,
  'equal-awards': ({ awards }) =>
    `Equal awards: each gets its claim or ${fractionText(largest(awards.map((award) => award.exactUnits)))}, ` +
    'whichever is less.',
  'equal-losses': ({ awards }) =>
    `Equal losses: each goes without ${fractionText(largest(awards.map(lossOf)))} of its claim, ` +
    'or without all of it if it claimed less.',
  'first-come': () => 'First come: claims are met in the order they were pledged until nothing is left.',
  'need-first': () =>
    'Need first: those whose stock would run out soonest are filled first; those who eat none of it come last.',
  'rotation-of-loss': (facts, claimedUnits) =>
    `Rotation of loss: the missing ${claimedUnits - dividedUnits(facts)} is borne in proportion to claims, ` +
    'set right by what each has borne before.',
};

function sentenceOfPlenty(claimedUnits: number, surplusUnits: number): string {
  const met = `All ${claimedUnits} claimed are there, so every claim is met in full.`;
  return surplusUnits === 0 ? met : `${met} Left for the common stock: ${surplusUnits}.`;
}

function roundingWords({ awards, stepUnits }: SplitFacts): string {
  if (!awards.some((award) => award.gotSpareUnit)) return '';
  return (
    `Shares are rounded down to whole ${stepUnits === 1 ? 'units' : `steps of ${stepUnits}`}; those left over ` +
    'go to the largest remainders, and among equals to the lower seat.'
  );
}

function surplusWords({ surplusUnits, stepUnits }: SplitFacts): string {
  if (surplusUnits === 0) return '';
  return (
    `Left for the common stock: ${surplusUnits}, which is no whole step of ${stepUnits} ` +
    'that a claim has room for.'
  );
}

/** What the rule itself divided: whole steps only. */
function dividedUnits({ availableUnits, stepUnits }: SplitFacts): number {
  return availableUnits - (availableUnits % stepUnits);
}

function lossOf(award: SplitAward): Fraction {
  return subtractFractions(fraction(award.claimUnits), award.exactUnits);
}

function largest(values: readonly Fraction[]): Fraction {
  return values.reduce((most, value) => (compareFractions(value, most) > 0 ? value : most), fraction(0));
}

function fractionText(value: Fraction): string {
  const whole = floorFraction(value);
  const rest = subtractFractions(value, fraction(whole));
  const restText = rest.numerator === 0n ? '' : `${rest.numerator}/${rest.denominator}`;
  if (restText === '') return String(whole);
  return whole === 0n ? restText : `${whole} ${restText}`;
}
