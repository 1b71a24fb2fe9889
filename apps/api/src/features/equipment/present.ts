import type { EquipmentItemRow } from '@sheafbook/db/tables';
import type { ItemRead, UnitState } from './unit-state.ts';

/** What the group says of a thing, without its pieces. */
export const presentFacts = (item: EquipmentItemRow) => ({
  id: item.equipmentItemId,
  name: item.name,
  kindNote: item.kindNote,
  partsList: item.partsList,
  valueMinorUnits: item.valueMinorUnits,
  keptWhere: item.keptWhere,
  cautions: item.cautions,
  depositMinorUnits: item.depositMinorUnits,
  feeMinorUnits: item.feeMinorUnits,
  lateFeeMinorUnits: item.lateFeeMinorUnits,
  damageNote: item.damageNote,
  preMinutes: item.preMinutes,
  postMinutes: item.postMinutes,
  longestDays: item.longestDays,
  mayRelay: item.mayRelay,
  touchesFood: item.touchesFood,
  isScale: item.isScale,
  isThermometer: item.isThermometer,
  serviceEveryUses: item.serviceEveryUses,
  serviceEveryDays: item.serviceEveryDays,
  version: item.version,
});

export const presentUnit = (state: UnitState) => ({
  id: state.unit.equipmentUnitId,
  unitNo: state.unit.unitNo,
  code: state.unit.unitCode,
  condition: state.unit.condition,
  conditionNote: state.unit.conditionNote,
  version: state.unit.version,
  dueBackAt: state.dueBackAt?.toISOString() ?? null,
  missing: state.missing.map(({ partId, name, pieces, isCritical, valueMinorUnits }) => ({
    ...{ partId, name, pieces, isCritical, valueMinorUnits },
  })),
  service: {
    sinceOn: state.serviceSinceOn,
    usesSince: state.usesSinceService,
    ...state.service,
  },
  blockers: [...state.blockers],
});

export const presentItem = ({ item, parts, states }: ItemRead) => ({
  ...presentFacts(item),
  parts: parts.map(({ equipmentPartId, name, pieces, isCritical, valueMinorUnits }) => ({
    ...{ id: equipmentPartId, name, pieces, isCritical, valueMinorUnits },
  })),
  units: states.map(presentUnit),
});
