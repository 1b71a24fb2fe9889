import type { Tx } from '@sheafbook/db';
import type { BuyRow, SplitRow } from '@sheafbook/db/tables';
import { shareAwarded } from '@sheafbook/ledger';
import {
  cutNumberedBags,
  type FrozenSplit,
  freezeSplit,
  frozenSplitText,
  SPLIT_RULES,
  type SplitRule,
  splitByRule,
  thawSplit,
} from '@sheafbook/sharing';
import { assert } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { postEntry, reverseEntry } from '../../platform/post-entry.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listBuyLines, loadBuy, lockBuyForUpdate, requireStage } from '../buy/queries.ts';
import { listFoodsById } from '../food/queries.ts';
import { refuseHeld } from '../hold/queries.ts';
import { loadHouseOwners } from '../storehouse/queries.ts';
import { carryChanges, ratioRange } from './claims.ts';
import { seesAllShares } from './policy.ts';
import {
  findSplitInputs,
  insertSharePieces,
  insertShares,
  insertSplit,
  insertSplitInputs,
  listChargesOfLines,
  listLossesOfLines,
  listMovedPieces,
  listPiecesOf,
  listRounds,
  listSharesOf,
  listSplitsOfBuy,
  loadSharingOwners,
  loadSplit,
  loadSplitEntryId,
  updateSplitUndone,
} from './queries.ts';
import { claimsFor, inputOf, loadLine, prepareRound, type SplitRound } from './round.ts';
import type { SplitWish } from './schema.ts';

export { ratioRange } from './claims.ts';
export { readNeeds } from './needs.ts';
export type { SplitRound } from './round.ts';

/**
 * Splits what has landed of a line by a named rule: freezes the question with its answer, cuts the bags with the
 * fewest pieces, and makes every piece its owner's. What the claims leave over goes to common stock.
 */
export function makeSplit(context: Context, where: { buyId: string; lineId: string }, wish: SplitWish) {
  const { storehouseId } = context.actor;
  return withTx(
    context,
    async (tx) => {
      const buy = await lockBuyForUpdate(tx, storehouseId, where.buyId);
      await loadLine(tx, storehouseId, where);
      requireStage(buy, 'landed', 'shared-out');
      const round = await prepareRound(tx, context, { buy, lineId: where.lineId });
      const bagIds = round.bags.map((bag) => bag.bagId);
      await refuseHeld(tx, storehouseId, bagIds); // and no hold begins before this commits
      const rule = chooseRule(round, wish.rule);
      const claims = await claimsFor(tx, context, { round, rule, purpose: 'splitting by need first' });
      const frozen = freezeSplit(inputOf(round, rule, claims));
      const split = await keepSplit(tx, context, { buy, round, frozen });
      return readSheet(tx, context, split);
    },
    { task: 'need-first' },
  );
}

function chooseRule(round: SplitRound, wished: SplitRule | undefined): SplitRule {
  if (wished === undefined || wished === round.defaultRule || round.roundNo === 1)
    return wished ?? round.defaultRule;
  throw fieldProblem(
    'rule-frozen',
    'rule',
    `What comes later is split as the first part was: ${round.defaultRule}.`,
  );
}

/** What each of the named rules would give of the next round, before one is chosen. Nothing is posted. */
export async function runAllRules(
  tx: Tx,
  context: Context,
  { buy, lineId }: { buy: BuyRow; lineId: string },
) {
  await loadLine(tx, context.actor.storehouseId, { buyId: buy.buyId, lineId }); // what is not here comes before the stage
  requireStage(buy, 'landed', 'shared-out');
  const round = await prepareRound(tx, context, { buy, lineId });
  const purpose = 'comparing the rules of a split';
  const claims = await claimsFor(tx, context, { round, rule: 'need-first', purpose });
  return { round, answers: SPLIT_RULES.map((rule) => splitByRule(inputOf(round, rule, claims))) };
}

async function keepSplit(
  tx: Tx,
  context: Context,
  { buy, round, frozen }: { buy: BuyRow; round: SplitRound; frozen: FrozenSplit },
): Promise<SplitRow> {
  const { storehouseId, personId } = context.actor;
  const splitId = newId(context);
  const { claims: _claims, ...answer } = frozen; // claims hold what need-first read, so they stay in the inputs
  const awards = ownerAwards(round, frozen);
  const cut = cutNumberedBags({
    bags: round.bags.map(({ bagId, bagNo, unassignedGrams }) => ({
      bagId,
      number: bagNo,
      netGrams: unassignedGrams,
    })),
    awards: awards.map(({ ownerId, seat, awardGrams, wholeBags }) => ({
      ownerId,
      seat,
      grams: awardGrams,
      wholeBags,
    })),
  });
  const split = await insertSplit(tx, {
    storehouseId,
    splitId,
    buyId: buy.buyId,
    buyLineId: round.line.buyLineId,
    roundNo: round.roundNo,
    rule: frozen.rule,
    methodVersion: frozen.version,
    answer: { ...answer, pieceCount: cut.pieceCount, isFewest: cut.isFewest },
    madeBy: personId,
    madeAt: context.now(),
  });
  await insertSplitInputs(tx, { storehouseId, splitId, inputs: frozen });
  await insertShares(
    tx,
    awards.map(({ ownerId, claimGrams, awardGrams, exactAward, carryChangeGrams }) => ({
      storehouseId,
      splitId,
      ownerId,
      claimGrams,
      awardGrams,
      exactAward,
      carryChangeGrams,
    })),
  );
  const pieces = cut.bags.flatMap((bag) => bag.pieces.map((piece) => ({ bagId: bag.bagId, ...piece })));
  await insertSharePieces(
    tx,
    pieces.map((piece) => ({ storehouseId, splitId, ...piece })),
  );
  await postPieces(tx, context, { buy, round, splitId, pieces });
  return split;
}

/** Every claimant's award, and common stock's: its claim, if it stands in for someone, and whatever was left over. */
function ownerAwards(round: SplitRound, frozen: FrozenSplit) {
  const { promised, earlier, owners } = round;
  const changes = carryChanges(promised, earlier, frozen.awards);
  const wholeBags = new Map(promised.map((promise) => [promise.ownerId, promise.wholeBags]));
  const awards = frozen.awards.map((award) => ({
    ownerId: award.ownerId,
    claimGrams: award.claimUnits,
    awardGrams: award.awardUnits,
    exactAward: award.exactUnits,
  }));
  const isClaiming = awards.some((award) => award.ownerId === owners.commonId);
  const leftOver = { ownerId: owners.commonId, claimGrams: 0, awardGrams: 0, exactAward: '0' };
  const all = isClaiming || frozen.surplusUnits === 0 ? awards : [...awards, leftOver];
  return all.map((award) => {
    const surplusGrams = award.ownerId === owners.commonId ? frozen.surplusUnits : 0;
    return {
      ...award,
      awardGrams: award.awardGrams + surplusGrams,
      exactAward: surplusGrams === 0 ? award.exactAward : `${award.exactAward} + ${surplusGrams}`,
      seat: owners.seatOf(award.ownerId),
      wholeBags: wholeBags.get(award.ownerId) ?? false,
      carryChangeGrams: changes.get(award.ownerId) ?? 0,
    };
  });
}

async function postPieces(
  tx: Tx,
  context: Context,
  made: {
    buy: BuyRow;
    round: SplitRound;
    splitId: string;
    pieces: readonly { bagId: string; ownerId: string; grams: number }[];
  },
): Promise<void> {
  const { unassignedId } = made.round.owners;
  const lotOf = new Map(made.round.bags.map((bag) => [bag.bagId, bag.lotId]));
  const drafts = made.pieces.flatMap(({ bagId, ownerId, grams }) =>
    shareAwarded({
      lotId: lotOf.get(bagId) ?? '',
      bagVesselId: bagId,
      unassignedOwnerId: unassignedId,
      ownerId,
      amountGrams: grams,
    }),
  );
  const { buyId } = made.buy;
  await postEntry(tx, context, {
    what: 'split-made',
    onDay: todayOf(context),
    drafts,
    buyId,
    subjectId: made.splitId,
  });
}

/** Takes a split back before the buy is shared out, the newest round first, while all of it still stands in its bags. */
export function undoSplit(context: Context, splitId: string) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const { buyId, buyLineId } = await loadSplit(tx, storehouseId, splitId);
    const buy = await lockBuyForUpdate(tx, storehouseId, buyId);
    const split = await loadSplit(tx, storehouseId, splitId); // again, behind the lock
    if (split.undoneAt !== null) throw new Problem('already-reversed');
    requireStage(buy, 'landed');
    const newest = (await listRounds(tx, storehouseId, buyLineId)).at(-1);
    if (newest?.splitId !== splitId)
      throw new Problem('in-use', { detail: 'Undo the later round first.', splitId: newest?.splitId });
    const moved = await listMovedPieces(tx, storehouseId, splitId);
    if (moved.length > 0)
      throw new Problem('cannot-reverse', {
        detail: 'Some of it is no longer in its bag.',
        bags: moved.map(({ bagId, bagCode }) => ({ bagId, bagCode })),
      });
    await reverseEntry(tx, context, {
      what: 'split-undone',
      onDay: todayOf(context),
      buyId,
      subjectId: splitId,
      reversesId: await loadSplitEntryId(tx, storehouseId, splitId),
    });
    const undone = await updateSplitUndone(tx, storehouseId, { splitId, undoneAt: context.now() });
    return readSheet(tx, context, undone);
  });
}

export function readSplit(context: Context, splitId: string) {
  return withTx(context, async (tx) => {
    const sheet = await readSheet(tx, context, await loadSplit(tx, context.actor.storehouseId, splitId));
    await noteSharesRead(tx, context, [sheet]);
    return sheet;
  });
}

export function readSplitsOfBuy(context: Context, buyId: string) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    await loadBuy(tx, storehouseId, buyId);
    const splits = await listSplitsOfBuy(tx, storehouseId, buyId);
    const sheets = await readSheets(tx, context, { buyId, rows: splits });
    await noteSharesRead(tx, context, sheets);
    return sheets;
  });
}

/** Whoever sees what everybody received is written down for each of them. */
function noteSharesRead(tx: Tx, context: Context, sheets: readonly SplitSheet[]): Promise<void> {
  const households = sheets.flatMap(({ shares, owners }) =>
    shares.flatMap(({ ownerId }) => (ownerId === owners.commonId ? [] : [ownerId])),
  );
  const householdIds = seesAllShares(context.actor) ? households : [];
  return notePrivateRead(tx, context, { householdIds, what: 'shares', purpose: 'split of a buy' });
}

/** Runs a kept split again from its kept inputs and compares the bytes (job map section 15, invariant 7). */
export function rerunSplit(context: Context, splitId: string) {
  const { storehouseId } = context.actor;
  return withTx(
    context,
    async (tx) => {
      const split = await loadSplit(tx, storehouseId, splitId);
      const kept = (await findSplitInputs(tx, storehouseId, splitId)) as FrozenSplit;
      const households = kept.claims.map((claim) => claim.ownerId);
      const { commonId } = await loadHouseOwners(tx, storehouseId);
      if (split.rule === 'need-first')
        await notePrivateRead(tx, context, {
          householdIds: households.filter((ownerId) => ownerId !== commonId),
          what: 'days of stock, as need-first read it',
          purpose: 'running a split again',
        });
      const [before, again] = [frozenSplitText(kept), frozenSplitText(freezeSplit(thawSplit(kept)))];
      const shares = await listSharesOf(tx, storehouseId, [splitId]);
      const isBooked = kept.awards.every((award) => {
        const share = shares.find((row) => row.ownerId === award.ownerId);
        const surplusGrams = award.ownerId === commonId ? kept.surplusUnits : 0;
        return share?.awardGrams === award.awardUnits + surplusGrams;
      });
      return { split, isSame: before === again && isBooked };
    },
    { task: 'review' },
  );
}

export type SplitSheet = Awaited<ReturnType<typeof readSheets>>[number];

async function readSheet(tx: Tx, context: Context, split: SplitRow): Promise<SplitSheet> {
  const [sheet] = await readSheets(tx, context, { buyId: split.buyId, rows: [split] });
  assert(sheet, 'a split has its sheet');
  return sheet;
}

/** Everything that the split sheets of a buy print; `present` leaves out what the reader may not see. */
async function readSheets(
  tx: Tx,
  { actor }: Context,
  { buyId, rows }: { buyId: string; rows: readonly SplitRow[] },
) {
  const { storehouseId } = actor;
  const splitIds = rows.map(({ splitId }) => splitId);
  const lineIds = [...new Set(rows.map(({ buyLineId }) => buyLineId))];
  const lines = (await listBuyLines(tx, storehouseId, buyId)).filter(({ buyLineId }) =>
    lineIds.includes(buyLineId),
  );
  const foods = await listFoodsById(
    ...([tx, storehouseId] as const),
    lines.map(({ foodId }) => foodId),
  );
  const owners = await loadSharingOwners(tx, storehouseId);
  const allShares = await listSharesOf(tx, storehouseId, splitIds);
  const allPieces = await listPiecesOf(tx, storehouseId, splitIds);
  const allLosses = await listLossesOfLines(tx, storehouseId, lineIds);
  const allCharges = await listChargesOfLines(tx, storehouseId, { buyId, lineIds });
  return rows.map((split) => {
    const line = lines.find(({ buyLineId }) => buyLineId === split.buyLineId);
    const food = foods.find(({ foodId }) => foodId === line?.foodId);
    assert(line && food, 'a split is of a line of its buy, and that of a food');
    const isOfSplit = ({ splitId }: { splitId: string }) => splitId === split.splitId;
    const isOfLine = ({ lineId }: { lineId: string }) => lineId === split.buyLineId;
    const shares = allShares.filter(isOfSplit);
    return {
      ...{ actor, split, line, food, owners, shares, range: ratioRange(shares) },
      pieces: allPieces.filter(isOfSplit),
      losses: allLosses.filter(isOfLine),
      charges: allCharges.filter(isOfLine),
    };
  });
}
