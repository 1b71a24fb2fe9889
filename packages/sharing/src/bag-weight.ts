import { assert, assertWhole } from '@sheafbook/units';

/**
 * How far a weighing may be off before it counts: the larger of a mass and a part of what was weighed.
 * Units: `leastGrams` grams; `perMille` thousandths of the mass. Errors: none.
 */
export type WeightTolerance = { readonly leastGrams: number; readonly perMille: number };

/** Receiving a bag: 100 g or 1 %. Common practice, no source; a group may set its own. Units: see the type. Errors: none. */
export const RECEIVING_TOLERANCE: WeightTolerance = { leastGrams: 100, perMille: 10 };

/** Splitting a lot: 20 g or 0.2 %. Common practice, no source; a group may set its own. Units: see the type. Errors: none. */
export const SPLITTING_TOLERANCE: WeightTolerance = { leastGrams: 20, perMille: 2 };

/** A packing session: 50 g or 0.5 % of what was opened. Common practice, no source. Units: see the type. Errors: none. */
export const SESSION_TOLERANCE: WeightTolerance = { leastGrams: 50, perMille: 5 };

/** What an empty bag weighs until a group weighs its own. Common practice, no source. Units: grams. Errors: none. */
export const STARTER_TARE_GRAMS = { woven: 250, paper: 150 } as const;

/**
 * The largest difference that a tolerance lets pass for a mass, rounded down to whole grams.
 * Units: grams. Errors: AssertionError when a number is not whole and ≥ 0.
 */
export function findTolerance(tolerance: WeightTolerance, massGrams: number): number {
  assertWhole(tolerance.leastGrams, 'leastGrams');
  assertWhole(tolerance.perMille, 'perMille');
  assertWhole(massGrams, 'massGrams');
  return Math.max(tolerance.leastGrams, Math.floor((massGrams * tolerance.perMille) / 1000));
}

/**
 * What becomes of grams that no movement explains: within the tolerance they are dust, beyond it the books wait until
 * someone names the cause.
 * Units: grams; `unexplainedGrams` is negative when more was found than expected.
 * Errors: AssertionError when a number is not whole, or `massGrams` or the tolerance is negative.
 */
export function judgeUnexplained(
  unexplainedGrams: number,
  massGrams: number,
  tolerance: WeightTolerance,
): 'none' | 'dust' | 'needs-a-cause' {
  assert(Number.isSafeInteger(unexplainedGrams), 'unexplainedGrams must be whole');
  if (unexplainedGrams === 0) return 'none';
  return Math.abs(unexplainedGrams) <= findTolerance(tolerance, massGrams) ? 'dust' : 'needs-a-cause';
}

/**
 * A bag as it came in: what the scale says it holds, what goes into the books, and by how much it is short or over
 * beyond the tolerance. Units: grams. Errors: none.
 */
export type ReceivedBag = {
  readonly weighedGrams: number;
  readonly bookedGrams: number;
  readonly toleranceGrams: number;
  readonly shortGrams: number;
  readonly overGrams: number;
};

/**
 * Books a weighed bag: at its declared net while the weighing agrees within the tolerance, else at what was weighed,
 * and only then is it short (and may be claimed) or over.
 * Units: grams; the tolerance is `RECEIVING_TOLERANCE` unless given. Shape: booked + short − over = declared.
 * Errors: AssertionError when a mass is not whole and ≥ 0, or the tare exceeds the gross.
 */
export function receivedBag(weighing: {
  readonly declaredGrams: number;
  readonly grossGrams: number;
  readonly tareGrams: number;
  readonly tolerance?: WeightTolerance;
}): ReceivedBag {
  const { declaredGrams, grossGrams, tareGrams, tolerance = RECEIVING_TOLERANCE } = weighing;
  assertWhole(declaredGrams, 'declaredGrams');
  assertWhole(grossGrams, 'grossGrams');
  assertWhole(tareGrams, 'tareGrams');
  assert(tareGrams <= grossGrams, 'the tare cannot exceed the gross');
  const toleranceGrams = findTolerance(tolerance, declaredGrams);
  const weighedGrams = grossGrams - tareGrams;
  const agrees = Math.abs(declaredGrams - weighedGrams) <= toleranceGrams;
  return {
    weighedGrams,
    bookedGrams: agrees ? declaredGrams : weighedGrams,
    toleranceGrams,
    shortGrams: agrees ? 0 : Math.max(0, declaredGrams - weighedGrams),
    overGrams: agrees ? 0 : Math.max(0, weighedGrams - declaredGrams),
  };
}
