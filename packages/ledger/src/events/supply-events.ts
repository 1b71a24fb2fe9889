import { splitByWeight } from '@sheafbook/sharing';
import { assert, assertWhole } from '@sheafbook/units';
import type { AccountKey } from '../account-key.ts';
import {
  householdAccount,
  moneyAccount,
  storeFundAccount,
  type Till,
  tillAccount,
} from '../money-accounts.ts';
import { debitCredit, type MovementDraft, movePieces } from '../movement-draft.ts';
import { countedOtherwise } from './counted.ts';

/** What stands of a supply at cost. Units: minor units. Errors: none. */
export const supplyAccount = (supplyId: string): AccountKey =>
  moneyAccount('supplies', { causeId: supplyId });

/** The pieces of a supply that the storehouse has. Units: pieces. Errors: none. */
export const piecesAccount = (ownerId: string): AccountKey => ({
  ...{ kind: 'pieces', vesselId: null, ownerId, causeId: null },
});

/** Where pieces come from and go to; kept apart by the session that used them. Units: pieces. Errors: none. */
export const piecesOutside = (causeId: string | null = null): AccountKey => ({
  ...{ kind: 'pieces', vesselId: null, ownerId: null, causeId },
});

/** Pieces of one supply, and whose they are. Units: pieces. Errors: none. */
export type SupplyPieces = { readonly supplyId: string; readonly ownerId: string; readonly pieces: number };

/**
 * Pieces come into the store: bought, brought or found.
 * Units: pieces. Errors: AssertionError unless the count is whole and positive.
 */
export const piecesCameIn = ({ supplyId, ownerId, pieces }: SupplyPieces): MovementDraft[] => [
  movePieces({ supplyId, from: piecesOutside(), to: piecesAccount(ownerId), pieces }),
];

/**
 * Pieces leave the store: used by a session, or missing when they were counted.
 * Units: pieces. Errors: AssertionError unless the count is whole and positive.
 */
export const piecesWentOut = (
  event: SupplyPieces & { readonly sessionId?: string | null },
): MovementDraft[] => {
  const { supplyId, ownerId, pieces, sessionId } = event;
  return [
    movePieces({ supplyId, from: piecesAccount(ownerId), to: piecesOutside(sessionId ?? null), pieces }),
  ];
};

/**
 * Supplies are paid for at once. Dr 1300; Cr 1000 or 1010, or Cr 1100 of the household that paid in the shop and is owed for
 * it, or Cr 3000 for what was there before this book or was given.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 * Source: the accounts are the job map's (4.4); a household that pays is common practice, no source.
 */
export function suppliesPaid(event: {
  readonly supplyId: string;
  readonly paidBy: { readonly till: Till } | { readonly householdId: string } | 'store-fund';
  readonly amountMinorUnits: number;
}): MovementDraft[] {
  const { supplyId, paidBy, amountMinorUnits } = event;
  return [debitCredit({ debit: supplyAccount(supplyId), credit: payerOf(paidBy), amountMinorUnits })];
}

function payerOf(paidBy: Parameters<typeof suppliesPaid>[0]['paidBy']): AccountKey {
  if (paidBy === 'store-fund') return storeFundAccount();
  return 'till' in paidBy ? tillAccount(paidBy.till) : householdAccount(paidBy.householdId);
}

/**
 * Supplies were counted, and the difference is booked at average cost: what is missing is a loss, what is over takes a loss
 * back. Dr 5000, Cr 1300, or the other way round. Nothing when the difference is worth less than a minor unit.
 * Units: minor units, below zero when something is missing. Errors: AssertionError unless the amount is whole.
 * Source: as for common stock; which accounts is common practice, no source.
 */
export function suppliesCounted(event: {
  readonly supplyId: string;
  readonly differenceMinorUnits: number;
}): MovementDraft[] {
  const { supplyId, differenceMinorUnits } = event;
  const losses = moneyAccount('losses', { causeId: supplyId });
  return countedOtherwise({ stock: supplyAccount(supplyId), losses }, differenceMinorUnits);
}

/**
 * What some of the pieces on hand cost on average: their part of what all of them cost, by largest remainder, so that using
 * up the last piece uses up the last cent. More pieces than there are cost in proportion, rounded down; where nothing is on
 * hand nobody knows, and they cost nothing.
 * Units: pieces and minor units. Errors: AssertionError when a figure is not whole and ≥ 0.
 */
export function averageCost(onHand: {
  readonly pieces: number;
  readonly minorUnits: number;
  readonly wanted: number;
}): number {
  const { pieces, minorUnits, wanted } = onHand;
  for (const [name, value] of Object.entries(onHand)) assertWhole(value, name);
  if (pieces === 0) return 0;
  if (wanted > pieces) return Number((BigInt(minorUnits) * BigInt(wanted)) / BigInt(pieces));
  const [part] = splitByWeight(minorUnits, [wanted, pieces - wanted]);
  assert(part !== undefined, 'two weights give two parts');
  return part;
}
