import {
  type Fraction,
  floorFraction,
  fraction,
  orderOfFractions,
  subtractFractions,
} from '@sheafbook/units';

const ONE_STEP = fraction(1);

/** An exact award with the claim that caps it. Units: both alike. Errors: none. */
export type ExactAward = { readonly exactUnits: Fraction; readonly claimUnits: number };

/** A rounded award, and whether it got a left-over step. Units: as the exact award. Errors: none. */
export type SteppedAward = { readonly awardUnits: number; readonly gotSpareUnit: boolean };

/**
 * Rounds exact awards to whole steps: down first, then the steps left over go one each to the largest remainders,
 * ties to the earlier position. A step that would lift an award over its claim goes to the next largest remainder;
 * what nobody has room for stays undivided (possible only when claims are not whole steps).
 * Units: awards, claims, `stepUnits` and `totalUnits` (the sum of the awards) alike.
 * Shape: one result an award, in the same order.
 * Errors: none; `splitByRule` has checked that awards lie between 0 and claims and add up to whole steps.
 */
export function roundToSteps(
  awards: readonly ExactAward[],
  { totalUnits, stepUnits }: { readonly totalUnits: number; readonly stepUnits: number },
): SteppedAward[] {
  const rows = awards.map((award, position) => stepRow(award, stepUnits, position));
  // From the largest remainder: the order of what each lacks to the next step, the earlier position first.
  const byRemainder = orderOfFractions(
    rows.map(({ remainder }) => subtractFractions(ONE_STEP, remainder)),
  ).flatMap((position) => rows[position] ?? []);
  let leftSteps = totalUnits / stepUnits - rows.reduce((sum, row) => sum + row.wholeSteps, 0);
  const spareSteps = new Map<number, number>();
  while (leftSteps > 0) {
    const takers = byRemainder
      .filter((row) => (spareSteps.get(row.position) ?? 0) < row.roomSteps)
      .slice(0, leftSteps);
    if (takers.length === 0) break;
    for (const { position } of takers) spareSteps.set(position, (spareSteps.get(position) ?? 0) + 1);
    leftSteps -= takers.length;
  }
  return rows.map(({ position, wholeSteps }) => {
    const spare = spareSteps.get(position) ?? 0;
    return { awardUnits: (wholeSteps + spare) * stepUnits, gotSpareUnit: spare > 0 };
  });
}

function stepRow({ exactUnits, claimUnits }: ExactAward, stepUnits: number, position: number) {
  const exactSteps =
    stepUnits === 1 ? exactUnits : fraction(exactUnits.numerator, exactUnits.denominator * BigInt(stepUnits));
  const wholeSteps = floorFraction(exactSteps);
  return {
    position,
    wholeSteps: Number(wholeSteps),
    remainder: subtractFractions(exactSteps, fraction(wholeSteps)),
    roomSteps: Math.floor(claimUnits / stepUnits) - Number(wholeSteps),
  };
}
