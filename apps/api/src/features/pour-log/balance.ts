import type { PackingBagRow } from '@sheafbook/db/tables';
import { explainedByMoisture, sessionToleranceGrams, unaccountedGrams } from '@sheafbook/packing';
import { sumOf } from '@sheafbook/units';
import type { BroughtBag, LoggedPour } from './queries.ts';

type Loss = {
  readonly bagId: string;
  readonly householdId: string;
  readonly kind: string;
  readonly grams: number;
};
export type BagBalance = ReturnType<typeof balanceOf>[number];

/** Bag by bag and household by household: what came, where it went, and what nobody can account for. */
export function balanceOf(
  bags: readonly BroughtBag[],
  pours: readonly LoggedPour[],
  losses: readonly Loss[],
) {
  return bags.map((row) => {
    const { brought } = row;
    const isThis = (other: { bagId: string; householdId: string }) =>
      other.bagId === brought.bagId && other.householdId === brought.householdId;
    const own = pours.filter(({ pour }) => pour.undoneEntryId === null && isThis(pour));
    const lost = (kind: string) =>
      sumOf(losses.filter((loss) => isThis(loss) && loss.kind === kind).map(({ grams }) => grams));
    const parts = {
      broughtGrams: brought.broughtGrams,
      inContainersGrams: sumOf(own.map(({ pour }) => pour.grams)),
      spilledGrams: lost('spilled'),
      sampledGrams: lost('sampled'),
    };
    const isWeighed = brought.leftGrams !== null;
    // Until the rest is weighed the book's own figure stands for it.
    const expectedLeftGrams = unaccountedGrams({ ...parts, leftInBagsGrams: 0 });
    const leftInBagsGrams = brought.leftGrams ?? Math.max(expectedLeftGrams, 0);
    const moistureGrams = driedGrams(brought, {
      bookedGrams: Math.max(expectedLeftGrams, 0),
      leftInBagsGrams,
    });
    return {
      row,
      ...parts,
      /** What dried, below zero where it grew damper. */
      moistureGrams,
      leftInBagsGrams,
      expectedLeftGrams,
      isWeighed,
      unaccountedGrams: unaccountedGrams({ ...parts, leftInBagsGrams }) - moistureGrams,
      toleranceGrams: sessionToleranceGrams(brought.broughtGrams),
    };
  });
}

/** What two moisture readings explain of what a rest weighs less than the book has it. */
export function driedGrams(
  { wasTenths, isTenths }: Pick<PackingBagRow, 'wasTenths' | 'isTenths'>,
  { bookedGrams, leftInBagsGrams: weighedGrams }: { bookedGrams: number; leftInBagsGrams: number },
): number {
  if (wasTenths === null || isTenths === null) return 0;
  return 0 - explainedByMoisture({ bookedGrams, weighedGrams }, { wasTenths, isTenths });
}

/** Beyond what a scale explains, and nobody has said why. */
export const isUnexplained = ({ row, unaccountedGrams: grams, toleranceGrams }: BagBalance): boolean =>
  Math.abs(grams) > toleranceGrams && row.brought.differenceBecause.trim() === '';
