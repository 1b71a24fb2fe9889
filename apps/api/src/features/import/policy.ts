import { type Actor, hasDuty } from '../../platform/actor.ts';
import type { SheetKind } from './sheet/kinds.ts';

/** Whoever keeps the people and the stock brings them over, whoever keeps the money brings the balances over. */
export const mayImport = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'treasurer');
export const mayImportKind = (actor: Actor, kind: SheetKind): boolean =>
  hasDuty(actor, kind === 'balances' ? 'treasurer' : 'coordinator');
export const mayReadImports = (actor: Actor): boolean =>
  hasDuty(actor, 'coordinator', 'treasurer', 'reviewer');
