import type { Tx } from '@sheafbook/db';
import type { BuyLineRow, BuyRow, FoodRow, StageMoveRow } from '@sheafbook/db/tables';
import { type BuyStage, type Missing, mayMove } from '@sheafbook/ledger';
import { assert, dayInZone } from '@sheafbook/units';
import type { Actor } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { pageOf } from '../../platform/paging.ts';
import { fieldProblem, namedIn, namingProblem, Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listFoodsById, lockFoodsForShare } from '../food/queries.ts';
import { writeNotice } from '../notice/use-cases.ts';
import { hasPledges, listPledgesOfBuy } from '../pledge/queries.ts';
import { sumPledges } from '../pledge/use-cases.ts';
import { deleteBagOffers, isStanding, listQuotesOfBuy } from '../quote/queries.ts';
import { listMissingForFixing, listMissingForGathering } from './guards.ts';
import { presentMissing } from './missing.ts';
import { noticeOfLanding } from './move-notice.ts';
import { type BuyPage, type NextStep, presentBuy } from './present.ts';
import {
  deleteBuyLine,
  findBuyByName,
  insertBuy,
  insertBuyLines,
  listBuyLines,
  listBuys,
  listStageMoves,
  loadBuy,
  lockBuyForUpdate,
  moveStage,
  requireStage,
  updateBuy,
  updateBuyLine,
} from './queries.ts';
import type { BuyEdit, BuyFacts, BuyQuery, BuyWish, LineEdit, LineWish, StageWish } from './schema.ts';

export { isAboutDeposits, isAboutPledges, presentMissing } from './missing.ts';
export { mayRunBuys } from './policy.ts';
export { moveLanding } from './use-cases-landing-plan.ts';

type NamedLine = { readonly buyId: string; readonly buyLineId: string };

/** A page of buys, the newest first. */
export function findBuys(context: Context, query: BuyQuery) {
  return withTx(context, async (tx) =>
    pageOf(await listBuys(tx, context.actor.storehouseId, query), query.limit, (buy) => buy.buyId),
  );
}

/** One page of where a buy stands: lines with what is pledged as far as the actor may see, and the next step. */
export function readBuy(context: Context, buyId: string): Promise<BuyPage> {
  return withTx(context, async (tx) =>
    readPage(tx, context, await loadBuy(tx, context.actor.storehouseId, buyId)),
  );
}

async function readPage(tx: Tx, context: Context, buy: BuyRow): Promise<BuyPage> {
  const { actor } = context;
  const { storehouseId, buyId } = buy;
  const lines = await listBuyLines(tx, storehouseId, buyId);
  const quotes = await listQuotesOfBuy(tx, storehouseId, buyId);
  const pledges = await listPledgesOfBuy(tx, storehouseId, buyId);
  const foods = await listFoodsById(
    tx,
    storehouseId,
    lines.map((line) => line.foodId),
  );
  const sums = sumPledges(
    lines.map((line) => line.buyLineId),
    pledges,
    actor,
  );
  const standing = quotes.filter(({ quote }) => isStanding(quote, todayOf(context))).length;
  return {
    buy,
    lines: lines.map((line, position) => {
      const food = foods.find((candidate) => candidate.foodId === line.foodId);
      const pledged = sums[position];
      assert(food && pledged, 'every line has a food and a sum');
      return { line, food, pledged };
    }),
    quotes: { standing, withdrawnOrLapsed: quotes.length - standing },
    next: nextStep(buy, {
      gathering: () => listMissingForGathering({ buy, lines, quotes }, actor.timeZone),
      fixed: () => listMissingForFixing(standing),
    }),
  };
}

const NEXT: Readonly<Partial<Record<string, BuyStage>>> = {
  planning: 'gathering',
  gathering: 'fixed',
  fixed: 'ordered',
  ordered: 'landed',
  landed: 'shared-out',
  'shared-out': 'closed',
};

/** What every move lacks, in full, is told by the next step of the buy, which asks each move's own guard. */
function nextStep(
  buy: BuyRow,
  missingFor: Readonly<Partial<Record<BuyStage, () => Missing[]>>>,
): NextStep | null {
  const to = NEXT[buy.stage];
  return to ? { to, missing: missingFor[to]?.() ?? null } : null;
}

/** Plans a buy, with the foods it is about. Their order is the order of the lines everywhere. */
export function planBuy(context: Context, wish: BuyWish): Promise<BuyPage> {
  const { storehouseId, personId } = context.actor;
  const { lines, ...facts } = wish;
  refuseImpossibleDays(context, facts);
  return withTx(context, async (tx) => {
    await refuseUnusableFoods(tx, storehouseId, lines);
    await refuseTakenName(tx, storehouseId, facts.name);
    const buyId = newId(context);
    const buy = await insertBuy(tx, {
      ...columnsOf(facts),
      storehouseId,
      buyId,
      madeBy: personId,
      madeAt: context.now(),
    });
    await insertBuyLines(tx, lineRows(context, buy, lines, 1));
    return readPage(tx, context, buy);
  });
}

/** Changes name, days and place while nothing is fixed. A buy that gathers goes on meeting the guard that opened it. */
export function editBuy(context: Context, buyId: string, { version, ...facts }: BuyEdit): Promise<BuyPage> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, storehouseId, buyId);
    requireStage(buy, 'planning', 'gathering');
    refuseStale(buy, version);
    refuseImpossibleDays(context, facts, buy);
    if (facts.name !== buy.name) await refuseTakenName(tx, storehouseId, facts.name);
    const edited = await updateBuy(tx, buy, columnsOf(facts));
    const notice = noticeOfLanding(buy, edited);
    if (notice) await writeNotice(tx, context, notice);
    if (buy.stage === 'gathering') refuseUnmet(context.actor, await listMissingToOpen(tx, context, edited));
    return readPage(tx, context, edited);
  });
}

/** Adds a food to a buy that nobody has pledged in. */
export function addLine(context: Context, buyId: string, wish: LineWish): Promise<BuyPage> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, storehouseId, buyId);
    const lines = await listBuyLines(tx, storehouseId, buyId);
    await refuseUnusableFoods(tx, storehouseId, [wish], '');
    await requireNoPledges(tx, buy);
    if (lines.some((line) => line.foodId === wish.foodId))
      throw fieldProblem('already-there', 'foodId', 'The buy has a line for this food already.');
    const position = Math.max(0, ...lines.map((line) => line.position)) + 1;
    await insertBuyLines(tx, lineRows(context, buy, [wish], position));
    return readPage(tx, context, await updateBuy(tx, buy, {}));
  });
}

/** Changes steps, rule and cap of a line. Steps stay once someone pledged in them. */
export function editLine(context: Context, named: NamedLine, edit: LineEdit): Promise<BuyPage> {
  const { storehouseId } = context.actor;
  const { version, ...change } = edit;
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, storehouseId, named.buyId);
    const line = await requireLine(tx, buy, named.buyLineId);
    requireStage(buy, 'planning', 'gathering');
    if (line.version !== version)
      throw new Problem('stale-version', { newer: { id: line.buyLineId, ...editableOf(line) } });
    if (change.stepUnits !== line.stepUnits && (await hasPledges(tx, storehouseId, line.buyLineId)))
      throw fieldProblem('in-use', 'stepUnits', 'Someone has pledged in these steps.');
    await updateBuyLine(tx, line, change);
    return readPage(tx, context, buy);
  });
}

const editableOf = ({ version, stepUnits, splitRule, commonCapGrams }: BuyLineRow) => ({
  version,
  stepUnits,
  splitRule,
  commonCapGrams,
});

/** Takes a food off a buy that nobody has pledged in. Offers of withdrawn quotes for it go along. */
export function removeLine(context: Context, named: NamedLine): Promise<BuyPage> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, storehouseId, named.buyId);
    const line = await requireLine(tx, buy, named.buyLineId);
    await requireNoPledges(tx, buy);
    if (await hasPledges(tx, storehouseId, line.buyLineId))
      throw new Problem('in-use', {
        detail: 'A pledge for this food was made and withdrawn; it stays on record.',
      });
    const quotes = await listQuotesOfBuy(tx, storehouseId, named.buyId);
    const offering = quotes.filter(({ offers }) =>
      offers.some((offer) => offer.buyLineId === line.buyLineId),
    );
    if (offering.some(({ quote }) => quote.withdrawnAt === null))
      throw new Problem('in-use', {
        detail: 'A quote offers this food. Withdraw or replace the quote first.',
      });
    const offers = offering.flatMap((quote) => quote.offers);
    const offerIds = offers
      .filter((offer) => offer.buyLineId === line.buyLineId)
      .map((offer) => offer.bagOfferId);
    await deleteBagOffers(tx, storehouseId, offerIds);
    await deleteBuyLine(tx, line);
    return readPage(tx, context, await updateBuy(tx, buy, {}));
  });
}

/**
 * Opens a planned buy for pledges. Every later move is a command of its own, at its own address: it takes more than a
 * wish to fix, order, land, share out or close a buy.
 */
export function openForPledges(context: Context, buyId: string, { to }: StageWish): Promise<BuyPage> {
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, context.actor.storehouseId, buyId);
    refuseOtherMoves(buy, to);
    refuseUnmet(context.actor, await listMissingToOpen(tx, context, buy));
    if (buy.gatheringClosesAt <= context.now())
      throw fieldProblem(
        'deadline-passed',
        'gatheringClosesAt',
        'The day on which the gathering closes is over.',
      );
    return readPage(tx, context, await moveStage(tx, context, { buy, to }));
  });
}

function refuseOtherMoves(buy: BuyRow, to: BuyStage): void {
  const from = buy.stage as BuyStage;
  const allowed = Object.values(NEXT).filter((stage): stage is BuyStage => !!stage && mayMove(from, stage));
  if (!mayMove(from, to))
    throw new Problem('buy-stage-wrong', {
      detail: `A buy that is ${from} can’t become ${to} next.`,
      fields: [
        { field: 'to', message: `From ${from} a buy goes on to ${allowed.join(' or ') || 'nothing'}.` },
      ],
      stage: from,
      allowed,
    });
  if (from !== 'planning' || to !== 'gathering')
    throw fieldProblem(
      'invalid-input',
      'to',
      `A buy becomes ${to} by a command of its own, not by this one.`,
    );
}

export function readStageMoves(context: Context, buyId: string): Promise<StageMoveRow[]> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    await loadBuy(tx, storehouseId, buyId);
    return listStageMoves(tx, storehouseId, buyId);
  });
}

/** Refuses a stage move that lacks something, and lists all of it in words, as far as the actor may see. */
export function refuseUnmet(actor: Actor, missing: readonly Missing[]): void {
  if (missing.length === 0) return;
  const shown = presentMissing(missing, actor);
  throw new Problem('buy-guard-unmet', {
    detail: shown.map(({ words }) => words).join(' '),
    missing: shown,
  });
}

/** What a planned buy lacks before it is opened for pledges; a gathering one goes on meeting it. */
export async function listMissingToOpen(tx: Tx, { actor }: Context, buy: BuyRow): Promise<Missing[]> {
  const lines = await listBuyLines(tx, buy.storehouseId, buy.buyId);
  const quotes = await listQuotesOfBuy(tx, buy.storehouseId, buy.buyId);
  return listMissingForGathering({ buy, lines, quotes }, actor.timeZone);
}

function columnsOf({ gatheringClosesAt, ...facts }: BuyFacts) {
  return { ...facts, gatheringClosesAt: new Date(gatheringClosesAt) };
}

function refuseStale(buy: BuyRow, version: number): void {
  if (buy.version !== version) throw new Problem('stale-version', { newer: presentBuy(buy) });
}

/** Days in the order in which they will come. A closing that has passed may stay as it is, but not be chosen anew. */
function refuseImpossibleDays({ actor, now }: Context, facts: BuyFacts, before?: BuyRow): void {
  const closesAt = new Date(facts.gatheringClosesAt);
  const isKept = before?.gatheringClosesAt.getTime() === closesAt.getTime();
  if (!isKept && closesAt <= now())
    throw fieldProblem('invalid-input', 'gatheringClosesAt', 'The gathering must close in the future.');
  const closesOn = dayInZone(closesAt.getTime(), actor.timeZone);
  if (facts.orderOn < closesOn)
    throw fieldProblem('invalid-input', 'orderOn', `The gathering closes on ${closesOn}, after this day.`);
  if (facts.landingOn !== null && facts.landingOn < facts.orderOn)
    throw fieldProblem('invalid-input', 'landingOn', 'The food can’t land before it is ordered.');
}

async function refuseTakenName(tx: Tx, storehouseId: string, name: string): Promise<void> {
  if (await findBuyByName(tx, storehouseId, name))
    throw fieldProblem('already-there', 'name', `There is a buy called ${name} already.`);
}

/** Every line names a food of this storehouse that is not retired, each food once. */
async function refuseUnusableFoods(
  tx: Tx,
  storehouseId: string,
  lines: readonly LineWish[],
  place: 'lines.' | '' = 'lines.',
): Promise<void> {
  const foodIds = lines.map((line) => line.foodId);
  const foods = new Map(
    (await lockFoodsForShare(tx, storehouseId, foodIds)).map((food) => [food.foodId, food] as const),
  );
  for (const [at, foodId] of foodIds.entries()) {
    const field = place === '' ? 'foodId' : `${place}${at}.foodId`;
    refuseUnusableFood(foods.get(foodId), field);
    if (foodIds.indexOf(foodId) < at)
      throw fieldProblem('already-there', field, 'The buy has a line for this food already.');
  }
}

function refuseUnusableFood(food: FoodRow | undefined, field: string): void {
  if (!food) throw fieldProblem('thing-not-found', field, 'There is no such food.');
  if (food.retiredAt !== null)
    throw namingProblem('invalid-input', {
      field,
      says: (language) => `${namedIn(language, food)} is retired. Put it back on the lists first.`,
    });
}

function lineRows(context: Context, buy: BuyRow, wishes: readonly LineWish[], firstPosition: number) {
  const { storehouseId, buyId } = buy;
  return wishes.map((wish, at) => ({
    ...wish,
    storehouseId,
    buyId,
    buyLineId: newId(context),
    position: firstPosition + at,
  }));
}

async function requireLine(tx: Tx, buy: BuyRow, buyLineId: string): Promise<BuyLineRow> {
  const lines = await listBuyLines(tx, buy.storehouseId, buy.buyId);
  const line = lines.find((candidate) => candidate.buyLineId === buyLineId);
  if (!line) throw new Problem('thing-not-found', { thing: 'line' });
  return line;
}

/** The foods of a buy are settled once someone counts on them. */
async function requireNoPledges(tx: Tx, buy: BuyRow): Promise<void> {
  requireStage(buy, 'planning', 'gathering');
  const pledges = await listPledgesOfBuy(tx, buy.storehouseId, buy.buyId);
  if (pledges.length > 0)
    throw new Problem('in-use', {
      detail: 'Someone has pledged in this buy, so its foods stay as they are.',
    });
}
