import type { DepositAskRow } from '@sheafbook/db/tables';
import type { OwnDeposit } from './use-cases.ts';

export function presentOwnDeposit({ ask, heldMinorUnits }: OwnDeposit, currency: string) {
  return {
    currency,
    heldMinorUnits,
    estimateMinorUnits: ask?.estimateMinorUnits ?? null,
    askedMinorUnits: ask?.askedMinorUnits ?? null,
    dueOn: ask?.dueOn ?? null,
    isWaived: ask ? ask.waivedBy !== null : false,
    waiverReason: ask?.waiverReason ?? '',
  };
}

export function presentWaiver(ask: DepositAskRow) {
  const { householdId, waiverReason } = ask;
  return { householdId, isWaived: true, waiverReason };
}
