import type { Tx } from '@sheafbook/db';
import {
  codeCounters,
  containerKinds,
  foods,
  owners,
  persons,
  rules,
  storehouses,
  units,
  vessels,
} from '@sheafbook/db/tables';
import { CONTAINER_KINDS, REFERENCE_FOODS } from '@sheafbook/foods';
import { findContainerTraits } from '@sheafbook/keeping';
import { OUTSIDE_KINDS, type OutsideKind } from '@sheafbook/ledger';
import { assert } from '@sheafbook/units';
import { and, desc, eq, inArray, isNull, sql } from 'drizzle-orm';
import type { StorehouseEdit, StorehouseFacts } from './schema.ts';

export async function listStorehousesOfLogin(tx: Tx, loginId: string) {
  return tx
    .select({ storehouseId: storehouses.storehouseId, name: storehouses.name, personId: persons.personId })
    .from(persons)
    .innerJoin(storehouses, eq(storehouses.storehouseId, persons.storehouseId))
    .where(and(eq(persons.loginId, loginId), isNull(persons.leftOn)))
    .orderBy(storehouses.name, storehouses.storehouseId);
}

/** One first run at a time, on the whole server; the number is ours alone. */
export async function lockFirstRun(tx: Tx): Promise<void> {
  await tx.execute(sql`select pg_advisory_xact_lock(20261)`);
}

export async function loadStorehouse(tx: Tx, storehouseId: string) {
  const [row] = await tx.select().from(storehouses).where(eq(storehouses.storehouseId, storehouseId));
  assert(row, 'the actor belongs to this storehouse');
  return row;
}

export async function lockStorehouse(tx: Tx, storehouseId: string) {
  const [row] = await tx
    .select()
    .from(storehouses)
    .where(eq(storehouses.storehouseId, storehouseId))
    .for('update');
  assert(row, 'the actor belongs to this storehouse');
  return row;
}

export async function updateStorehouse(tx: Tx, storehouseId: string, edit: StorehouseEdit) {
  const { name, timeZone, massDisplay, language, yearEndMonth, version } = edit;
  const [row] = await tx
    .update(storehouses)
    .set({
      ...{ name, timeZone, massDisplay, language },
      ...(yearEndMonth === undefined ? {} : { yearEndMonth }),
      version: version + 1,
    })
    .where(eq(storehouses.storehouseId, storehouseId))
    .returning();
  assert(row, 'the storehouse was locked before');
  return row;
}

/** The rules in force: the newest version. A buy that is fixed names its own. */
export async function loadRules(tx: Tx, storehouseId: string, rulesVersion?: number) {
  const [row] = await tx
    .select()
    .from(rules)
    .where(
      and(
        eq(rules.storehouseId, storehouseId),
        rulesVersion === undefined ? undefined : eq(rules.rulesVersion, rulesVersion),
      ),
    )
    .orderBy(desc(rules.rulesVersion))
    .limit(1);
  assert(row, 'a storehouse is founded with rules');
  return row;
}

export async function insertRules(tx: Tx, row: typeof rules.$inferInsert) {
  const [inserted] = await tx.insert(rules).values(row).returning();
  assert(inserted, 'an insert returns its row');
  return inserted;
}

/** The owners that a storehouse has once: its common stock, and nobody, whose is what no split has given out yet. */
export type HouseOwners = { readonly commonId: string; readonly unassignedId: string };

export async function loadHouseOwners(tx: Tx, storehouseId: string): Promise<HouseOwners> {
  const rows = await tx
    .select({ kind: owners.kind, ownerId: owners.ownerId })
    .from(owners)
    .where(and(eq(owners.storehouseId, storehouseId), inArray(owners.kind, ['common', 'unassigned'])));
  const ownerIdOf = (kind: string) => rows.find((owner) => owner.kind === kind)?.ownerId;
  const [commonId, unassignedId] = [ownerIdOf('common'), ownerIdOf('unassigned')];
  assert(commonId && unassignedId, 'a storehouse is founded with its common stock and with nobody');
  return { commonId, unassignedId };
}

/** Where grams come from and go to that are in no stock. The condition is the index's own. */
export async function loadOutsideVessels(
  tx: Tx,
  storehouseId: string,
): Promise<(kind: OutsideKind) => string> {
  const rows = await tx
    .select({ kind: vessels.kind, vesselId: vessels.vesselId })
    .from(vessels)
    .where(
      and(
        eq(vessels.storehouseId, storehouseId),
        sql`${vessels.kind} not in ('bag', 'container', 'kitchen')`,
      ),
    );
  return (kind) => {
    const vesselId = rows.find((vessel) => vessel.kind === kind)?.vesselId;
    assert(vesselId, 'a storehouse is founded with the vessels of the outside');
    return vesselId;
  };
}

/** Everything that a storehouse has from its first minute: book, currency, outside, owners, foods, container kinds. */
export async function insertStorehouse(
  tx: Tx,
  storehouseId: string,
  { facts, foundedAt }: { facts: StorehouseFacts; foundedAt: Date },
): Promise<void> {
  const { name, currency, timeZone, massDisplay, language } = facts;
  await tx
    .insert(storehouses)
    .values({ storehouseId, name, currency, timeZone, massDisplay, language, foundedAt });
  await tx.insert(rules).values({ storehouseId, rulesVersion: 1, decidedAt: foundedAt });
  // By hand: the app may set no other column of this row, and Drizzle would name them all.
  await tx.execute(sql`insert into book.book_state (storehouse_id) values (${storehouseId})`);
  await tx.insert(units).values({ storehouseId, kind: 'currency', currency });
  await tx.insert(owners).values([
    { storehouseId, kind: 'common' },
    { storehouseId, kind: 'unassigned' },
  ]);
  await tx.insert(vessels).values(OUTSIDE_KINDS.map((kind) => ({ storehouseId, kind })));
  await tx.insert(codeCounters).values(
    ['bag', 'container', 'equipment', 'order', 'paper', 'seat'].map((counter) => ({
      storehouseId,
      counter,
    })),
  );
  await tx.insert(foods).values(REFERENCE_FOODS.map((food) => toFoodRow(storehouseId, food)));
  await tx.insert(containerKinds).values(
    CONTAINER_KINDS.map((kind) => ({
      storehouseId,
      kindCode: kind.kindCode,
      nameEn: kind.names.en,
      nameEs: kind.names.es,
      isOwn: false,
      capacityMicrolitres: kind.capacityMicrolitres,
      tareGrams: kind.tareGrams,
      source: kind.source,
      ...traitsOf(kind.kindCode),
    })),
  );
}

function traitsOf(kindCode: string) {
  const traits = findContainerTraits(kindCode);
  assert(traits, 'each reference kind has its traits, which a test holds');
  const { kindCode: _, source: traitsSource, ...columns } = traits;
  return { ...columns, traitsSource };
}

function toFoodRow(storehouseId: string, food: (typeof REFERENCE_FOODS)[number]): typeof foods.$inferInsert {
  const bulk = food.bulkMilligramsPerMillilitre;
  return {
    storehouseId,
    foodCode: food.foodCode,
    nameEn: food.names.en,
    nameEs: food.names.es,
    foodGroup: food.group,
    isOwn: false,
    kilocaloriesPer100Grams: food.kilocaloriesPer100Grams,
    proteinMilligramsPer100Grams: food.proteinMilligramsPer100Grams,
    fatMilligramsPer100Grams: food.fatMilligramsPer100Grams,
    carbohydrateMilligramsPer100Grams: food.carbohydrateMilligramsPer100Grams,
    fibreMilligramsPer100Grams: food.fibreMilligramsPer100Grams,
    bulkMicrogramsPerMillilitre: bulk === null ? null : Math.round(bulk * 1000),
    allergens: [...food.allergens],
    gluten: food.gluten,
    keepingClass: food.keepingClass,
    needsMoistureTest: food.needsMoistureTest,
    source: food.source.table,
    sourceRelease: food.source.release,
    sourceNumber: food.source.databaseNumber,
  };
}
