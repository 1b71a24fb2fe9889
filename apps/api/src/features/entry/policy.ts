import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayReadEntries = (actor: Actor): boolean => hasDuty(actor, 'treasurer', 'reviewer');
export const mayReverse = (actor: Actor): boolean => hasDuty(actor, 'treasurer');

type Side = {
  readonly ownerKind: string | null;
  readonly ownerId: string | null;
  readonly vesselKind: string | null;
};

/**
 * What a household has at home, and what it does with it, is nobody else's business, not even the treasurer's (job map
 * section 14). What it was awarded in a bag is; from there on the book only shows that something moved.
 */
export const isHomeStock = (actor: Actor, sides: readonly Side[]): boolean =>
  sides.some((side) => side.ownerKind === 'household' && side.ownerId !== actor.householdId) &&
  sides.some(
    (side) => side.vesselKind !== null && side.vesselKind !== 'bag' && side.vesselKind !== 'supplier',
  );
