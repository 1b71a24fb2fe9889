/** How far apart, of the beam's length, the readings of two poises stand, so that neither covers the other on a phone. */
const APART = 0.25;
const MOST_NOTCHES = 40;
const MOST_FIGURES = 6;

export type BeamMark = { readonly at: number; readonly isBag: boolean; readonly isNamed: boolean };

/** The notches from nothing to the end: one at each bag, and one at each step while there is room for them. */
export function beamMarksOf({
  step,
  bag,
  max,
}: {
  step: number;
  bag: number;
  max: number;
}): readonly BeamMark[] {
  const bags = Math.round(max / bag);
  const between = Math.max(1, Math.round(bag / step));
  const notches = bags * between <= MOST_NOTCHES ? between : 1;
  const everyBags = Math.ceil(bags / (MOST_FIGURES - 1));
  return Array.from({ length: bags * notches + 1 }, (_, at) => ({
    at: (at * bag) / notches,
    isBag: at % notches === 0,
    isNamed: at % (notches * everyBags) === 0,
  }));
}

/** Where three readings stand so that none covers another and none leaves the beam: the middle one gives way at the ends. */
export function besideEachOther([least, wanted, most]: readonly [number, number, number]): readonly number[] {
  const middle = Math.min(1 - APART, Math.max(APART, wanted));
  return [Math.min(least, middle - APART), middle, Math.max(most, middle + APART)];
}
