import type { HouseholdRow } from '@sheafbook/db/tables';
import { inSpanish } from '../../platform/spoken/spanish.ts';
import type { HoldingRow } from './queries.ts';
import { sayUnsettled, type Unsettled } from './unsettled.ts';

/** The coordinator, who may take out a household without a login, is told what stands in the way but no amount. */
export function presentUnsettled(item: Unsettled, money: { currency: string; isShown: boolean }) {
  const message = sayUnsettled(item, money);
  if ('food' in item)
    return { ...item, message, messageEs: inSpanish(sayUnsettled({ ...item, food: item.foodEs }, money)) };
  const hasMoney = item.what === 'balance' || item.what === 'deposit';
  return hasMoney && !money.isShown ? { ...item, minorUnits: null, message } : { ...item, message };
}

export type Left = { readonly household: HouseholdRow; readonly takenAlong: readonly HoldingRow[] };

export function presentLeft({ household, takenAlong }: Left) {
  return {
    householdId: household.householdId,
    seat: household.seat,
    name: household.name,
    leftOn: household.leftOn,
    takenAlong: takenAlong.map((row) => ({
      lotId: row.lot_id,
      food: row.food,
      vesselCode: row.vessel_code,
      grams: row.grams,
    })),
  };
}
