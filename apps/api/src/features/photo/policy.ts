import { type Actor, hasDuty } from '../../platform/actor.ts';
import { mayKeepEquipment } from '../equipment/policy.ts';
import { mayHandle, mayLend, seesDesk } from '../loan/policy.ts';

/** Whoever lands bags or keeps claims takes their photos. Whoever may see the bag or the claim sees them: every member. */
export const mayAddPhotos = (actor: Actor): boolean =>
  hasDuty(actor, 'coordinator', 'packing_lead', 'treasurer');

/** A thing and its parts are shown by who keeps them; how a piece went out and came back, by who borrowed it, too. */
export const mayAddPhotosOfItem = mayKeepEquipment;
export const mayAddPhotosOfLoan = mayHandle;
export const mayAddEquipmentPhotos = mayLend;
/** As the loan itself: its own household, and those who see the desk. */
export const maySeePhotosOfLoan = (actor: Actor, householdId: string): boolean =>
  seesDesk(actor) || actor.householdId === householdId;

/** Whoever may take photos of anything takes its own away again. */
export const mayRemovePhotos = (actor: Actor): boolean => mayAddPhotos(actor) || mayAddEquipmentPhotos(actor);
