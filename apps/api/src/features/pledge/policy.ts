import type { Actor } from '../../platform/actor.ts';
import { maySeePledges } from '../buy/policy.ts';

/** Duties add nothing here: who pledges is a household, its own or one that is helped. */
export const mayPledge = (actor: Actor): boolean => actor.householdId !== null;
export const maySeeHouseholdPledges = (actor: Actor): boolean => maySeePledges(actor);
