import { assert } from '@sheafbook/units';

/**
 * What a gauge reads on a torn-down seam.
 * Units: thousandths of an inch, whole. Errors: none by itself.
 */
export type SeamMeasures = {
  readonly widthMils: number;
  readonly thicknessMils: number;
  readonly countersinkMils: number;
  readonly coverHookMils: number;
  readonly bodyHookMils: number;
};

/**
 * What the maker of can, lid or machine allows. There are none of our own: a seam log without limits is refused.
 * Units: thousandths of an inch, per cent for the overlap. Errors: none by itself.
 */
export type SeamLimits = {
  readonly widthMils: Range;
  readonly thicknessMils: Range;
  readonly countersinkMils: Range;
  readonly overlapPercent: number;
  readonly lidPlateMils: number;
  readonly bodyPlateMils: number;
};

type Range = { readonly least: number; readonly most: number };

/** A maker's sheet as it is written down, one figure beside the other. Units: as `SeamLimits`. Errors: none. */
export type SeamSheet = {
  readonly widthLeast: number;
  readonly widthMost: number;
  readonly thicknessLeast: number;
  readonly thicknessMost: number;
  readonly countersinkLeast: number;
  readonly countersinkMost: number;
  readonly overlapPercent: number;
  readonly lidPlate: number;
  readonly bodyPlate: number;
};

/** The limits that a maker's sheet gives. Units: as `SeamLimits`. Errors: none. */
export const seamLimitsOf = (sheet: SeamSheet): SeamLimits => ({
  widthMils: { least: sheet.widthLeast, most: sheet.widthMost },
  thicknessMils: { least: sheet.thicknessLeast, most: sheet.thicknessMost },
  countersinkMils: { least: sheet.countersinkLeast, most: sheet.countersinkMost },
  overlapPercent: sheet.overlapPercent,
  lidPlateMils: sheet.lidPlate,
  bodyPlateMils: sheet.bodyPlate,
});

/**
 * How far the two hooks lie over one another.
 * Units: thousandths of an inch. Errors: AssertionError when a measure is not above zero.
 * Source: overlap = cover hook + body hook + lid plate − seam width, as dairy inspection manuals give it.
 */
export function seamOverlapMils(
  {
    coverHookMils,
    bodyHookMils,
    widthMils,
  }: Pick<SeamMeasures, 'coverHookMils' | 'bodyHookMils' | 'widthMils'>,
  lidPlateMils: number,
): number {
  for (const measure of [coverHookMils, bodyHookMils, widthMils, lidPlateMils]) {
    assert(measure > 0, 'a measure is above zero');
  }
  return coverHookMils + bodyHookMils + lidPlateMils - widthMils;
}

/**
 * The overlap as a part of what the seam could hold.
 * Units: thousandths of an inch in, per cent out. Errors: AssertionError when the plates fill the seam.
 * Source: overlap / (width − 2 × lid plate − body plate).
 */
export function seamOverlapPercent(
  measures: Pick<SeamMeasures, 'coverHookMils' | 'bodyHookMils' | 'widthMils'>,
  { lidPlateMils, bodyPlateMils }: Pick<SeamLimits, 'lidPlateMils' | 'bodyPlateMils'>,
): number {
  const innerMils = measures.widthMils - 2 * lidPlateMils - bodyPlateMils;
  assert(innerMils > 0, 'the plates leave room in the seam');
  return (100 * seamOverlapMils(measures, lidPlateMils)) / innerMils;
}

/** A measure of a seam that its maker does not allow. Units: as the measure. Errors: none. */
export type SeamFault = {
  readonly measure: 'width' | 'thickness' | 'countersink' | 'overlap';
  readonly found: number;
  readonly least: number | null;
  readonly most: number | null;
};

/**
 * Every measure of one reading that lies outside the maker's limits. An empty list is a good seam.
 * Units: as `SeamMeasures`. Errors: AssertionError as `seamOverlapPercent`.
 */
export function listSeamFaults(measures: SeamMeasures, limits: SeamLimits): SeamFault[] {
  const overlapPercent = seamOverlapPercent(measures, limits);
  const faults: SeamFault[] = [];
  const check = (measure: SeamFault['measure'], found: number, { least, most }: Range) => {
    if (found < least || found > most) faults.push({ measure, found, least, most });
  };
  check('width', measures.widthMils, limits.widthMils);
  check('thickness', measures.thicknessMils, limits.thicknessMils);
  check('countersink', measures.countersinkMils, limits.countersinkMils);
  if (overlapPercent < limits.overlapPercent) {
    faults.push({ measure: 'overlap', found: overlapPercent, least: limits.overlapPercent, most: null });
  }
  return faults;
}

/**
 * The same by a maker's sheet as it is written down, of whatever a gauge may have shown.
 * Units: as `SeamMeasures`. Shape: null where the seam is no wider than its plates, which no seam is: it was misread.
 * Errors: AssertionError when a hook is not above zero.
 */
export function seamFaultsOf(measures: SeamMeasures, sheet: SeamSheet): SeamFault[] | null {
  if (measures.widthMils <= 2 * sheet.lidPlate + sheet.bodyPlate) return null;
  return listSeamFaults(measures, seamLimitsOf(sheet));
}
