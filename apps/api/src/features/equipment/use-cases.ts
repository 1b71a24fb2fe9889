import type { Tx } from '@sheafbook/db';
import type { EquipmentItemRow, EquipmentPartRow } from '@sheafbook/db/tables';
import { codeFromNumber } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { type PageQuery, pageOf } from '../../platform/paging.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { takeNumbers } from '../household/queries.ts';
import { loadHouseOwners } from '../storehouse/queries.ts';
import { presentItem } from './present.ts';
import {
  hasItemNamed,
  hasScaleChecks,
  insertItem,
  insertParts,
  insertUnits,
  listItems,
  listParts,
  listUnits,
  loadItem,
  loadUnit,
  lockItem,
  replaceMissing,
  updateItem,
  updatePart,
  updateUnit,
} from './queries.ts';
import type { ItemEdit, ItemWish, PartsWish, UnitEdit } from './schema.ts';
import { type ItemRead, listUnitStates } from './unit-state.ts';

export { mayKeepEquipment, seesLoans } from './policy.ts';
export { presentUnit } from './present.ts';
export { type Blocker, listUnitStates, type UnitState } from './unit-state.ts';

/** Shorter than a bag's and a container's, so that no code is used twice. */
const CODE_CHARACTERS = 4;

/** A page of the group's own things by name, each with its parts and its pieces as they stand. */
export function findEquipment(context: Context, query: PageQuery) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const page = pageOf(await listItems(tx, storehouseId, query), query.limit, (item) => item.name);
    return { next: page.next, rows: await withParts(tx, context, page.rows) };
  });
}

export function readItem(context: Context, itemId: string) {
  return withTx(context, (tx) => readItemInside(tx, context, itemId));
}

async function readItemInside(tx: Tx, context: Context, itemId: string): Promise<ItemRead> {
  const item = await loadItem(tx, context.actor.storehouseId, itemId);
  const [read] = await withParts(tx, context, [item]);
  if (!read) throw new Problem('thing-not-found', { thing: 'equipment' });
  return read;
}

async function withParts(tx: Tx, context: Context, items: readonly EquipmentItemRow[]): Promise<ItemRead[]> {
  const ids = items.map(({ equipmentItemId }) => equipmentItemId);
  const parts = await listParts(tx, context.actor.storehouseId, ids);
  const states = await listUnitStates(tx, context, items);
  return items.map((item) => ({
    item,
    parts: parts.filter((part) => part.equipmentItemId === item.equipmentItemId),
    states: states.filter(({ unit }) => unit.equipmentItemId === item.equipmentItemId),
  }));
}

export function addItem(context: Context, { units, ...facts }: ItemWish): Promise<ItemRead> {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    await refuseTakenName(tx, storehouseId, facts.name);
    const { commonId } = await loadHouseOwners(tx, storehouseId);
    const equipmentItemId = newId(context);
    const entered = { enteredBy: personId, enteredAt: context.now() };
    await insertItem(tx, { ...facts, ...entered, storehouseId, equipmentItemId, ownerId: commonId });
    await addUnits(tx, context, equipmentItemId, { from: 0, to: units });
    return readItemInside(tx, context, equipmentItemId);
  });
}

/** Bookings that are made keep the buffers that they were made with. */
export function editItem(context: Context, itemId: string, edit: ItemEdit): Promise<ItemRead> {
  const { storehouseId } = context.actor;
  const { version, units, ...facts } = edit;
  return withTx(context, async (tx) => {
    const item = await lockItem(tx, storehouseId, itemId);
    if (item.version !== version)
      throw new Problem('stale-version', { newer: presentItem(await readItemInside(tx, context, itemId)) });
    if (item.name !== facts.name) await refuseTakenName(tx, storehouseId, facts.name);
    const [noScale, noThermometer] = [
      item.isScale && !facts.isScale,
      item.isThermometer && !facts.isThermometer,
    ];
    if ((noScale || noThermometer) && (await hasScaleChecks(tx, storehouseId, itemId)))
      throw noScale
        ? fieldProblem('invalid-input', 'isScale', 'It was checked as a scale, so it stays one.')
        : fieldProblem('invalid-input', 'isThermometer', 'It was checked as a thermometer, so it stays one.');
    const there = (await listUnits(tx, storehouseId, [itemId])).length;
    if (units < there)
      throw fieldProblem('invalid-input', 'units', `There are ${there} of it. Retire the one that is gone.`);
    await updateItem(tx, item, facts);
    await addUnits(tx, context, itemId, { from: there, to: units });
    return readItemInside(tx, context, itemId);
  });
}

async function refuseTakenName(tx: Tx, storehouseId: string, name: string): Promise<void> {
  if (await hasItemNamed(tx, storehouseId, name))
    throw fieldProblem('already-there', 'name', `There is equipment called ${name} already.`);
}

async function addUnits(
  tx: Tx,
  context: Context,
  equipmentItemId: string,
  { from, to }: { from: number; to: number },
): Promise<void> {
  const { storehouseId } = context.actor;
  if (to === from) return;
  const numbers = await takeNumbers(tx, storehouseId, { counter: 'equipment', count: to - from });
  await insertUnits(
    tx,
    numbers.map((number, at) => ({
      storehouseId,
      equipmentItemId,
      equipmentUnitId: newId(context),
      unitNo: from + at + 1,
      unitCode: codeFromNumber(number, CODE_CHARACTERS),
      inUseSince: todayOf(context),
    })),
  );
}

/** The parts as they are listed now; one that is left out belongs to the thing no more, and loans of before still name it. */
export function listPartsAnew(context: Context, itemId: string, { parts }: PartsWish): Promise<ItemRead> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const item = await lockItem(tx, storehouseId, itemId);
    const before = new Map(
      (await listParts(tx, storehouseId, [itemId])).map((part) => [part.equipmentPartId, part]),
    );
    for (const [at, { id }] of parts.entries()) if (id !== undefined) partIn(before, id, `parts.${at}.id`);
    const kept = new Set(parts.map(({ id }) => id));
    for (const part of before.values())
      if (!kept.has(part.equipmentPartId)) await updatePart(tx, part, { droppedAt: context.now() });
    for (const [position, { id, ...facts }] of parts.entries()) {
      const part = before.get(id ?? '');
      if (part) await updatePart(tx, part, { ...facts, position });
      else
        await insertParts(tx, [
          { ...facts, position, storehouseId, equipmentItemId: itemId, equipmentPartId: newId(context) },
        ]);
    }
    await updateItem(tx, item, {});
    return readItemInside(tx, context, itemId);
  });
}

function partIn(
  parts: ReadonlyMap<string, EquipmentPartRow>,
  partId: string,
  field: string,
): EquipmentPartRow {
  const part = parts.get(partId);
  if (!part) throw fieldProblem('thing-not-found', field, 'This part belongs to something else.');
  return part;
}

/** How a piece is, and what it lacks: cleaned, mended, its lost part replaced, or retired. */
export function editUnit(context: Context, unitId: string, edit: UnitEdit): Promise<ItemRead> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const { equipmentItemId } = await loadUnit(tx, storehouseId, unitId);
    await lockItem(tx, storehouseId, equipmentItemId);
    const unit = await loadUnit(tx, storehouseId, unitId);
    if (unit.version !== edit.version)
      throw new Problem('stale-version', {
        newer: presentItem(await readItemInside(tx, context, equipmentItemId)),
      });
    const { condition, conditionNote, missing } = edit;
    await updateUnit(tx, unit, { condition, conditionNote });
    if (missing) {
      const parts = await listParts(tx, storehouseId, [equipmentItemId]);
      refuseMoreThanBelong(parts, missing);
      await replaceMissing(tx, unit, missing);
    }
    return readItemInside(tx, context, equipmentItemId);
  });
}

function refuseMoreThanBelong(
  parts: readonly EquipmentPartRow[],
  missing: NonNullable<UnitEdit['missing']>,
): void {
  const known = new Map(parts.map((part) => [part.equipmentPartId, part]));
  for (const [at, { partId, pieces }] of missing.entries()) {
    const part = partIn(known, partId, `missing.${at}.partId`);
    if (pieces > part.pieces)
      throw fieldProblem('invalid-input', `missing.${at}.pieces`, `It has ${part.pieces} of these.`);
  }
}
