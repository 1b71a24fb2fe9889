import { sumOf } from '@sheafbook/units';
import type { Reckoned, Settled, SettlementReading, Undone } from './use-cases.ts';
import type { OwnCosts } from './use-cases-own.ts';

const named = <Row extends { householdId: string }>(
  rows: readonly Row[],
  fillers: readonly { householdId: string; name: string }[],
) =>
  rows.map((row) => ({
    ...row,
    household: fillers.find(({ householdId }) => householdId === row.householdId)?.name ?? '',
  }));

/** What will be posted, or was: each cost with each household's part, and each household's sum. */
export function presentReckoned({
  session,
  fillers,
  costs,
  charges,
  storehouseMinorUnits,
  totalMinorUnits,
  seen,
}: Reckoned) {
  return {
    sessionId: session.packingSessionId,
    stage: session.stage,
    seen,
    totalMinorUnits,
    storehouseMinorUnits,
    costs: costs.map(({ name: kind, what, pieces, minorUnits, borneBy, shares }) => ({
      ...{ kind, what, pieces, minorUnits, borneBy },
      shares: named(shares, fillers),
    })),
    households: fillers.map(({ householdId, name, containers }) => ({
      ...{ householdId, household: name, containers },
      minorUnits: charges.find((charge) => charge.householdId === householdId)?.minorUnits ?? 0,
    })),
  };
}

export const presentSettled = (settled: Settled) => ({
  ...presentReckoned(settled),
  entryId: settled.entry?.entryId ?? null,
  entryNo: settled.entry?.entryNo ?? null,
});

export const presentUndone = ({ session, entry }: Undone) => ({
  sessionId: session.packingSessionId,
  stage: session.stage,
  entryId: entry?.entryId ?? null,
  entryNo: entry?.entryNo ?? null,
});

export function presentSettlement({
  session,
  fillers,
  proposal,
  items,
  settlement,
  posted,
}: SettlementReading) {
  return {
    sessionId: session.packingSessionId,
    name: session.name,
    stage: session.stage,
    lineFeeMinorUnits: session.lineFeeMinorUnits,
    households: fillers.map(({ householdId, name, containers }) => ({
      householdId,
      household: name,
      containers,
    })),
    proposal: proposal.map(({ row, usedPieces }) => ({
      supply: { id: row.supply.supplyId, name: row.supply.name, onHandPieces: row.onHandPieces },
      usedPieces,
    })),
    items: items.map(({ equipmentItemId: id, name }) => ({ id, name })),
    posted:
      settlement && posted
        ? {
            ...{
              entryId: settlement.entryId,
              note: settlement.note,
              settledAt: settlement.settledAt.toISOString(),
            },
            ...presentPosted(posted),
          }
        : null,
  };
}

function presentPosted({ costs, shares }: NonNullable<SettlementReading['posted']>) {
  const seats = [...new Map(shares.map(({ household }) => [household.householdId, household.name]))];
  return {
    totalMinorUnits: sumOf(costs.map(({ minorUnits }) => minorUnits)),
    storehouseMinorUnits: sumOf(
      costs.filter(({ borneBy }) => borneBy === 'storehouse').map(({ minorUnits }) => minorUnits),
    ),
    costs: costs.map(({ position, kind, what, pieces, minorUnits, borneBy }) => ({
      ...{ kind, what, pieces, minorUnits, borneBy },
      shares: shares
        .filter(({ share }) => share.position === position)
        .map(({ share, household }) => ({
          ...{ householdId: share.householdId, household: household.name },
          ...{ containers: share.containers, minorUnits: share.minorUnits },
        })),
    })),
    households: seats.map(([householdId, household]) => ({
      householdId,
      household,
      minorUnits: sumOf(
        shares.filter(({ share }) => share.householdId === householdId).map(({ share }) => share.minorUnits),
      ),
    })),
  };
}

export function presentOwnCosts({ session, costs, isEstimate, currency, totalMinorUnits, bring }: OwnCosts) {
  return {
    sessionId: session.packingSessionId,
    ...{ currency, isEstimate, totalMinorUnits, costs },
    bring: bring.map(({ food, grams, containers }) => ({
      food: { id: food.foodId, nameEn: food.nameEn, nameEs: food.nameEs },
      grams,
      containers: containers && {
        ...{ nameEn: containers.kind.nameEn, nameEs: containers.kind.nameEs },
        count: containers.count,
      },
    })),
  };
}
