import type { Tx } from '@sheafbook/db';
import type { AllotmentRow, BuyRow, RulesRow } from '@sheafbook/db/tables';
import type { Missing } from '@sheafbook/ledger';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { noteHelpersRead, notePrivateRead } from '../../platform/private-read.ts';
import { Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadBuy, lockBuyForUpdate, moveStage, requireStage } from '../buy/queries.ts';
import { presentMissing, refuseUnmet } from '../buy/use-cases.ts';
import { askDeposits, returnDeposits } from '../deposit/use-cases.ts';
import { loadHousehold } from '../household/queries.ts';
import { loadHouseOwners, loadRules } from '../storehouse/queries.ts';
import { type FillEstimate, solveEstimate, toEstimate } from './estimate.ts';
import { allotmentRows, fixedBagRows } from './fixed-rows.ts';
import { gatherInputs } from './gather-inputs.ts';
import { type Dropped, type FixingWarning, listDropped, listMissing, listWarnings } from './guards.ts';
import { FILL_METHOD_VERSION } from './inputs.ts';
import { overrideFill } from './override.ts';
import { maySeeAllotments } from './policy.ts';
import { type ChangedPledge, outcomeOf, type PledgeOutcome, withAllAt, withPledge } from './preview.ts';
import {
  deleteAllotments,
  deleteFixedBags,
  insertAllotments,
  insertFill,
  insertFillInputs,
  insertFixedBags,
  listAllotments,
  loadFill,
  loadFillInputs,
} from './queries.ts';
import type { Fixing, PledgePreview } from './schema.ts';
import { loadFillSolver } from './solver.ts';

export { type FillEstimate, solveEstimate, toEstimate } from './estimate.ts';
export { findTerms } from './guards.ts';
export { mayFix } from './policy.ts';
// An audit fills again what was frozen.
export { type Refilled, refill } from './rerun.ts';
export { countUnitsWithin } from './to-units.ts';
export { loadFillSolver };

export type FillView = FillEstimate & {
  readonly buy: BuyRow;
  readonly rules: RulesRow;
  readonly isFixed: boolean;
};

/** The fill of a buy: of its pledges as they stand while it gathers, and the one it was fixed with after that. */
export async function readFill(context: Context, buyId: string): Promise<FillView> {
  return withTx(
    context,
    async (tx) => {
      const view = await estimateFill(tx, context, buyId);
      if (maySeeAllotments(context.actor)) await noteSeen(tx, context, view);
      await noteHelpersRead(tx, context, 'pledges');
      return view;
    },
    { task: 'fill' },
  );
}

function noteSeen(tx: Tx, context: Context, { inputs }: FillEstimate): Promise<void> {
  const householdIds = inputs.pledges.map((pledge) => pledge.householdId);
  return notePrivateRead(tx, context, { householdIds, what: 'pledges', purpose: 'fill of a buy' });
}

/**
 * Fills a buy as it stands, or as it would stand with one pledge made or changed, and says what each household would
 * pay. Nothing is stored. The solver reads every ceiling, and no person does, so the caller's transaction has the task
 * 'fill' and the answer holds none.
 */
export async function estimateFill(
  tx: Tx,
  context: Context,
  buyId: string,
  changedPledge?: ChangedPledge,
): Promise<FillView> {
  const { storehouseId } = context.actor;
  const solver = await loadFillSolver();
  const buy = await loadBuy(tx, storehouseId, buyId);
  const rules = await loadRules(tx, storehouseId, buy.rulesVersion ?? undefined);
  if (buy.fillId !== null && changedPledge === undefined) {
    const inputs = await loadFillInputs(tx, storehouseId, buy.fillId);
    const { answer } = await loadFill(tx, storehouseId, buy.fillId);
    return { ...toEstimate(inputs, answer, rules), buy, rules, isFixed: true };
  }
  const standing = await gatherInputs(tx, storehouseId, { buy, rules, todayOn: todayOf(context) });
  const nowAt = context.now().toISOString();
  const inputs = changedPledge ? withPledge(standing, changedPledge, nowAt) : standing;
  return { ...solveEstimate(inputs, rules, solver), buy, rules, isFixed: false };
}

export type PledgePreviewAnswer = {
  readonly buy: BuyRow;
  readonly now: FillView;
  readonly householdId: string;
  readonly lineId: string;
  readonly outcomes: { readonly [at in 'atFill' | 'allAtLeast' | 'allAtMost']: PledgeOutcome };
};

/** What a pledge would cost the household: at today's fill with it, and if everybody took their least or their most. */
export async function previewPledge(
  context: Context,
  buyId: string,
  wish: PledgePreview,
): Promise<PledgePreviewAnswer> {
  const { storehouseId, householdId } = context.actor;
  if (householdId === null) throw new Problem('household-needed');
  return withTx(
    context,
    async (tx) => {
      const solver = await loadFillSolver();
      const buy = await loadBuy(tx, storehouseId, buyId);
      requireStage(buy, 'planning', 'gathering');
      const { seat } = await loadHousehold(tx, storehouseId, householdId);
      const now = await estimateFill(tx, context, buyId, toChanged(wish, { householdId, seat }));
      refuseUnknownLines(now, wish);
      await noteHelpersRead(tx, context, 'pledges');
      const at = { householdId, lineId: wish.buyLineId };
      const outcomeAt = (amount: 'leastGrams' | 'mostGrams') =>
        outcomeOf(solveEstimate(withAllAt(now.inputs, amount), now.rules, solver), at);
      const outcomes = {
        atFill: outcomeOf(now, at),
        allAtLeast: outcomeAt('leastGrams'),
        allAtMost: outcomeAt('mostGrams'),
      };
      return { buy, now, householdId, lineId: wish.buyLineId, outcomes };
    },
    { task: 'fill' },
  );
}

export type OutlookAnswer = {
  readonly buy: BuyRow;
  readonly atFill: FillEstimate;
  readonly allAtLeast: FillEstimate;
  readonly allAtMost: FillEstimate;
};

/**
 * What the whole buy would cost now, and if everybody took their least or their most (job map 3.1, question 6). Nothing
 * is stored; the answer is sums of a whole buy, for those who see every pledge.
 */
export async function readOutlook(context: Context, buyId: string): Promise<OutlookAnswer> {
  return withTx(
    context,
    async (tx) => {
      const solver = await loadFillSolver();
      const now = await estimateFill(tx, context, buyId);
      requireStage(now.buy, 'planning', 'gathering');
      const at = (amount: 'leastGrams' | 'mostGrams') =>
        solveEstimate(withAllAt(now.inputs, amount), now.rules, solver);
      return { buy: now.buy, atFill: now, allAtLeast: at('leastGrams'), allAtMost: at('mostGrams') };
    },
    { task: 'fill' },
  );
}

function toChanged(wish: PledgePreview, by: { householdId: string; seat: number }): ChangedPledge {
  const { buyLineId, leastGrams, wantedGrams, mostGrams, wholeBags, substituteLineId } = wish;
  const { ceilingMinorUnits, ceilingPerGrams } = wish;
  if (leastGrams > wantedGrams || wantedGrams > mostGrams) throw new Problem('pledge-not-in-order');
  const hasCeiling = ceilingMinorUnits !== undefined && ceilingPerGrams !== undefined;
  const ceiling = hasCeiling ? { minorUnits: ceilingMinorUnits, grams: ceilingPerGrams } : null;
  const masses = { leastGrams, wantedGrams, mostGrams, wholeBags };
  return { ...by, ...masses, lineId: buyLineId, substituteLineId, ceiling };
}

function refuseUnknownLines({ inputs }: FillEstimate, wish: PledgePreview): void {
  const lineIds = [wish.buyLineId, ...(wish.substituteLineId === null ? [] : [wish.substituteLineId])];
  if (lineIds.some((lineId) => !inputs.lines.some((line) => line.lineId === lineId)))
    throw new Problem('thing-not-found', { thing: 'line' });
}

export type FixingView = FillView & {
  readonly missing: readonly Missing[];
  /** The same, in words and as far as the actor may see it. */
  readonly shown: ReturnType<typeof presentMissing>;
  readonly dropped: readonly Dropped[];
  readonly warnings: readonly FixingWarning[];
};

/** What fixing would do now, whom it would leave out and why, and what is missing for it. Changes nothing. */
export async function previewFixing(context: Context, buyId: string): Promise<FixingView> {
  return withTx(
    context,
    async (tx) => {
      const view = await estimateFill(tx, context, buyId);
      requireStage(view.buy, 'gathering');
      await noteSeen(tx, context, view);
      return toFixingView(view, context);
    },
    { task: 'fill' },
  );
}

/** What keeps a gathering buy from being fixed with the fill of its pledges as they stand. The task is 'fill'. */
export async function listMissingToFix(tx: Tx, context: Context, { buyId }: BuyRow): Promise<Missing[]> {
  const { inputs, fill } = await estimateFill(tx, context, buyId);
  return listMissing(inputs, fill, todayOf(context));
}

function toFixingView(view: FillView, context: Context): FixingView {
  const { inputs, fill, tips, buy } = view;
  const missing = listMissing(inputs, fill, todayOf(context));
  return {
    ...view,
    missing,
    shown: presentMissing(missing, context.actor),
    dropped: listDropped(fill),
    warnings: listWarnings({ inputs, fill, tips, orderOn: buy.orderOn }),
  };
}

/**
 * Fixes a buy: fills it again on the pledges under lock, freezes inputs, answer and rules, promises each household its
 * grams, asks for deposits, and returns a deposit that is still held for somebody who now gets nothing.
 */
export async function fixBuy(context: Context, buyId: string, wish: Fixing): Promise<FixingView> {
  const { storehouseId } = context.actor;
  return withTx(
    context,
    async (tx) => {
      const locked = await lockBuyForUpdate(tx, storehouseId, buyId);
      requireStage(locked, 'gathering');
      const computed = await estimateFill(tx, context, buyId);
      const view = toFixingView(withOverride(computed, wish), context);
      refuseUnmet(context.actor, view.missing);
      const fillId = await storeFill(tx, context, { view, overrideReason: wish.overrideReason ?? '' });
      const householdIds = view.inputs.pledges
        .filter((pledge) => pledge.ceiling !== null)
        .map((pledge) => pledge.householdId);
      await notePrivateRead(tx, context, { householdIds, what: 'ceilings', purpose: 'fixing a buy' });
      await askDeposits(tx, context, { buy: view.buy, rules: view.rules, estimates: listEstimates(view) });
      await returnDeposits(tx, context, { buyId, except: listEstimates(view).map((row) => row.householdId) });
      const set = { rulesVersion: view.rules.rulesVersion, fillId };
      const buy = await moveStage(tx, context, { buy: locked, to: 'fixed', set });
      return { ...view, buy, isFixed: true };
    },
    { task: 'fill' },
  );
}

function withOverride(view: FillView, { override }: Fixing): FillView {
  if (!override) return view;
  return { ...view, ...toEstimate(view.inputs, overrideFill(view.inputs, view.fill, override), view.rules) };
}

/** Keeps a fill with its inputs, and replaces the bags and promises of the buy by its own. Gives the fill's id. */
export async function storeFill(
  tx: Tx,
  context: Context,
  { view, overrideReason }: { view: FillEstimate & { readonly buy: BuyRow }; overrideReason: string },
): Promise<string> {
  const { storehouseId, personId: madeBy } = context.actor;
  const { buyId } = view.buy;
  const fillId = newId(context);
  await insertFill(tx, {
    storehouseId,
    fillId,
    buyId,
    answer: view.fill,
    methodVersion: FILL_METHOD_VERSION,
    overrideReason,
    madeBy,
    madeAt: context.now(),
  });
  await insertFillInputs(tx, { storehouseId, fillId, inputs: view.inputs });
  await deleteFixedBags(tx, storehouseId, buyId);
  await deleteAllotments(tx, storehouseId, buyId);
  await insertFixedBags(tx, fixedBagRows(view.fill, { storehouseId, buyId }));
  const { commonOwnerId } = view.inputs;
  await insertAllotments(tx, allotmentRows(view.fill, { storehouseId, buyId, commonOwnerId }));
  return fillId;
}

/** The households that are promised something, with what it is reckoned to cost them. */
export function listEstimates({ inputs, estimates }: FillEstimate) {
  return estimates.owners
    .filter(({ ownerId }) => ownerId !== inputs.commonOwnerId)
    .map(({ ownerId, minorUnits }) => ({ householdId: ownerId, estimateMinorUnits: minorUnits }));
}

export type AllotmentsView = { readonly rows: readonly AllotmentRow[]; readonly commonOwnerId: string };

/** What is promised now: everybody's to the duties that need it, to others their own and the common stock's. */
export async function readAllotments(context: Context, buyId: string): Promise<AllotmentsView> {
  const { storehouseId, householdId } = context.actor;
  return withTx(context, async (tx) => {
    await loadBuy(tx, storehouseId, buyId);
    const { commonId: commonOwnerId } = await loadHouseOwners(tx, storehouseId);
    const rows = await listAllotments(tx, storehouseId, buyId);
    const open = new Set([householdId, commonOwnerId]);
    await noteHelpersRead(tx, context, 'pledges');
    if (!maySeeAllotments(context.actor))
      return { rows: rows.filter((row) => open.has(row.ownerId)), commonOwnerId };
    const householdIds = rows.map((row) => row.ownerId).filter((ownerId) => ownerId !== commonOwnerId);
    await notePrivateRead(tx, context, { householdIds, what: 'allotments', purpose: 'promises of a buy' });
    return { rows, commonOwnerId };
  });
}
