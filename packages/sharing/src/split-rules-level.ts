import {
  addFractions,
  assert,
  compareFractions,
  divideFractions,
  type Fraction,
  fraction,
  multiplyFractions,
  orderOfFractions,
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
 * Raises one level for all until the parts add up to a total, exactly. Between two neighbouring breakpoints the sum of the
 * parts is one line, `slope` · T − `offset`; the breakpoints are walked from below until that line reaches the total.
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
  return partsAtLevel(levelReaching(totalUnits, parts), parts);
}

/** Where the sum's line bends: a part begins to rise, or is full. */
type Breakpoint = {
  readonly level: Fraction;
  readonly moreSlope: Fraction;
  readonly moreOffset: Fraction;
};

function levelReaching(totalUnits: Fraction, parts: readonly RisingPart[]): Fraction {
  let [slope, offset] = [NOTHING, NOTHING];
  for (const { level, moreSlope, moreOffset } of breakpoints(parts)) {
    const reached = subtractFractions(multiplyFractions(slope, level), offset);
    if (compareFractions(reached, totalUnits) >= 0)
      return slope.numerator === 0n ? level : divideFractions(addFractions(totalUnits, offset), slope);
    slope = addFractions(slope, moreSlope);
    offset = addFractions(offset, moreOffset);
  }
  return NOTHING; // no parts at all
}

function breakpoints(parts: readonly RisingPart[]): Breakpoint[] {
  const unordered = parts.flatMap(({ perLevel, startUnits, mostUnits }) => {
    const fullUnits = addFractions(startUnits, mostUnits);
    return [
      { level: divideFractions(startUnits, perLevel), moreSlope: perLevel, moreOffset: startUnits },
      {
        level: divideFractions(fullUnits, perLevel),
        moreSlope: subtractFractions(NOTHING, perLevel),
        moreOffset: subtractFractions(NOTHING, fullUnits),
      },
    ];
  });
  const inOrder = orderOfFractions(unordered.map(({ level }) => level));
  return inOrder.flatMap((position) => unordered[position] ?? []);
}

function partsAtLevel(level: Fraction, parts: readonly RisingPart[]): Fraction[] {
  return parts.map(({ perLevel, startUnits, mostUnits }) => {
    const risen = subtractFractions(multiplyFractions(perLevel, level), startUnits);
    if (risen.numerator <= 0n) return NOTHING;
    return compareFractions(risen, mostUnits) < 0 ? risen : mostUnits;
  });
}
