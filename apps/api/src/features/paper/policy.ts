import { type Actor, hasDuty } from '../../platform/actor.ts';
import { mayHandOverDuties } from '../handover/policy.ts';
import { mayDestroy, mayHold } from '../hold/policy.ts';
import { mayInspect, mayInspectCommon } from '../inspection/policy.ts';
import { seesDesk } from '../loan/policy.ts';
import { mayOffer } from '../offer/policy.ts';
import { mayPlanSessions } from '../packing-session/policy.ts';
import { hasRotation, maySeeStoreRotation } from '../rotation/policy.ts';
import { mayCheckSeals } from '../seam/policy.ts';
import { mayReadYearReview } from '../year-review/policy.ts';

/** Job map section 14: each paper is for those who may see on a screen what it prints. */
export const mayPrintWhoOwes = (actor: Actor): boolean => hasDuty(actor, 'treasurer', 'reviewer');
/** A comparison is made at what is pledged. */
export const mayPrintComparison = (actor: Actor): boolean =>
  hasDuty(actor, 'coordinator', 'treasurer', 'packing_lead', 'reviewer');

/** A run sheet names households and what they want packed: for whoever plans the day and logs its pours. */
export const mayPrintRuns = mayPlanSessions;

/** A seam log and a tag on what is in doubt tell what a household has: for whoever checks seals. */
export const mayPrintSeals = mayCheckSeals;

/** A recall notice is for the household that it is about, and for whoever handles holds and brings it to others. */
export const mayPrintRecall = mayDestroy;

/** A label tells what stands at a household's home. */
export const mayPrintLabels = (actor: Actor): boolean => actor.householdId !== null;

/** What is offered is for whoever may give or take; which offers those are, the reading says. */
export const mayPrintOffers = mayOffer;

/** The pack of a hand-over has what its page has. */
export const mayPrintHandover = mayHandOverDuties;

/** A year is printed by those who sign it. */
export const mayPrintYearReview = mayReadYearReview;

/** The papers of an offer lead whoever may see the offer to it. */
export const isOfOffer = (kind: string): boolean => kind === 'offer-notice' || kind === 'transfer-slip';

/** What a household gave is its own record. */
export const mayPrintGiftYear = (actor: Actor): boolean => actor.householdId !== null;

export const mayPrintCommonShelf = maySeeStoreRotation;

/** A household's shelf is its own, common stock is known to whoever keeps or counts it. */
export const mayPrintShelf = (actor: Actor): boolean => hasRotation(actor) || maySeeStoreRotation(actor);

/** A household's containers are its own to look at, common stock's are for whoever looks after them. */
export const mayPrintInspections = mayInspect;
export const mayPrintCommonInspections = mayInspectCommon;

type Found = {
  readonly kind: string;
  readonly householdId: string | null;
  /** The packing day of the check that a tag is about; a tag of a hold has none. */
  readonly withinId: string | null;
};

/** A code on a lost paper tells a stranger to it nothing: a statement's leads its own household and the books' duties on. */
export const mayFollowCode = (actor: Actor, { kind, householdId, withinId }: Found): boolean => {
  if (kind === 'who-owes') return mayPrintWhoOwes(actor);
  if (kind === 'quote-comparison') return mayPrintComparison(actor);
  if (kind === 'statement') return householdId === actor.householdId || mayPrintWhoOwes(actor);
  if (kind === 'run-sheet') return mayPrintRuns(actor);
  if (kind === 'seam-log') return mayPrintSeals(actor);
  if (kind === 'loan-slip') return householdId === actor.householdId || seesDesk(actor);
  // A hold is everybody's to know of; a container in doubt is its household's.
  if (kind === 'quarantine-tag') return withinId === null || mayPrintSeals(actor);
  if (kind === 'recall-notice')
    return mayHold(actor) || (householdId !== null && householdId === actor.householdId);
  if (kind === 'handover') return mayPrintHandover(actor);
  if (kind === 'year-review') return mayPrintYearReview(actor);
  if (kind === 'gift-year') return householdId === actor.householdId;
  if (kind === 'shelf-list' || kind === 'eat-first-list')
    return householdId === null ? maySeeStoreRotation(actor) : householdId === actor.householdId;
  if (kind === 'inspection-sheet')
    return householdId === null ? mayPrintCommonInspections(actor) : householdId === actor.householdId;
  if (kind === 'month') return householdId === actor.householdId || hasDuty(actor, 'coordinator');
  if (kind === 'pledge-slip')
    return householdId === null || householdId === actor.householdId || mayPrintComparison(actor);
  return true;
};
