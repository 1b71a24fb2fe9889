import type { Tx } from '@sheafbook/db';
import type { BuyRow, PickUpRow } from '@sheafbook/db/tables';
import { commonStockSold, reverse, uncollectedTaken } from '@sheafbook/ledger';
import { addDays, dayInZone } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { postEntry } from '../../platform/post-entry.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadBuy, lockBuyForShare, lockBuyForUpdate, requireStage } from '../buy/queries.ts';
import { listChargeLines } from '../charge/queries.ts';
import { shareByLot } from '../charge/use-cases.ts';
import { refuseHeld } from '../hold/queries.ts';
import { loadHousehold } from '../household/queries.ts';
import { keepKeying } from '../keying/use-cases.ts';
import { listAwardsOfBuy } from '../split/queries.ts';
import { loadHouseOwners, loadRules } from '../storehouse/queries.ts';
import { type Holding, landedCostOf, waitingGrams } from './holdings.ts';
import { mayPlanFor, seesAllPickUps } from './policy.ts';
import {
  insertPickUp,
  insertPickUpPieces,
  listHoldings,
  listPickUps,
  loadPickUp,
  lockPickUp,
  updatePickUp,
} from './queries.ts';
import type { CameWish, Collection, PickUpEdit, PickUpWish, UncollectedWish } from './schema.ts';

export { mayHandOver } from './policy.ts';

/** Plans when a household fetches its food of a buy. */
export function planPickUp(context: Context, buyId: string, wish: PickUpWish) {
  const { storehouseId } = context.actor;
  const householdId = wish.householdId ?? context.actor.householdId;
  if (householdId === null) throw new Problem('household-needed');
  return withTx(context, async (tx) => {
    const buy = await lockBuyForShare(tx, storehouseId, buyId);
    await loadHousehold(tx, storehouseId, householdId);
    if (!mayPlanFor(context.actor, householdId)) throw new Problem('not-your-household');
    requireStage(buy, 'ordered', 'landed', 'shared-out', 'closed');
    const { pickUpId } = await insertPickUp(tx, {
      storehouseId,
      buyId,
      householdId,
      startsAt: new Date(wish.startsAt),
      endsAt: new Date(wish.endsAt),
    });
    return readPickUp(tx, context, pickUpId);
  });
}

/** Moves the hour of a pick-up that hasn't taken place. */
export function editPickUp(context: Context, pickUpId: string, edit: PickUpEdit) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const pickUp = await lockPickUp(tx, storehouseId, pickUpId);
    if (!mayPlanFor(context.actor, pickUp.householdId)) throw new Problem('not-your-household');
    if (pickUp.version !== edit.version)
      throw new Problem('stale-version', {
        newer: {
          version: pickUp.version,
          startsAt: pickUp.startsAt?.toISOString() ?? null,
          endsAt: pickUp.endsAt?.toISOString() ?? null,
          collectedAt: pickUp.collectedAt?.toISOString() ?? null,
        },
      });
    if (pickUp.collectedAt !== null) throw new Problem('already-collected');
    await updatePickUp(tx, pickUp, { startsAt: new Date(edit.startsAt), endsAt: new Date(edit.endsAt) });
    return readPickUp(tx, context, pickUpId);
  });
}

/**
 * Signs off who took what. Grams stay where the book has them, in their bag: a place is no account. Never more than the
 * household still has waiting, and nothing out of a bag on hold.
 */
export function signCollection(context: Context, pickUpId: string, wish: Collection) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const { buyId, householdId } = await loadPickUp(tx, storehouseId, pickUpId);
    const buy = await lockBuyForUpdate(tx, storehouseId, buyId); // two pick-ups of one household, one after the other
    const pickUp = await lockPickUp(tx, storehouseId, pickUpId);
    if (!mayPlanFor(context.actor, householdId)) throw new Problem('not-your-household');
    if (pickUp.collectedAt !== null) throw new Problem('already-collected');
    return sign(tx, context, { buy, pickUp, wish });
  });
}

/**
 * Somebody of a household came for its food. Their open appointment is signed, the next one if there are several; without
 * one they came just so, and no hour is written that nobody agreed on.
 */
export function signWhoCame(context: Context, buyId: string, { householdId: of, ...wish }: CameWish) {
  const { storehouseId, householdId: ownId } = context.actor;
  const householdId = of ?? ownId;
  if (householdId === null) throw new Problem('household-needed');
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, storehouseId, buyId);
    await loadHousehold(tx, storehouseId, householdId);
    if (!mayPlanFor(context.actor, householdId)) throw new Problem('not-your-household');
    const planned = (await listPickUps(tx, storehouseId, { buyId, householdId })).find(
      ({ pickUp }) => pickUp.collectedAt === null,
    );
    const pickUp = planned
      ? await lockPickUp(tx, storehouseId, planned.pickUp.pickUpId)
      : await insertPickUp(tx, { storehouseId, buyId, householdId });
    return sign(tx, context, { buy, pickUp, wish });
  });
}

async function sign(
  tx: Tx,
  context: Context,
  { buy, pickUp, wish }: { buy: BuyRow; pickUp: PickUpRow; wish: Collection },
) {
  const { storehouseId, personId } = context.actor;
  const { pickUpId, householdId } = pickUp;
  requireStage(buy, 'shared-out', 'closed');
  const holdings = await listHoldings(tx, storehouseId, buy.buyId);
  const pieces = choosePieces(
    holdings.filter((holding) => holding.householdId === householdId),
    wish,
  );
  await refuseHeld(
    tx,
    storehouseId,
    pieces.map((piece) => piece.bagId),
  ); // and no hold begins before this commits
  await insertPickUpPieces(
    tx,
    pieces.map((piece) => ({ storehouseId, pickUpId, ...piece })),
  );
  const { signedBy } = wish;
  await updatePickUp(tx, pickUp, { signedBy, handedOverBy: personId, collectedAt: context.now() });
  await keepKeying(tx, context, { what: 'pick-up', subjectIds: [pickUpId], buy, householdId, pen: wish });
  return readPickUp(tx, context, pickUpId);
}

function choosePieces(own: readonly Holding[], wish: Collection): { bagId: string; grams: number }[] {
  const waiting = own.filter((holding) => waitingGrams(holding) > 0);
  if (wish.pieces) return wish.pieces.map((piece, position) => checkPiece(waiting, piece, position));
  const free = waiting.filter((holding) => !holding.isHeld);
  if (free.length === 0 && waiting.length > 0) throw new Problem('bag-on-hold');
  if (free.length === 0)
    throw new Problem('not-enough-left', { detail: 'Nothing of this household waits to be fetched.' });
  return free.map((holding) => ({ bagId: holding.bagId, grams: waitingGrams(holding) }));
}

function checkPiece(waiting: readonly Holding[], piece: { bagId: string; grams: number }, position: number) {
  const holding = waiting.find((candidate) => candidate.bagId === piece.bagId);
  if (holding?.isHeld) throw new Problem('bag-on-hold', { bagCode: holding.bagCode });
  const grams = holding ? waitingGrams(holding) : 0;
  if (grams >= piece.grams) return piece;
  const message = `Of this bag ${grams} g of the household wait to be fetched.`;
  throw new Problem('not-enough-left', {
    detail: message,
    fields: [{ field: `pieces.${position}.grams`, message }],
    waitingGrams: grams,
  });
}

/** The pick-ups of a buy with what still waits: all of them for those who hand over, else one's own. */
export function readPickUpsOfBuy(context: Context, buyId: string) {
  const { actor } = context;
  return withTx(context, async (tx) => {
    await loadBuy(tx, actor.storehouseId, buyId);
    const isOwn = (householdId: string) => seesAllPickUps(actor) || householdId === actor.householdId;
    const pickUps = await listPickUps(tx, actor.storehouseId, { buyId });
    const holdings = await listHoldings(tx, actor.storehouseId, buyId);
    const seen = {
      pickUps: pickUps.filter((row) => isOwn(row.pickUp.householdId)),
      waiting: holdings.filter((holding) => isOwn(holding.householdId) && waitingGrams(holding) > 0),
    };
    const householdIds = [...seen.pickUps.map(({ pickUp }) => pickUp), ...seen.waiting].map(
      (row) => row.householdId,
    );
    await notePrivateRead(tx, context, { householdIds, what: 'shares', purpose: 'pick-ups of a buy' });
    return seen;
  });
}

/** One's own appointments, the next first. */
export function readOwnPickUps(context: Context) {
  const { storehouseId, householdId } = context.actor;
  if (householdId === null) throw new Problem('household-needed');
  return withTx(context, (tx) => listPickUps(tx, storehouseId, { householdId }));
}

async function readPickUp(tx: Tx, { actor }: Context, pickUpId: string) {
  const [row] = await listPickUps(tx, actor.storehouseId, { pickUpId });
  if (!row) throw new Problem('thing-not-found', { thing: 'pick-up' });
  return row;
}

export type PickUpRead = Awaited<ReturnType<typeof readPickUp>>;

/** What waits at the store by household, and from which day the rule for what is never fetched applies to it. */
export function readUncollected(context: Context, buyId: string) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const buy = await loadBuy(tx, storehouseId, buyId);
    requireStage(buy, 'shared-out', 'closed');
    const waiting = await listWaiting(tx, context, buy);
    const householdIds = waiting.holdings.map((holding) => holding.householdId);
    await notePrivateRead(tx, context, { householdIds, what: 'shares', purpose: 'what nobody has fetched' });
    return waiting;
  });
}

/** Every household's pieces of a shared-out buy that wait at the store, each with the last day to fetch it. */
export async function listWaiting(tx: Tx, context: Context, { storehouseId, buyId, rulesVersion }: BuyRow) {
  const { uncollectedDays } = await loadRules(tx, storehouseId, rulesVersion ?? undefined);
  const holdings = await listHoldings(tx, storehouseId, buyId);
  return {
    uncollectedDays,
    holdings: holdings
      .filter((holding) => waitingGrams(holding) > 0)
      .map((holding) => ({ ...holding, fetchUntil: fetchUntil(context, holding, uncollectedDays) })),
  };
}

/** The last day a household may fetch a piece by the group's rule. */
const fetchUntil = ({ actor }: Context, { sinceAt }: Holding, uncollectedDays: number): string =>
  addDays(dayInZone(sinceAt.getTime(), actor.timeZone), uncollectedDays);

/**
 * What a household never fetched goes to common stock once the group's days have passed. It gets back what the grams
 * cost as goods and as freight by weight; what it bore per household or by value stays with it. Bags on hold stay.
 */
export function takeUncollected(
  context: Context,
  where: { buyId: string; householdId: string },
  wish: UncollectedWish,
) {
  const { storehouseId } = context.actor;
  const { buyId, householdId } = where;
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, storehouseId, buyId);
    await loadHousehold(tx, storehouseId, householdId);
    requireStage(buy, 'shared-out', 'closed');
    const { uncollectedDays } = await loadRules(tx, storehouseId, buy.rulesVersion ?? undefined);
    const waiting = (await listHoldings(tx, storehouseId, buyId)).filter(
      (holding) => holding.householdId === householdId && waitingGrams(holding) > 0 && !holding.isHeld,
    );
    const due = waiting.filter((holding) => fetchUntil(context, holding, uncollectedDays) < todayOf(context));
    refuseNoneDue(context, waiting, { due, uncollectedDays });
    const taken = due.map((holding) => ({ ...holding, grams: waitingGrams(holding) }));
    await refuseHeld(
      tx,
      storehouseId,
      taken.map((piece) => piece.bagId),
    );
    const { commonId } = await loadHouseOwners(tx, storehouseId);
    const costs = await costOfTaken(tx, context, { buyId, householdId, commonId, taken });
    const drafts = [
      ...taken.flatMap(({ lotId, bagId, grams }) =>
        uncollectedTaken({
          lotId,
          bagVesselId: bagId,
          householdId,
          commonOwnerId: commonId,
          amountGrams: grams,
        }),
      ),
      // The household sells to common stock what it was charged: a sale the other way round.
      ...costs.flatMap(({ causeId, amountMinorUnits }) =>
        reverse(commonStockSold({ householdId, causeId, costMinorUnits: amountMinorUnits })),
      ),
    ];
    const posted = await postEntry(tx, context, {
      what: 'uncollected-taken',
      onDay: todayOf(context),
      drafts,
      buyId,
      subjectId: householdId,
      note: wish.note,
    });
    const minorUnits = costs.reduce((sum, cost) => sum + cost.amountMinorUnits, 0);
    return { ...posted, householdId, taken, minorUnits, currency: context.actor.currency };
  });
}

export type UncollectedTaken = Awaited<ReturnType<typeof takeUncollected>>;

function refuseNoneDue(
  context: Context,
  waiting: readonly Holding[],
  { due, uncollectedDays }: { due: readonly Holding[]; uncollectedDays: number },
): void {
  if (due.length > 0) return;
  if (waiting.length === 0)
    throw new Problem('not-enough-left', { detail: 'Nothing of this household waits that may be taken.' });
  const until = waiting.map((holding) => fetchUntil(context, holding, uncollectedDays)).toSorted()[0];
  throw new Problem('buy-guard-unmet', {
    detail: `The household may fetch its food until ${until}.`,
    missing: [{ code: 'may-still-be-fetched', until }],
  });
}

async function costOfTaken(
  tx: Tx,
  context: Context,
  of: {
    buyId: string;
    householdId: string;
    commonId: string;
    taken: readonly (Holding & { readonly grams: number })[];
  },
) {
  const { storehouseId } = context.actor;
  const { buyId, householdId, commonId, taken } = of;
  const lines = await listChargeLines(tx, storehouseId, buyId);
  const borne = lines.flatMap(({ costLine, shares }) =>
    shares.filter((share) => share.ownerId === householdId).map((share) => ({ costLine, share })),
  );
  const awards = await listAwardsOfBuy(tx, storehouseId, buyId);
  const own = awards.filter((award) => award.ownerId === householdId);
  const awarded = new Map(own.map((award) => [award.buyLineId, award.grams]));
  const lots = taken.map(({ buyLineId, lotId, grams }) => ({ buyLineId, lotId, grams }));
  const costs = landedCostOf(lots, borne, awarded).map(({ buyLineId, minorUnits }) => ({
    costLineId: buyLineId ?? 'freight',
    minorUnits,
    buyLineId,
    shares: [{ ownerId: commonId, minorUnits, weight: 0, gotSpareUnit: false }],
  }));
  return shareByLot(costs, commonId, lots).filter((cost) => cost.amountMinorUnits > 0);
}
