import { judgeScale, judgeThermometer } from '@sheafbook/packing';
import type { ListedScaleCheck, ScaleRead, ThermometerRead } from './queries.ts';
import { degreesOf, gramsOf } from './reading.ts';

const presentPiece = ({ item, unit, last }: ScaleRead | ThermometerRead) => ({
  unitId: unit.equipmentUnitId,
  itemId: item.equipmentItemId,
  itemName: item.name,
  unitNo: unit.unitNo,
  code: unit.unitCode,
  checkedOn: last?.checkedOn ?? null,
});

/** A scale as it stands: true, off by so many grams, checked too long ago, or never. */
export const presentScale = (read: ScaleRead) => ({
  ...presentPiece(read),
  ...read.standing,
  /** What it may be off by, as it was said last. */
  limitGrams: read.last?.limitGrams ?? null,
  /** The weight that was laid on last. */
  laidGrams: read.last?.laidGrams ?? null,
});

export const presentScales = (scales: readonly ScaleRead[]) => ({ scales: scales.map(presentScale) });

/** The same of thermometers, in tenths of a degree Celsius. */
export const presentThermometers = (thermometers: readonly ThermometerRead[]) => ({
  thermometers: thermometers.map((read) => ({
    ...presentPiece(read),
    ...read.standing,
    knownTenths: read.last?.knownTenths ?? null,
    shownTenths: read.last?.shownTenths ?? null,
    limitTenths: read.last?.limitTenths ?? null,
  })),
});

const presentCheck = ({ check, unitNo, checkedBy }: ListedScaleCheck) => ({
  ...{ id: check.scaleCheckId, unitId: check.equipmentUnitId, unitNo },
  ...{ checkedOn: check.checkedOn, checkedBy },
});

export const presentScaleChecks = (rows: readonly ListedScaleCheck[]) => ({
  checks: rows.map((row) => {
    const reading = gramsOf(row.check);
    return { ...presentCheck(row), ...reading, ...judgeScale(reading) };
  }),
});

export const presentThermometerChecks = (rows: readonly ListedScaleCheck[]) => ({
  checks: rows.map((row) => {
    const reading = degreesOf(row.check);
    return { ...presentCheck(row), ...reading, ...judgeThermometer(reading) };
  }),
});
