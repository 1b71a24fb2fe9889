import { serviceDue } from '@sheafbook/booking';
import type { Tx } from '@sheafbook/db';
import type { EquipmentItemRow, EquipmentPartRow, EquipmentUnitRow } from '@sheafbook/db/tables';
import { daysBetween } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { todayOf } from '../../platform/today.ts';
import { listMissing, listUnits, listWear, type Missing, type Wear } from './queries.ts';

/** Why a piece takes no new loan (job map 8). */
export type Blocker = 'broken' | 'retired' | 'critical-part-missing' | 'service-due';

/** A piece as it stands at this moment. */
export type UnitState = {
  readonly unit: EquipmentUnitRow;
  readonly missing: readonly Missing[];
  readonly dueBackAt: Date | null;
  readonly usesSinceService: number;
  /** As many as a booking had on average since the last service, one at least. */
  readonly usesEach: number;
  readonly serviceSinceOn: string;
  readonly service: ReturnType<typeof serviceDue>;
  readonly blockers: readonly Blocker[];
};

/** A thing with its parts and its pieces. */
export type ItemRead = {
  readonly item: EquipmentItemRow;
  readonly parts: readonly EquipmentPartRow[];
  readonly states: readonly UnitState[];
};

/** Every piece of some things with what it lacks, whether it is out, and what keeps it from being lent. */
export async function listUnitStates(
  tx: Tx,
  context: Context,
  items: readonly EquipmentItemRow[],
): Promise<UnitState[]> {
  const { storehouseId } = context.actor;
  const itemOf = new Map(items.map((item) => [item.equipmentItemId, item]));
  const units = await listUnits(tx, storehouseId, [...itemOf.keys()]);
  const unitIds = units.map(({ equipmentUnitId }) => equipmentUnitId);
  const missing = await listMissing(tx, storehouseId, unitIds);
  const wear = new Map((await listWear(tx, storehouseId, unitIds)).map((row) => [row.unitId, row]));
  return units.flatMap((unit) => {
    const item = itemOf.get(unit.equipmentItemId);
    const worn = wear.get(unit.equipmentUnitId);
    if (!item || !worn) return [];
    const lacks = missing.filter(({ unitId }) => unitId === unit.equipmentUnitId);
    return [stateOf(todayOf(context), item, unit, { lacks, worn })];
  });
}

function stateOf(
  todayOn: string,
  item: EquipmentItemRow,
  unit: EquipmentUnitRow,
  { lacks, worn }: { lacks: readonly Missing[]; worn: Wear },
): UnitState {
  const days = Math.max(0, daysBetween(worn.sinceOn, todayOn));
  const plan = { everyUses: item.serviceEveryUses, everyDays: item.serviceEveryDays };
  const service = serviceDue({ uses: worn.uses, days }, plan);
  const blockers: Blocker[] = [];
  if (unit.condition === 'broken' || unit.condition === 'retired') blockers.push(unit.condition);
  if (lacks.some(({ isCritical }) => isCritical)) blockers.push('critical-part-missing');
  if (service.isDue) blockers.push('service-due');
  return {
    ...{ unit, missing: lacks, dueBackAt: worn.dueBackAt, service, blockers },
    ...{ usesSinceService: worn.uses, serviceSinceOn: worn.sinceOn },
    usesEach: Math.max(1, Math.ceil(worn.uses / Math.max(1, worn.usedBookings))),
  };
}
