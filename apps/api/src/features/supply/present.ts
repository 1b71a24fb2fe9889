import { sumOf } from '@sheafbook/units';
import type { SupplyOnHand } from './queries.ts';
import type { DatedSupply } from './use-by.ts';
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

/** `useBys` is what is on hand with a last good day, the soonest first; `spoiling` what of it is no good for the day. */
const presentDated = (row: DatedSupply) => ({
  ...presentSupply(row),
  useBys: row.lots
    .flatMap(({ pieces, useBy }) => (useBy === null ? [] : [{ useBy, pieces }]))
    .toSorted((a, b) => (a.useBy < b.useBy ? -1 : 1)),
  spoiling: row.spoiling,
});

export const presentSupplies = (rows: readonly DatedSupply[]) => ({ supplies: rows.map(presentDated) });

export const supplyCsvRow = (row: DatedSupply) => {
  const { containerKind, useBys, spoiling: _, ...rest } = presentDated(row);
  return { ...rest, containerKind: containerKind?.nameEn ?? '', useBy: useBys[0]?.useBy ?? '' };
};

/** `costMinorUnits` is null when the price of something that is short is unknown. */
export function presentSessionSupplies({ session, isAhead, containers, lines, unkept }: SessionSupplies) {
  const costs = lines.map(({ line }) => (line.packsToBuy === 0 ? 0 : line.costMinorUnits));
  return {
    sessionId: session.packingSessionId,
    stage: session.stage,
    containers,
    lines: lines.map(({ line, row, pack }) => ({
      supply: presentDated(isAhead ? row : { ...row, spoiling: [] }),
      ...line,
      pack,
    })),
    unkept: unkept.map(({ use, kind }) => ({
      ...use,
      containerKind: kind ? { id: kind.containerKindId, nameEn: kind.nameEn, nameEs: kind.nameEs } : null,
    })),
    costMinorUnits: costs.includes(null) ? null : sumOf(costs.map((cost) => cost ?? 0)),
  };
}
