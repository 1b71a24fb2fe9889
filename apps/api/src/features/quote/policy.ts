import type { Actor } from '../../platform/actor.ts';
import { mayRunBuys, maySeePledges } from '../buy/policy.ts';

export const mayEnterQuotes = (actor: Actor): boolean => mayRunBuys(actor);
/** A comparison is made at what is pledged, so it is for those who may see that. */
export const mayCompareQuotes = (actor: Actor): boolean => maySeePledges(actor);
