import { sumOf } from '@sheafbook/units';
import type { SupplyOnHand } from './queries.ts';
import type { SessionSupplies } from './use-cases-plan.ts';

export const presentSupply = ({ supply, kindEn, kindEs, onHandPieces, worthMinorUnits }: SupplyOnHand) => ({
  id: supply.supplyId,
  name: supply.name,
  kind: supply.kind,
  containerKind:
    supply.containerKindId === null
      ? null
      : { id: supply.containerKindId, nameEn: kindEn ?? '', nameEs: kindEs ?? '' },
  sizeMillilitres: supply.sizeMillilitres,
  piecesEach: supply.piecesEach,
  packPieces: supply.packPieces,
  packMinorUnits: supply.packMinorUnits,
  isRetired: supply.isRetired,
  version: supply.version,
  onHandPieces,
  worthMinorUnits,
});

export const presentSupplies = (rows: readonly SupplyOnHand[]) => ({ supplies: rows.map(presentSupply) });

export const supplyCsvRow = (row: SupplyOnHand) => {
  const { containerKind, ...rest } = presentSupply(row);
  return { ...rest, containerKind: containerKind?.nameEn ?? '' };
};

/** `costMinorUnits` is null when the price of something that is short is unknown. */
export function presentSessionSupplies({ session, containers, lines, unkept }: SessionSupplies) {
  const costs = lines.map(({ line }) => (line.packsToBuy === 0 ? 0 : line.costMinorUnits));
  return {
    sessionId: session.packingSessionId,
    stage: session.stage,
    containers,
    lines: lines.map(({ line, row, pack }) => ({ supply: presentSupply(row), ...line, pack })),
    unkept: unkept.map(({ use, kind }) => ({
      ...use,
      containerKind: kind ? { id: kind.containerKindId, nameEn: kind.nameEn, nameEs: kind.nameEs } : null,
    })),
    costMinorUnits: costs.includes(null) ? null : sumOf(costs.map((cost) => cost ?? 0)),
  };
}
