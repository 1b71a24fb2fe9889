import { judgeScale } from '@sheafbook/packing';
import type { ListedScaleCheck, ScaleRead } from './queries.ts';

/** A scale as it stands: true, off by so many grams, checked too long ago, or never. */
export const presentScale = ({ item, unit, last, standing }: ScaleRead) => ({
  unitId: unit.equipmentUnitId,
  itemId: item.equipmentItemId,
  itemName: item.name,
  unitNo: unit.unitNo,
  code: unit.unitCode,
  ...standing,
  checkedOn: last?.checkedOn ?? null,
  /** What it may be off by, as it was said last. */
  limitGrams: last?.limitGrams ?? null,
  /** The weight that was laid on last. */
  laidGrams: last?.laidGrams ?? null,
});

export const presentScales = (scales: readonly ScaleRead[]) => ({ scales: scales.map(presentScale) });

export const presentScaleChecks = (rows: readonly ListedScaleCheck[]) => ({
  checks: rows.map(({ check, unitNo, checkedBy }) => ({
    id: check.scaleCheckId,
    unitId: check.equipmentUnitId,
    unitNo,
    laidGrams: check.laidGrams,
    shownGrams: check.shownGrams,
    limitGrams: check.limitGrams,
    ...judgeScale(check),
    checkedOn: check.checkedOn,
    checkedBy,
  })),
});
