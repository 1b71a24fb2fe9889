import type { Tx } from '@sheafbook/db';
import {
  allotments,
  bags,
  buyLines,
  buys,
  chargeLines,
  chargeShares,
  depositAsks,
  foods,
  pickUpPieces,
  pickUps,
  pledgeCeilings,
  pledges,
  shares,
  splits,
  withdrawals,
} from '@sheafbook/db/tables';
import { and, eq, isNull } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import type { Subject } from './queries.ts';

const ofLine = (table: typeof pledges | typeof allotments | typeof splits) =>
  and(eq(buyLines.storehouseId, table.storehouseId), eq(buyLines.buyLineId, table.buyLineId));
const ofBuy = (
  table:
    | typeof pledges
    | typeof allotments
    | typeof splits
    | typeof chargeLines
    | typeof depositAsks
    | typeof withdrawals
    | typeof pickUps,
) => and(eq(buys.storehouseId, table.storehouseId), eq(buys.buyId, table.buyId));
const ofFood = joinOn(foods, buyLines, 'foodId');
const what = { buy: buys.name, foodCode: foods.foodCode, food: foods.nameEn };

export function listPledges(tx: Tx, { storehouseId, householdId }: Subject) {
  return tx
    .select({
      ...what,
      leastGrams: pledges.leastGrams,
      wantedGrams: pledges.wantedGrams,
      mostGrams: pledges.mostGrams,
      wholeBags: pledges.wholeBags,
      ceilingMinorUnits: pledgeCeilings.ceilingMinorUnits,
      ceilingPerGrams: pledgeCeilings.perGrams,
      asTyped: pledges.asTyped,
      pledgedAt: pledges.pledgedAt,
      isEnteredFor: pledges.isEnteredFor,
      withdrawnAt: pledges.withdrawnAt,
    })
    .from(pledges)
    .innerJoin(buyLines, ofLine(pledges))
    .innerJoin(foods, ofFood)
    .innerJoin(buys, ofBuy(pledges))
    .leftJoin(pledgeCeilings, joinOn(pledgeCeilings, pledges, 'pledgeId'))
    .where(and(eq(pledges.storehouseId, storehouseId), eq(pledges.householdId, householdId)))
    .orderBy(buys.madeAt, buys.buyId, buyLines.position, pledges.pledgeId);
}

export function listAllotments(tx: Tx, { storehouseId, householdId }: Subject) {
  const { grams, units, wholeBags, isDropped, droppedBecause } = allotments;
  return tx
    .select({ ...what, grams, units, massUnit: buyLines.massUnit, wholeBags, isDropped, droppedBecause })
    .from(allotments)
    .innerJoin(buyLines, ofLine(allotments))
    .innerJoin(foods, ofFood)
    .innerJoin(buys, ofBuy(allotments))
    .where(and(eq(allotments.storehouseId, storehouseId), eq(allotments.ownerId, householdId)))
    .orderBy(buys.madeAt, buys.buyId, buyLines.position);
}

/** What each split gave; a split that was undone gave nothing. */
export function listShares(tx: Tx, { storehouseId, householdId }: Subject) {
  const { claimGrams, awardGrams, exactAward, carryChangeGrams } = shares;
  return tx
    .select({ ...what, rule: splits.rule, claimGrams, awardGrams, exactAward, carryChangeGrams })
    .from(shares)
    .innerJoin(splits, joinOn(splits, shares, 'splitId'))
    .innerJoin(buyLines, ofLine(splits))
    .innerJoin(foods, ofFood)
    .innerJoin(buys, ofBuy(splits))
    .where(
      and(eq(shares.storehouseId, storehouseId), eq(shares.ownerId, householdId), isNull(splits.undoneAt)),
    )
    .orderBy(buys.madeAt, buys.buyId, buyLines.position, splits.roundNo);
}

export function listCharges(tx: Tx, { storehouseId, householdId }: Subject) {
  return tx
    .select({
      buy: buys.name,
      costLine: chargeLines.costLine,
      minorUnits: chargeShares.minorUnits,
      lineMinorUnits: chargeLines.minorUnits,
      weight: chargeShares.weight,
      gotSpareUnit: chargeShares.gotSpareUnit,
    })
    .from(chargeShares)
    .innerJoin(chargeLines, joinOn(chargeLines, chargeShares, 'chargeLineId'))
    .innerJoin(buys, ofBuy(chargeLines))
    .where(and(eq(chargeShares.storehouseId, storehouseId), eq(chargeShares.ownerId, householdId)))
    .orderBy(chargeShares.chargeLineId);
}

export function listDeposits(tx: Tx, { storehouseId, householdId }: Subject) {
  const { estimateMinorUnits, askedMinorUnits, dueOn, waiverReason } = depositAsks;
  return tx
    .select({ buy: buys.name, estimateMinorUnits, askedMinorUnits, dueOn, waiverReason })
    .from(depositAsks)
    .innerJoin(buys, ofBuy(depositAsks))
    .where(and(eq(depositAsks.storehouseId, storehouseId), eq(depositAsks.householdId, householdId)))
    .orderBy(depositAsks.buyId);
}

export function listWithdrawals(tx: Tx, { storehouseId, householdId }: Subject) {
  const { stageThen, reason, withdrawnAt } = withdrawals;
  return tx
    .select({ buy: buys.name, stageThen, reason, withdrawnAt })
    .from(withdrawals)
    .innerJoin(buys, ofBuy(withdrawals))
    .where(and(eq(withdrawals.storehouseId, storehouseId), eq(withdrawals.householdId, householdId)))
    .orderBy(withdrawals.withdrawalId);
}

/** One row a piece that was or is to be fetched; a window without pieces stands alone. */
export function listPickUps(tx: Tx, { storehouseId, householdId }: Subject) {
  const { startsAt, endsAt, signedBy, collectedAt } = pickUps;
  return tx
    .select({
      buy: buys.name,
      startsAt,
      endsAt,
      signedBy,
      collectedAt,
      bagCode: bags.bagCode,
      grams: pickUpPieces.grams,
    })
    .from(pickUps)
    .innerJoin(buys, ofBuy(pickUps))
    .leftJoin(pickUpPieces, joinOn(pickUpPieces, pickUps, 'pickUpId'))
    .leftJoin(bags, joinOn(bags, pickUpPieces, 'bagId'))
    .where(and(eq(pickUps.storehouseId, storehouseId), eq(pickUps.householdId, householdId)))
    .orderBy(pickUps.pickUpId, bags.bagCode);
}
