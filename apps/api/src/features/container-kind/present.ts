import type { ContainerKindRow } from '@sheafbook/db/tables';

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
    version: kind.version,
  };
}

export function presentContainerKinds(page: { rows: readonly ContainerKindRow[]; next: string | null }) {
  return { containerKinds: page.rows.map(presentContainerKind), next: page.next };
}
