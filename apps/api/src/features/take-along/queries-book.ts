import type { Tx } from '@sheafbook/db';
import {
  accounts,
  bags,
  buys,
  containerKinds,
  containerMoves,
  containers,
  containerWishes,
  entries,
  foods,
  lots,
  movements,
  places,
  placeWarmths,
} from '@sheafbook/db/tables';
import { STOCK_KINDS } from '@sheafbook/ledger';
import { and, eq, gt, inArray, ne, or, sql } from 'drizzle-orm';
import { alias } from 'drizzle-orm/pg-core';
import { joinOn } from '../../platform/join-on.ts';
import type { Subject } from './queries.ts';

const ofLot = joinOn(foods, lots, 'foodId');

export function listContainerWishes(tx: Tx, { storehouseId, householdId }: Subject) {
  const { position, grams } = containerWishes;
  return tx
    .select({ buy: buys.name, position, kindCode: containerKinds.kindCode, grams })
    .from(containerWishes)
    .innerJoin(buys, joinOn(buys, containerWishes, 'buyId'))
    .innerJoin(containerKinds, joinOn(containerKinds, containerWishes, 'containerKindId'))
    .where(and(eq(containerWishes.storehouseId, storehouseId), eq(containerWishes.householdId, householdId)))
    .orderBy(containerWishes.containerWishId);
}

export function listContainers(tx: Tx, { storehouseId, householdId }: Subject) {
  const { containerCode, lotId, packedOn, openedOn, note } = containers;
  return tx
    .select({
      containerCode,
      kindCode: containerKinds.kindCode,
      lotId,
      foodCode: foods.foodCode,
      food: foods.nameEn,
      harvestYear: lots.harvestYear,
      packedOn,
      openedOn,
      note,
    })
    .from(containers)
    .innerJoin(containerKinds, joinOn(containerKinds, containers, 'containerKindId'))
    .innerJoin(lots, joinOn(lots, containers, 'lotId'))
    .innerJoin(foods, ofLot)
    .where(and(eq(containers.storehouseId, storehouseId), eq(containers.householdId, householdId)))
    .orderBy(containerCode);
}

/** Its own places, by the names that it gave them. */
export function listOwnPlaces(tx: Tx, { storehouseId, householdId }: Subject) {
  const { name, kind, isLit, isDamp, isRodentProof, mostGrams } = places;
  return tx
    .select({ name, kind, isLit, isDamp, isRodentProof, mostGrams })
    .from(places)
    .where(and(eq(places.storehouseId, storehouseId), eq(places.householdId, householdId)))
    .orderBy(name);
}

/** How warm its own places were, by the day or the month, in tenths of a degree Celsius. */
export function listPlaceWarmth(tx: Tx, { storehouseId, householdId }: Subject) {
  const { fromOn, toOn, ageTenths, meanTenths, coldestTenths, warmestTenths, readings } = placeWarmths;
  return tx
    .select({
      place: places.name,
      fromOn,
      toOn,
      ageTenths,
      meanTenths,
      coldestTenths,
      warmestTenths,
      readings,
    })
    .from(placeWarmths)
    .innerJoin(places, joinOn(places, placeWarmths, 'placeId'))
    .where(and(eq(placeWarmths.storehouseId, storehouseId), eq(places.householdId, householdId)))
    .orderBy(places.name, fromOn);
}

/** Where its containers stood, and since when. */
export function listContainerMoves(tx: Tx, { storehouseId, householdId }: Subject) {
  return tx
    .select({
      containerCode: containers.containerCode,
      movedOn: containerMoves.movedOn,
      place: places.name,
      toldTenths: containerMoves.toldTenths,
    })
    .from(containerMoves)
    .innerJoin(containers, joinOn(containers, containerMoves, 'containerId'))
    .leftJoin(places, joinOn(places, containerMoves, 'placeId'))
    .where(and(eq(containerMoves.storehouseId, storehouseId), eq(containers.householdId, householdId)))
    .orderBy(containers.containerCode, containerMoves.movedOn, containerMoves.movedAt);
}

/** What the household owns now, by lot and vessel. */
export function listHoldings(tx: Tx, { storehouseId, householdId }: Subject) {
  return tx
    .select({
      lotId: lots.lotId,
      foodCode: foods.foodCode,
      food: foods.nameEn,
      vesselKind: accounts.vesselKind,
      bagCode: bags.bagCode,
      containerCode: containers.containerCode,
      grams: sql`${accounts.inflow} - ${accounts.outflow}`.mapWith(Number),
    })
    .from(accounts)
    .innerJoin(lots, joinOn(lots, accounts, 'lotId', 'unitId'))
    .innerJoin(foods, ofLot)
    .leftJoin(bags, joinOn(bags, accounts, 'bagId', 'vesselId'))
    .leftJoin(containers, joinOn(containers, accounts, 'containerId', 'vesselId'))
    .where(
      and(
        eq(accounts.storehouseId, storehouseId),
        eq(accounts.ownerId, householdId),
        inArray(accounts.vesselKind, [...STOCK_KINDS]),
        gt(accounts.inflow, accounts.outflow),
      ),
    )
    .orderBy(foods.foodCode, accounts.accountId);
}

const source = alias(accounts, 'source');
const destination = alias(accounts, 'destination');

const ofEntry = joinOn(entries, movements, 'entryId');
const ofSource = joinOn(source, movements, 'accountId', 'sourceId');
const ofDestination = joinOn(destination, movements, 'accountId', 'destinationId');
const entry = {
  entryNo: entries.entryNo,
  onDay: entries.onDay,
  recordedAt: entries.recordedAt,
  what: entries.what,
};

/**
 * Every movement of money on the household's own accounts, once for each: a deposit that is applied leaves one of them
 * and reaches another. An amount above zero was charged to the account, one below was paid, credited or taken in.
 */
export function listStatement(tx: Tx, { storehouseId, householdId }: Subject) {
  const isInto = eq(movements.destinationId, accounts.accountId);
  return tx
    .select({
      ...entry,
      buy: buys.name,
      account: accounts.kind,
      minorUnits: sql`case when ${isInto} then ${movements.amount} else -${movements.amount} end`.mapWith(
        Number,
      ),
      note: entries.note,
    })
    .from(accounts)
    .innerJoin(
      movements,
      and(
        eq(movements.storehouseId, accounts.storehouseId),
        or(eq(movements.sourceId, accounts.accountId), isInto),
      ),
    )
    .innerJoin(entries, ofEntry)
    .leftJoin(buys, joinOn(buys, entries, 'buyId'))
    .where(
      and(
        eq(accounts.storehouseId, storehouseId),
        eq(accounts.ownerId, householdId),
        ne(accounts.kind, 'mass'),
      ),
    )
    .orderBy(entries.entryNo, movements.line, accounts.kind);
}

/** Every gram that came to the household, moved between its vessels, or left it. */
export function listMassMovements(tx: Tx, { storehouseId, householdId }: Subject) {
  return tx
    .select({
      ...entry,
      lotId: lots.lotId,
      food: foods.nameEn,
      fromVessel: source.vesselKind,
      toVessel: destination.vesselKind,
      wasOwn: sql`${source.ownerId} is not distinct from ${householdId}`.mapWith(Boolean),
      isOwn: sql`${destination.ownerId} is not distinct from ${householdId}`.mapWith(Boolean),
      grams: movements.amount,
    })
    .from(movements)
    .innerJoin(entries, ofEntry)
    .innerJoin(source, ofSource)
    .innerJoin(destination, ofDestination)
    .innerJoin(lots, joinOn(lots, movements, 'lotId', 'unitId'))
    .innerJoin(foods, ofLot)
    .where(
      and(
        eq(movements.storehouseId, storehouseId),
        eq(source.kind, 'mass'),
        or(eq(source.ownerId, householdId), eq(destination.ownerId, householdId)),
      ),
    )
    .orderBy(entries.entryNo, movements.line);
}
