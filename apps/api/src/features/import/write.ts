import type { Tx } from '@sheafbook/db';
import { containers, lots, persons, units, vessels } from '@sheafbook/db/tables';
import * as ledger from '@sheafbook/ledger';
import { assert, codeFromNumber } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { postEntries, postEntry } from '../../platform/post-entry.ts';
import { insertHouseholds, takeNumbers } from '../household/queries.ts';
import { loadHouseOwners, loadOutsideVessels } from '../storehouse/queries.ts';
import { insertOwnerOfSupplier, insertSupplier } from '../supplier/queries.ts';
import { inParts } from './in-parts.ts';
import type { Made } from './plan/plan-sheets.ts';
import type { NewStock } from './plan/stock.ts';
import { insertContacts, insertEaters, insertFoods, insertItems } from './queries.ts';

/** As a container's code elsewhere: six characters and the check. */
const CODE_LENGTH = 6;
/** An entry of more movements would hold the book for too long in one statement. */
const MOVEMENTS_AT_A_TIME = 500;

type Wish = { readonly importId: string; readonly openingOn: string; readonly made: Made };

export type MadeThing = { readonly kind: string; readonly thingId: string };

/**
 * Writes everything that the sheets make, in the order in which one thing leans on another. Gives back what was made, so
 * that it can be taken back as one.
 */
export async function writeMade(tx: Tx, context: Context, wish: Wish): Promise<MadeThing[]> {
  const { made } = wish;
  const personIds = await writeHouseholds(tx, context, wish);
  const { storehouseId } = context.actor;
  await insertFoods(tx, made.foods);
  await insertEaters(tx, made.eaters);
  const { commonId } = await loadHouseOwners(tx, storehouseId);
  const entered = { enteredBy: context.actor.personId, enteredAt: context.now() };
  const items = made.equipment.map((item) => ({
    ...{ ...item, ...entered, storehouseId, ownerId: commonId, equipmentItemId: newId(context) },
  }));
  await insertItems(tx, items);
  await writeBalances(tx, context, wish);
  const stock = await writeStock(tx, context, wish);
  const supplierIds = made.balances.flatMap(({ newSupplier }) => newSupplier?.id ?? []);
  return [
    ...ofKind('household', made.households, ({ id }) => id),
    ...ofKind('person', personIds, (id) => id),
    ...ofKind('eater', made.eaters, ({ eaterId }) => eaterId),
    ...ofKind('food', made.foods, ({ foodId }) => foodId),
    ...ofKind('equipment_item', items, ({ equipmentItemId }) => equipmentItemId),
    ...ofKind('supplier', supplierIds, (id) => id),
    ...ofKind('lot', stock, ({ lotId }) => lotId),
    ...ofKind('container', stock, ({ containerId }) => containerId),
  ];
}

/** Each once: a lot fills several containers. */
function ofKind<Thing>(kind: string, things: readonly Thing[], idOf: (thing: Thing) => string): MadeThing[] {
  return [...new Set(things.map(idOf))].map((thingId) => ({ kind, thingId }));
}

/** The ids of the persons that came with the households. */
async function writeHouseholds(tx: Tx, context: Context, { made, openingOn }: Wish): Promise<string[]> {
  const { storehouseId } = context.actor;
  const { households } = made;
  const seats = await takeNumbers(tx, storehouseId, { counter: 'seat', count: households.length });
  const isAsPlanned = households.every(({ seat }, at) => seats[at] === seat);
  assert(isAsPlanned, 'the seats were looked up under the lock of their counter');
  const seated = households.map(({ id: householdId, seat, name }) => ({
    ...{ storehouseId, householdId, seat, name, joinedOn: openingOn },
  }));
  await inParts(seated, (part) => insertHouseholds(tx, part));
  // Shown to nobody by this: the household itself says whether its neighbours see it (job map 14).
  const contacts = households
    .filter(({ email, phone, address }) => [email, phone, address].some((text) => text !== ''))
    .map(({ id: householdId, email, phone, address }) => ({
      ...{ storehouseId, householdId, email, phone, address },
    }));
  await insertContacts(tx, contacts);
  const rows = households.map(({ id: householdId, personName: name }) => ({
    ...{ storehouseId, personId: newId(context), householdId, name, joinedOn: openingOn, loginId: null },
  }));
  await inParts(rows, (part) => tx.insert(persons).values(part));
  return rows.map(({ personId }) => personId);
}

/** One entry each, as the treasurer would post it by hand, so that each can be mended alone. */
async function writeBalances(tx: Tx, context: Context, { made, openingOn, importId }: Wish): Promise<void> {
  const { storehouseId } = context.actor;
  for (const { newSupplier } of made.balances) {
    if (newSupplier === null) continue;
    await insertOwnerOfSupplier(tx, storehouseId, newSupplier.id);
    await insertSupplier(tx, {
      ...{ storehouseId, supplierId: newSupplier.id, name: newSupplier.name, contact: '' },
    });
  }
  const entries = made.balances.map(({ account, balanceMinorUnits, note }) => ({
    ...{ what: 'opening-balance', onDay: openingOn, subjectId: importId, note },
    drafts: ledger.openingBalance({ account, balanceMinorUnits }),
  }));
  await inParts(entries, (part) => postEntries(tx, context, part));
}

/** Each row is a lot of its own; grams come from outside, in entries that are about one owner alone. */
async function writeStock(tx: Tx, context: Context, { made, openingOn, importId }: Wish) {
  const { storehouseId } = context.actor;
  const stock = made.stock.map((row) => ({ ...row, lotId: newId(context) }));
  await inParts(stock, (part) =>
    tx.insert(units).values(part.map(({ lotId }) => ({ storehouseId, unitId: lotId, kind: 'lot' }))),
  );
  await inParts(stock, (part) =>
    tx.insert(lots).values(
      part.map(({ lotId, foodId, harvestYear, originNote, packedOn }) => ({
        ...{ storehouseId, lotId, foodId, harvestYear, originNote, madeOn: packedOn },
      })),
    ),
  );
  const filled = await makeContainers(tx, context, stock);
  const [vesselIdOf, { unassignedId }] = await Promise.all([
    loadOutsideVessels(tx, storehouseId),
    loadHouseOwners(tx, storehouseId),
  ]);
  const from = ledger.massAccount(vesselIdOf('supplier'), unassignedId);
  for (const ownerId of new Set(filled.map((row) => row.ownerId))) {
    const owned = filled.filter((row) => row.ownerId === ownerId);
    for (let at = 0; at < owned.length; at += MOVEMENTS_AT_A_TIME)
      await postEntry(tx, context, {
        ...{ what: 'stock-brought-in', onDay: openingOn, subjectId: importId, note: 'Opening stock' },
        drafts: owned.slice(at, at + MOVEMENTS_AT_A_TIME).map(({ lotId, containerId, gramsEach }) =>
          ledger.moveGrams({
            lotId,
            from,
            to: ledger.massAccount(containerId, ownerId),
            amountGrams: gramsEach,
          }),
        ),
      });
  }
  return filled;
}

async function makeContainers(tx: Tx, context: Context, stock: readonly (NewStock & { lotId: string })[]) {
  const { storehouseId } = context.actor;
  const each = stock.flatMap((row) => Array.from({ length: row.count }, () => row));
  const numbers = await takeNumbers(tx, storehouseId, { counter: 'container', count: each.length });
  const rows = each.map((row, at) => ({
    ...{
      storehouseId,
      containerId: newId(context),
      containerCode: codeFromNumber(numbers[at] ?? 0, CODE_LENGTH),
    },
    ...{ containerKindId: row.containerKindId, lotId: row.lotId, householdId: row.householdId },
    ...{ packedOn: row.packedOn, note: row.note, ownerId: row.ownerId, gramsEach: row.gramsEach },
  }));
  await inParts(rows, (part) =>
    tx
      .insert(vessels)
      .values(part.map(({ containerId }) => ({ storehouseId, vesselId: containerId, kind: 'container' }))),
  );
  await inParts(rows, (part) =>
    tx.insert(containers).values(part.map(({ ownerId: _, gramsEach: __, ...row }) => row)),
  );
  return rows;
}
