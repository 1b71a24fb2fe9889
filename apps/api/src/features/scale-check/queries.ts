import type { Tx } from '@sheafbook/db';
import {
  equipmentItems,
  equipmentUnits,
  persons,
  type ScaleCheckRow,
  scaleChecks,
} from '@sheafbook/db/tables';
import type { scaleStanding, thermometerStanding } from '@sheafbook/packing';
import { and, asc, desc, eq, inArray, ne } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';

export async function insertScaleCheck(tx: Tx, row: typeof scaleChecks.$inferInsert): Promise<void> {
  await tx.insert(scaleChecks).values(row);
}

/** What a thing measures, by which it is checked. */
export type MeasureKind = 'scale' | 'thermometer';

const IS_KIND = { scale: equipmentItems.isScale, thermometer: equipmentItems.isThermometer } as const;

/** The pieces of the things of a kind that are still in use, by name and number; of these ids only, where some are given. */
export async function listMeasurePieces(
  tx: Tx,
  storehouseId: string,
  of: { kind: MeasureKind; unitIds?: readonly string[] | undefined },
) {
  return tx
    .select({ item: equipmentItems, unit: equipmentUnits })
    .from(equipmentUnits)
    .innerJoin(equipmentItems, joinOn(equipmentItems, equipmentUnits, 'equipmentItemId'))
    .where(
      and(
        eq(equipmentUnits.storehouseId, storehouseId),
        eq(IS_KIND[of.kind], true),
        ne(equipmentUnits.condition, 'retired'),
        of.unitIds === undefined ? undefined : inArray(equipmentUnits.equipmentUnitId, [...of.unitIds]),
      ),
    )
    .orderBy(asc(equipmentItems.name), asc(equipmentUnits.unitNo));
}
export type MeasurePiece = Awaited<ReturnType<typeof listMeasurePieces>>[number];

/** A piece that is a scale, its last check, and how it stands by that on a day. */
export type ScaleRead = MeasurePiece & {
  readonly last: ScaleCheckRow | null;
  readonly standing: ReturnType<typeof scaleStanding>;
};

/** The same of a thermometer. */
export type ThermometerRead = MeasurePiece & {
  readonly last: ScaleCheckRow | null;
  readonly standing: ReturnType<typeof thermometerStanding>;
};

/** The last check of each of some pieces: the one of the latest day, the one written down last of that day's. */
export async function listLastChecks(
  tx: Tx,
  storehouseId: string,
  unitIds: readonly string[],
): Promise<ScaleCheckRow[]> {
  if (unitIds.length === 0) return [];
  return tx
    .selectDistinctOn([scaleChecks.equipmentUnitId])
    .from(scaleChecks)
    .where(
      and(eq(scaleChecks.storehouseId, storehouseId), inArray(scaleChecks.equipmentUnitId, [...unitIds])),
    )
    .orderBy(
      asc(scaleChecks.equipmentUnitId),
      desc(scaleChecks.checkedOn),
      desc(scaleChecks.recordedAt),
      desc(scaleChecks.scaleCheckId),
    );
}

/** Every check of one kind of the pieces of a thing, the newest first. */
export async function listScaleChecks(
  tx: Tx,
  storehouseId: string,
  of: { kind: MeasureKind; itemId: string },
) {
  return tx
    .select({ check: scaleChecks, unitNo: equipmentUnits.unitNo, checkedBy: persons.name })
    .from(scaleChecks)
    .innerJoin(equipmentUnits, joinOn(equipmentUnits, scaleChecks, 'equipmentUnitId'))
    .innerJoin(persons, joinOn(persons, scaleChecks, 'personId', 'checkedBy'))
    .where(
      and(
        eq(scaleChecks.storehouseId, storehouseId),
        eq(scaleChecks.equipmentItemId, of.itemId),
        eq(scaleChecks.isScale, of.kind === 'scale'),
      ),
    )
    .orderBy(desc(scaleChecks.checkedOn), desc(scaleChecks.recordedAt), desc(scaleChecks.scaleCheckId));
}
export type ListedScaleCheck = Awaited<ReturnType<typeof listScaleChecks>>[number];
