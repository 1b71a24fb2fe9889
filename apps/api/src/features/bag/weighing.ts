import { receivedBag, STARTER_TARE_GRAMS } from '@sheafbook/sharing';
import { fieldProblem } from '../../platform/problem.ts';

/** What a bag goes into the books with. Gross and tare are absent while nobody weighed it. */
export type BookedWeight = {
  readonly grossGrams: number | null;
  readonly tareGrams: number | null;
  readonly netGrams: number;
};

/**
 * Books a bag at what it declares while nobody weighed it, or the scale agrees with it; else at what the scale says.
 * Refuses a weighing that can't be true. `field` is the path in front of the fields at fault, such as `bags.0.`.
 */
export function bookWeight(
  weighing: {
    readonly declaredGrams: number;
    readonly grossGrams?: number | undefined;
    readonly tareGrams?: number | undefined;
  },
  field = '',
): BookedWeight {
  const { declaredGrams, grossGrams, tareGrams = STARTER_TARE_GRAMS.woven } = weighing;
  if (grossGrams === undefined) return { grossGrams: null, tareGrams: null, netGrams: declaredGrams };
  if (tareGrams > grossGrams)
    throw fieldProblem(
      'does-not-add-up',
      `${field}tareGrams`,
      'The empty bag weighs more than the full one.',
    );
  const { bookedGrams: netGrams } = receivedBag({ declaredGrams, grossGrams, tareGrams });
  if (netGrams > 2 * declaredGrams)
    throw fieldProblem(
      'does-not-add-up',
      `${field}grossGrams`,
      'The bag would hold more than twice what it declares. Read the scale again.',
    );
  return { grossGrams, tareGrams, netGrams };
}

/** Grain that came wet, with insects or with an odour is stopped until somebody has looked at it (job map 2.9). */
export const mustBeHeld = ({ condition, decision }: { condition: string; decision: string }): boolean =>
  decision !== 'refused' && ['wet', 'infested', 'odour'].includes(condition);
