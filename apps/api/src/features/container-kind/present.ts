import type { ContainerKindRow } from '@sheafbook/db/tables';
import { readBarrier } from '@sheafbook/keeping';

export function presentContainerKind(kind: ContainerKindRow) {
  return {
    id: kind.containerKindId,
    kindCode: kind.kindCode,
    nameEn: kind.nameEn,
    nameEs: kind.nameEs,
    isOwn: kind.isOwn,
    capacityMicrolitres: kind.capacityMicrolitres,
    tareGrams: kind.tareGrams,
    priceMinorUnits: kind.priceMinorUnits,
    source: kind.source,
    barrier: readBarrier(kind.barrier),
    isDark: kind.isDark,
    isBreakable: kind.isBreakable,
    isRodentProof: kind.isRodentProof,
    needsOuter: kind.needsOuter,
    isReusable: kind.isReusable,
    mostStacked: kind.mostStacked,
    traitsSource: kind.traitsSource,
    version: kind.version,
  };
}

export function presentContainerKinds(page: { rows: readonly ContainerKindRow[]; next: string | null }) {
  return { containerKinds: page.rows.map(presentContainerKind), next: page.next };
}
