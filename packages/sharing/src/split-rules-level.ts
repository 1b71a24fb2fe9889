import {
  addFractions,
  assert,
  compareFractions,
  divideFractions,
  type Fraction,
  fraction,
  multiplyFractions,
  subtractFractions,
  sumFractions,
} from '@sheafbook/units';

/**
 * A part that rises with a common level T: nothing up to its start, then `perLevel` · T − `startUnits`, at most
 * `mostUnits`. Units: `startUnits` and `mostUnits` alike; the level's unit is theirs over `perLevel`'s. Errors: none.
 */
export type RisingPart = {
  readonly perLevel: Fraction;
  readonly startUnits: Fraction;
  readonly mostUnits: Fraction;
};

const NOTHING = fraction(0);

/**
 * Raises one level for all until the parts add up to a total, exactly. The sum of the parts is a line between
 * neighbouring breakpoints, so the right bracket is found first and the level by one division in it.
 * Units: the total and the results are in the parts' unit. Shape: one result a part, in the same order.
 * Errors: AssertionError when a part does not rise, or the total is below 0 or above what all parts can take.
 */
export function fillToLevel(totalUnits: Fraction, parts: readonly RisingPart[]): Fraction[] {
  assert(
    parts.every((part) => part.perLevel.numerator > 0n),
    'every part must rise with the level',
  );
  const mostUnits = sumFractions(parts.map((part) => part.mostUnits));
  assert(
    totalUnits.numerator >= 0n && compareFractions(totalUnits, mostUnits) <= 0,
    'the total must lie between nothing and the sum of the most that each part takes',
  );
  const levels = breakpoints(parts);
  const upper = lowestLevelReaching(totalUnits, levels, parts);
  const upperLevel = levels[upper];
  if (upperLevel === undefined) return []; // no parts at all
  const lowerLevel = levels[upper - 1];
  if (lowerLevel === undefined) return partsAtLevel(upperLevel, parts);
  return partsAtLevel(levelBetween(totalUnits, [lowerLevel, upperLevel], parts), parts);
}

function breakpoints(parts: readonly RisingPart[]): Fraction[] {
  return parts
    .flatMap(({ perLevel, startUnits, mostUnits }) => [
      divideFractions(startUnits, perLevel),
      divideFractions(addFractions(startUnits, mostUnits), perLevel),
    ])
    .toSorted(compareFractions);
}

function partsAtLevel(level: Fraction, parts: readonly RisingPart[]): Fraction[] {
  return parts.map(({ perLevel, startUnits, mostUnits }) => {
    const risen = subtractFractions(multiplyFractions(perLevel, level), startUnits);
    if (risen.numerator <= 0n) return NOTHING;
    return compareFractions(risen, mostUnits) < 0 ? risen : mostUnits;
  });
}

function sumAtLevel(level: Fraction, parts: readonly RisingPart[]): Fraction {
  return sumFractions(partsAtLevel(level, parts));
}

function lowestLevelReaching(
  totalUnits: Fraction,
  levels: readonly Fraction[],
  parts: readonly RisingPart[],
): number {
  let [low, high] = [0, levels.length - 1];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    const reaches = compareFractions(sumAtLevel(levels[middle] ?? NOTHING, parts), totalUnits) >= 0;
    if (reaches) high = middle;
    else low = middle + 1;
  }
  return low;
}

function levelBetween(
  totalUnits: Fraction,
  [lower, upper]: readonly [Fraction, Fraction],
  parts: readonly RisingPart[],
): Fraction {
  const [lowerSum, upperSum] = [sumAtLevel(lower, parts), sumAtLevel(upper, parts)];
  const way = divideFractions(subtractFractions(totalUnits, lowerSum), subtractFractions(upperSum, lowerSum));
  return addFractions(lower, multiplyFractions(way, subtractFractions(upper, lower)));
}
