import { type Actor, hasDuty } from '../../platform/actor.ts';

/** A household moves its own containers, whoever keeps the store's stock those of common stock (job map section 14). */
export const mayMoveCommonStock = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'packing_lead');

export const mayMoveSome = (actor: Actor): boolean => actor.householdId !== null || mayMoveCommonStock(actor);
