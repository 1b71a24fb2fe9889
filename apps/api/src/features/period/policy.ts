import { type Actor, hasDuty } from '../../platform/actor.ts';
import { SIGNERS } from './schema.ts';

export const mayClosePeriod = (actor: Actor): boolean => hasDuty(actor, 'treasurer');
export const mayReadDigest = (actor: Actor): boolean => hasDuty(actor, 'treasurer', 'reviewer');
export const maySign = (actor: Actor): boolean => hasDuty(actor, ...SIGNERS);
