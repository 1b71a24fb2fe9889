import {
  compareFractions,
  divideFractions,
  type Fraction,
  fraction,
  multiplyFractions,
  subtractFractions,
} from '@sheafbook/units';
import type { DaysCoveredInput } from './edible-stock.ts';
import { feedLongest, feedUntil, linesOfCut, type Table } from './feeding.ts';
import { stockLarder } from './larder.ts';

/**
 * One straight piece of what is lacking until a day T: `gramsPerDay` × T − `coveredGrams`.
 * Units: exact grams a day and grams. Errors: none by itself.
 */
export type GapPiece = { readonly gramsPerDay: Fraction; readonly coveredGrams: Fraction };

/**
 * The food that is lacking until any day up to the target: the largest of the pieces at that day, or 0. It is the
 * least mass that would close the gap if every eater may eat it and it keeps until then.
 * Units: grams, when the rates and lots are in grams. Shape: pieces in the order of rising `gramsPerDay`; none when the
 * target is reached. With a single diet and no lot that ends it is one piece: the need times T, less the stock.
 * Errors: as daysCovered, which has checked the same input.
 * Source: the lack is the largest cut of the flow of daysCovered, convex in T; its pieces are found from both ends.
 */
export function gapPieces({ rates, lots }: DaysCoveredInput, targetDays: number): GapPiece[] {
  const { diets, piles, scale } = stockLarder(rates, lots);
  const target = fraction(targetDays);
  const table: Table = { mouths: diets.map(({ perDay }) => ({ perDay, until: null })), piles };
  if (diets.length === 0) return [];
  const { days } = feedLongest(table);
  if (compareFractions(days, target) >= 0) return [];

  const pieceAt = (day: Fraction): GapPiece => {
    const { perDay, covered } = linesOfCut(table, feedUntil(table, day).cut);
    return { gramsPerDay: fraction(perDay, scale), coveredGrams: fraction(covered, scale) };
  };
  return piecesBetween(pieceAt, pieceAt(days), pieceAt(target));
}

/**
 * What is lacking until a day.
 * Units: exact grams, 0 when nothing is. Errors: none.
 */
export function gapAt(pieces: readonly GapPiece[], days: Fraction): Fraction {
  return pieces.reduce((most, piece) => {
    const lacking = lackingOf(piece, days);
    return compareFractions(lacking, most) > 0 ? lacking : most;
  }, fraction(0));
}

function lackingOf(piece: GapPiece, days: Fraction): Fraction {
  return subtractFractions(multiplyFractions(piece.gramsPerDay, days), piece.coveredGrams);
}

/** Where two pieces meet there is either nothing above them or a piece between them. */
function piecesBetween(
  pieceAt: (day: Fraction) => GapPiece,
  flatter: GapPiece,
  steeper: GapPiece,
): GapPiece[] {
  if (compareFractions(flatter.gramsPerDay, steeper.gramsPerDay) === 0) return [flatter];
  const meeting = divideFractions(
    subtractFractions(steeper.coveredGrams, flatter.coveredGrams),
    subtractFractions(steeper.gramsPerDay, flatter.gramsPerDay),
  );
  const between = pieceAt(meeting);
  if (compareFractions(lackingOf(between, meeting), lackingOf(flatter, meeting)) === 0)
    return [flatter, steeper];
  return [...piecesBetween(pieceAt, flatter, between), ...piecesBetween(pieceAt, between, steeper).slice(1)];
}
