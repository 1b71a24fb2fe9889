/**
 * The money account kinds of a storehouse, in the order of the accountant's chart.
 * Units: none. Errors: none. Source: job map 4.4; `chartLine` gives the number and the accountant's name of each.
 */
export const MONEY_KINDS = [
  'bank',
  'cash_tin',
  'household',
  'supplier_claim',
  'supplies',
  'common_stock',
  'equipment',
  'supplier',
  'buy_deposit',
  'loan_deposit',
  'buy_clearing',
  'session_clearing',
  'store_fund',
  'given_value',
  'line_fees',
  'equipment_fees',
  'cash_gifts',
  'losses',
  'bank_charges',
  'repairs',
  'debt_written_off',
] as const;

/** A kind of account that holds money. Units: none. Errors: none. */
export type MoneyKind = (typeof MONEY_KINDS)[number];

/** Any kind of account: money, grams of one lot, or pieces of one supply. Units: none. Errors: none. */
export type AccountKind = MoneyKind | 'mass' | 'pieces';

/**
 * What an account counts. A storehouse has one currency, so its code is not part of the key.
 * Units: minor units for the currency, grams for a lot, pieces for a supply. Errors: none.
 */
export type UnitKey =
  | { readonly kind: 'currency' }
  | { readonly kind: 'lot'; readonly lotId: string }
  | { readonly kind: 'supply'; readonly supplyId: string };

/**
 * Which account of a unit is meant; one account exists for each unit and key.
 * Owner: the household of a balance or a deposit, the supplier of a payable or a claim, the owner of mass
 * ("common" and "unassigned" are owners with ids of their own). Cause: the buy, claim, lot, session, loan or item
 * that the account is kept apart for. Vessel: the bag, the container or the outside vessel of mass.
 * Units: none. Errors: none.
 */
export type AccountKey = {
  readonly kind: AccountKind;
  readonly vesselId: string | null;
  readonly ownerId: string | null;
  readonly causeId: string | null;
};

/** The one unit of money. Units: minor units of the storehouse's currency. Errors: none. */
export const CURRENCY: UnitKey = { kind: 'currency' };

/** Names the unit of a lot's grams. Units: grams. Errors: none. */
export const lotUnit = (lotId: string): UnitKey => ({ kind: 'lot', lotId });

/** Names the unit of a supply's pieces. Units: pieces. Errors: none. */
export const supplyUnit = (supplyId: string): UnitKey => ({ kind: 'supply', supplyId });

/** A text that is equal for equal units and different for different ones. Units: none. Errors: none. */
export const unitKeyText = (unit: UnitKey): string => JSON.stringify([unit.kind, unitId(unit)]);

/**
 * A text that is equal for equal accounts and different for different ones; its order is the order of locking.
 * Units: none. Errors: none.
 */
export function accountKeyText(unit: UnitKey, key: AccountKey): string {
  return JSON.stringify([unit.kind, unitId(unit), key.kind, key.vesselId, key.ownerId, key.causeId]);
}

function unitId(unit: UnitKey): string | null {
  if (unit.kind === 'lot') return unit.lotId;
  return unit.kind === 'supply' ? unit.supplyId : null;
}
