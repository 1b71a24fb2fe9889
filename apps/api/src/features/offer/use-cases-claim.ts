import type { Tx } from '@sheafbook/db';
import type { OfferRow } from '@sheafbook/db/tables';
import {
  commonStockGiven,
  commonStockSold,
  type MovementDraft,
  memberTransfer,
  ownerChanged,
} from '@sheafbook/ledger';
import { sumOf } from '@sheafbook/units';
import { householdOf } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { postEntry } from '../../platform/post-entry.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { lockContainers } from '../container/queries.ts';
import { insertMoves } from '../keeping/queries.ts';
import { loadWorths } from '../stock-count/use-cases.ts';
import { loadHouseOwners } from '../storehouse/queries.ts';
import { refuseUnfit } from './fit.ts';
import {
  endOffered,
  insertClaims,
  listOwned,
  lockOffer,
  type Offered,
  updateContainerOwner,
} from './queries.ts';
import { loadOwnTurn, readOfferInside, requireStanding } from './read.ts';
import type { ClaimWish } from './schema.ts';
import { tellGiver } from './use-cases.ts';

/**
 * Takes containers of an offer: the grams change hands where they stand, and the price goes from balance to balance, all in
 * one entry. Of two who take the last one together, one is first.
 */
export function claimOffer(context: Context, offerId: string, wish: ClaimWish) {
  const { storehouseId, personId } = context.actor;
  const takerId = householdOf(context);
  return withTx(context, async (tx) => {
    const offer = await lockOffer(tx, storehouseId, offerId);
    requireStanding(context, offer, await loadOwnTurn(tx, context, offer), ['your-turn', 'for-all']);
    const parts = await lockWished(tx, context, offer, wish);
    const priceMinorUnits = sumOf(parts.map(({ part }) => part.priceMinorUnits));
    if (priceMinorUnits !== wish.minorUnits)
      throw fieldProblem(
        'does-not-add-up',
        'minorUnits',
        'The price is another than was shown. Look at the offer again.',
      );
    const containerIds = parts.map(({ container }) => container.containerId);
    const drafts = await draftClaim(tx, { offer, takerId, parts, priceMinorUnits });
    const header = { what: 'offer-claimed', onDay: todayOf(context), subjectId: offerId };
    const { entryId } = await postEntry(tx, context, { ...header, drafts });
    const claimedAt = context.now();
    await insertClaims(
      tx,
      containerIds.map((containerId) => ({
        ...{ storehouseId, offerId, containerId, householdId: takerId },
        ...{ entryId, claimedAt, claimedBy: personId },
      })),
    );
    await endOffered(tx, offer, { containerIds, endedAt: claimedAt, endedHow: 'taken' });
    await updateContainerOwner(tx, { storehouseId, containerIds }, takerId);
    await moveAway(tx, context, containerIds);
    await tellTaken(tx, context, offer, parts);
    return readOfferInside(tx, context, offerId);
  });
}

/** The containers wished for, locked in their order and still to be had. */
async function lockWished(tx: Tx, context: Context, offer: OfferRow, wish: ClaimWish): Promise<Offered[]> {
  const { storehouseId } = context.actor;
  const wished = wish.containerIds.toSorted();
  await lockContainers(tx, storehouseId, wished);
  const { parts } = await readOfferInside(tx, context, offer.offerId);
  const rows: Offered[] = [];
  for (const containerId of wished) {
    const row = parts.find(({ part }) => part.containerId === containerId);
    if (!row) throw new Problem('thing-not-found', { thing: 'container' });
    if (row.part.endedHow !== null) {
      const code = row.part.endedHow === 'taken' ? 'offer-taken' : 'offer-over';
      throw new Problem(code, { containers: [row.container.containerCode] });
    }
    rows.push(row);
  }
  await refuseUnfit(
    tx,
    storehouseId,
    rows.map(({ container }) => container),
  );
  return rows;
}

type Claimed = {
  readonly offer: OfferRow;
  readonly takerId: string;
  readonly parts: readonly Offered[];
  readonly priceMinorUnits: number;
};

async function draftClaim(tx: Tx, claim: Claimed): Promise<MovementDraft[]> {
  const { offer, takerId, parts, priceMinorUnits } = claim;
  if (offer.householdId === null) return draftFromCommon(tx, claim);
  return memberTransfer({
    ...{ giverId: offer.householdId, takerId, priceMinorUnits },
    mass: parts.map(({ part, lot }) => ({
      ...{ lotId: lot.lotId, fromVesselId: part.containerId, toVesselId: part.containerId },
      amountGrams: part.grams,
    })),
  });
}

/**
 * Common stock leaves account 1400 at what it stands at there. What a household pays of that is a sale, what it pays beyond
 * goes to the store fund, what is left is given value (job map 4.4).
 */
async function draftFromCommon(tx: Tx, { offer, takerId, parts }: Claimed): Promise<MovementDraft[]> {
  const { storehouseId } = offer;
  const { commonId } = await loadHouseOwners(tx, storehouseId);
  const containerIds = parts.map(({ part }) => part.containerId);
  const owned = await listOwned(tx, storehouseId, { containerIds, householdId: null, ownerId: commonId });
  const priceOf = new Map(parts.map(({ part }) => [part.containerId, part.priceMinorUnits]));
  const drafts: MovementDraft[] = [];
  const lots = [...new Set(owned.map(({ lot }) => lot.lotId))].map((lotId) => {
    const ofLot = owned.filter(({ lot }) => lot.lotId === lotId);
    return { lotId, ofLot, grams: sumOf(ofLot.map(({ grams }) => grams)) };
  });
  const worths = await loadWorths(tx, storehouseId, lots);
  for (const [at, { lotId, ofLot }] of lots.entries()) {
    const worth = worths[at] ?? 0;
    const price = sumOf(ofLot.map(({ container }) => priceOf.get(container.containerId) ?? 0));
    const costMinorUnits = Math.min(price, worth);
    if (price > 0)
      drafts.push(
        ...commonStockSold({
          ...{ householdId: takerId, causeId: lotId },
          ...{ costMinorUnits, marginMinorUnits: price - costMinorUnits },
        }),
      );
    if (worth > costMinorUnits)
      drafts.push(...commonStockGiven({ causeId: lotId, amountMinorUnits: worth - costMinorUnits }));
    for (const { container, grams: amountGrams } of ofLot)
      drafts.push(
        ...ownerChanged({
          ...{ lotId, vesselId: container.containerId, amountGrams },
          ...{ fromOwnerId: commonId, toOwnerId: takerId },
        }),
      );
  }
  return drafts;
}

/** It leaves the giver's place, which is private; until the taker says where it stands nobody knows. */
async function moveAway(tx: Tx, context: Context, containerIds: readonly string[]): Promise<void> {
  const { storehouseId, personId } = context.actor;
  const moved = { movedOn: todayOf(context), placeId: null, movedBy: personId, movedAt: context.now() };
  const rows = containerIds.map((containerId) => ({ storehouseId, containerId, ...moved }));
  await insertMoves(tx, rows);
}

/**
 * The giver learns that it is taken, and on the offer's page by whom: a notice may become a letter, and no letter names another
 * household. Of common stock the coordinator learns that it was taken (job map 14, "offers taken").
 */
async function tellTaken(
  tx: Tx,
  context: Context,
  offer: OfferRow,
  parts: readonly Offered[],
): Promise<void> {
  const codes = parts.map(({ container }) => container.containerCode).join(', ');
  const says =
    offer.householdId === null
      ? `A household took this of what the store offers: ${codes}.`
      : `A household took this of what you offer: ${codes}. The offer’s page says who. Agree when it is fetched.`;
  await tellGiver(tx, context, offer, { food: parts[0]?.food ?? { nameEn: '', nameEs: '' }, says });
}
