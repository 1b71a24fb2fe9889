import type { Tx } from '@sheafbook/db';
import type { BuyLineRow, BuyRow, PledgeRow } from '@sheafbook/db/tables';
import type { UnitPrice } from '@sheafbook/sharing';
import { countFromGrams } from '@sheafbook/units';
import { householdOf } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { pageOf } from '../../platform/paging.ts';
import { noteHelpersRead, notePrivateRead } from '../../platform/private-read.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listBuyLines, loadBuy, lockBuyForShare, requireStage } from '../buy/queries.ts';
import { loadPresentHousehold } from '../household/queries.ts';
import { keepKeying } from '../keying/use-cases.ts';
import { isStanding, listQuotesOfBuy } from '../quote/queries.ts';
import { presentOwnPledge } from './present.ts';
import {
  deleteCeiling,
  findCeiling,
  findPledgeOfLine,
  insertCeiling,
  insertPledge,
  listHouseholdPledges,
  listPledgesOfBuy,
  lockPledge,
  updatePledge,
} from './queries.ts';
import type { HouseholdPledgeQuery, PledgeEdit, PledgeTerms, PledgeWish } from './schema.ts';
import { refuseDisorder, refuseOffStep } from './steps.ts';
import { sumPledges } from './sums.ts';
import { bagSizeOfPledge } from './whole-bags.ts';

export { maySeePledges } from './policy.ts';
export { type PledgedSum, sumPledges } from './sums.ts';

type Named = { readonly buyId: string; readonly pledgeId: string };
export type OwnPledge = { readonly pledge: PledgeRow; readonly ceiling: UnitPrice | null };

/** The own household's pledges whole, and of all pledges what the actor may see: sums by line. */
export function readPledges(context: Context, buyId: string) {
  const { actor } = context;
  return withTx(context, async (tx) => {
    await loadBuy(tx, actor.storehouseId, buyId);
    const lines = await listBuyLines(tx, actor.storehouseId, buyId);
    const all = await listPledgesOfBuy(tx, actor.storehouseId, buyId, { withCeilings: true });
    const own = all.filter((pledge) => pledge.householdId === actor.householdId);
    await noteHelpersRead(tx, context, 'pledges');
    const sums = sumPledges(
      lines.map((line) => line.buyLineId),
      all,
      actor,
    );
    return { own, lines: sums };
  });
}

/** What each household pledged, for the duties that may see it. Each household finds the look in its own record. */
export function readHouseholdPledges(context: Context, buyId: string, query: HouseholdPledgeQuery) {
  const { storehouseId } = context.actor;
  const { after, limit } = query;
  return withTx(context, async (tx) => {
    const buy = await loadBuy(tx, storehouseId, buyId);
    const rows = await listHouseholdPledges(tx, storehouseId, { buyId, after, limit });
    const page = pageOf(rows, limit, (pledge) => pledge.pledgeId);
    await notePrivateRead(tx, context, {
      householdIds: page.rows.map((pledge) => pledge.householdId),
      what: 'pledges',
      purpose: `pledges of the buy ${buy.name}`,
    });
    return page;
  });
}

/**
 * Pledges mass in a buy for the actor's household. Share-locks the buy first, so that it can't be fixed between check
 * and insert (ledger-notes 6.16). After the deadline nothing new comes in.
 */
export function pledgeMass(context: Context, buyId: string, wish: PledgeWish): Promise<OwnPledge> {
  const { actor } = context;
  const { storehouseId } = actor;
  const householdId = householdOf(context);
  return withTx(context, async (tx) => {
    const buy = await lockBuyForShare(tx, storehouseId, buyId);
    const lines = await listBuyLines(tx, storehouseId, buyId);
    const line = requireLine(lines, wish.buyLineId, 'buyLineId');
    refuseSubstitute(lines, line, wish.substituteLineId);
    requireStage(buy, 'gathering');
    if (isPastDeadline(context, buy)) throw deadlinePassed(buy, 'wantedGrams');
    if (await findPledgeOfLine(tx, storehouseId, { buyLineId: line.buyLineId, householdId }))
      throw fieldProblem(
        'already-pledged',
        'buyLineId',
        'The household has pledged for this food already. Change that pledge instead.',
      );
    await refuseUnfit(tx, context, line, wish);
    const now = context.now();
    const pledge = await insertPledge(tx, {
      ...columnsOf(wish),
      ...enteredBy(context),
      storehouseId,
      pledgeId: newId(context),
      buyId,
      buyLineId: line.buyLineId,
      householdId,
      pledgedAt: now,
      rankedAt: now,
    });
    // Only now: the insert waited for whoever was letting this household leave.
    await loadPresentHousehold(tx, storehouseId, householdId);
    await keepKeying(tx, context, {
      what: 'pledge',
      subjectIds: [pledge.pledgeId],
      buy,
      householdId,
      pen: wish,
    });
    return { pledge, ceiling: await keepCeiling(tx, pledge, ceilingOf(wish)) };
  });
}

/**
 * Changes a pledge until the buy is fixed. It keeps its rank unless its wanted or its most rises (job map 18). After
 * the deadline it can only shrink: what others counted on at the close may not grow behind their backs.
 */
export function changePledge(context: Context, named: Named, edit: PledgeEdit): Promise<OwnPledge> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const buy = await lockBuyForShare(tx, storehouseId, named.buyId);
    const pledge = await lockOwnPledge(tx, context, named);
    const lines = await listBuyLines(tx, storehouseId, named.buyId);
    const line = requireLine(lines, pledge.buyLineId, 'buyLineId');
    refuseSubstitute(lines, line, edit.substituteLineId);
    requireStage(buy, 'gathering');
    await refuseStale(tx, pledge, edit.version);
    const grown = isPastDeadline(context, buy) ? findGrowth(pledge, edit) : undefined;
    if (grown) throw deadlinePassed(buy, grown);
    await refuseUnfit(tx, context, line, edit);
    const isRaised = edit.wantedGrams > pledge.wantedGrams || edit.mostGrams > pledge.mostGrams;
    const changed = await updatePledge(tx, pledge, {
      ...columnsOf(edit),
      ...enteredBy(context),
      ...(isRaised ? { rankedAt: context.now() } : {}),
    });
    const { householdId, pledgeId } = changed;
    await keepKeying(tx, context, { what: 'pledge', subjectIds: [pledgeId], buy, householdId, pen: edit });
    return { pledge: changed, ceiling: await keepCeiling(tx, changed, ceilingOf(edit)) };
  });
}

/** Withdraws a pledge, free of charge while the buy gathers, after the deadline too (job map 4.7). */
export function withdrawPledge(context: Context, named: Named, version: number): Promise<OwnPledge> {
  return withTx(context, async (tx) => {
    const buy = await lockBuyForShare(tx, context.actor.storehouseId, named.buyId);
    const pledge = await lockOwnPledge(tx, context, named);
    requireStage(buy, 'gathering');
    await refuseStale(tx, pledge, version);
    const withdrawn = await updatePledge(tx, pledge, { withdrawnAt: context.now(), ...enteredBy(context) });
    return { pledge: withdrawn, ceiling: await findCeiling(tx, withdrawn) };
  });
}

/** How many standing whole-bag pledges of a line are no whole number of bags of these sizes. */
export async function countPledgesOffBagSize(
  tx: Tx,
  line: BuyLineRow,
  bagSizes: readonly number[],
): Promise<number> {
  const pledges = await listPledgesOfBuy(tx, line.storehouseId, line.buyId);
  const unitsOf = (grams: number) => countFromGrams(grams, unitOf(line)) ?? 0;
  return pledges.filter(
    (pledge) =>
      pledge.wholeBags &&
      pledge.buyLineId === line.buyLineId &&
      bagSizeOfPledge(bagSizes, {
        least: unitsOf(pledge.leastGrams),
        wanted: unitsOf(pledge.wantedGrams),
        most: unitsOf(pledge.mostGrams),
      }) === undefined,
  ).length;
}

const unitOf = (line: BuyLineRow) => (line.massUnit === 'kg' ? 'kg' : 'lb');

async function lockOwnPledge(tx: Tx, { actor }: Context, named: Named): Promise<PledgeRow> {
  const pledge = await lockPledge(tx, actor.storehouseId, named);
  if (pledge.householdId !== actor.householdId) throw new Problem('not-your-household');
  if (pledge.withdrawnAt !== null)
    throw new Problem('thing-not-found', { detail: 'This pledge was withdrawn.', thing: 'pledge' });
  return pledge;
}

async function refuseStale(tx: Tx, pledge: PledgeRow, version: number): Promise<void> {
  if (pledge.version === version) return;
  const newer = presentOwnPledge({ pledge, ceiling: await findCeiling(tx, pledge) });
  throw new Problem('stale-version', { newer });
}

function requireLine(lines: readonly BuyLineRow[], buyLineId: string, field: string): BuyLineRow {
  const line = lines.find((candidate) => candidate.buyLineId === buyLineId);
  if (!line) throw fieldProblem('thing-not-found', field, 'There is no such line in this buy.');
  return line;
}

function refuseSubstitute(lines: readonly BuyLineRow[], line: BuyLineRow, substituteId: string | null): void {
  if (substituteId === null) return;
  requireLine(lines, substituteId, 'substituteLineId');
  if (substituteId === line.buyLineId)
    throw fieldProblem('invalid-input', 'substituteLineId', 'A substitute is another food of the buy.');
}

const isPastDeadline = ({ now }: Context, buy: BuyRow): boolean => now() >= buy.gatheringClosesAt;

function deadlinePassed(buy: BuyRow, field: string): Problem {
  const at = buy.gatheringClosesAt.toISOString();
  return new Problem('deadline-passed', {
    detail: `The gathering closed at ${at}. A pledge can be lowered or withdrawn until the buy is fixed.`,
    fields: [{ field, message: 'This can’t grow any more.' }],
    gatheringClosesAt: at,
  });
}

function findGrowth(pledge: PledgeRow, edit: PledgeTerms): string | undefined {
  const masses = ['leastGrams', 'wantedGrams', 'mostGrams'] as const;
  const isNewSubstitute = edit.substituteLineId !== null && edit.substituteLineId !== pledge.substituteLineId;
  return (
    masses.find((field) => edit[field] > pledge[field]) ?? (isNewSubstitute ? 'substituteLineId' : undefined)
  );
}

async function refuseUnfit(tx: Tx, context: Context, line: BuyLineRow, terms: PledgeTerms): Promise<void> {
  refuseDisorder(terms);
  refuseOffStep(terms, line, terms.wholeBags ? await listBagSizes(tx, context, line) : null);
}

/** Bag sizes of the quote chosen for the line; without one, those of every quote that stands. */
async function listBagSizes(tx: Tx, context: Context, line: BuyLineRow): Promise<number[]> {
  const todayOn = todayOf(context);
  const quotes = await listQuotesOfBuy(tx, line.storehouseId, line.buyId);
  const sizes = quotes
    .filter(({ quote }) => (line.quoteId ? quote.quoteId === line.quoteId : isStanding(quote, todayOn)))
    .flatMap(({ offers }) => offers)
    .filter((offer) => offer.buyLineId === line.buyLineId)
    .map((offer) => offer.bagSize);
  if (sizes.length === 0)
    throw fieldProblem(
      'quote-not-valid',
      'wholeBags',
      'No quote says how large a bag of this food is. Pledge a share of a bag, or wait for a quote.',
    );
  return [...new Set(sizes)].toSorted((a, b) => a - b);
}

function columnsOf(terms: PledgeTerms) {
  const { leastGrams, wantedGrams, mostGrams, wholeBags, substituteLineId, asTyped } = terms;
  return { leastGrams, wantedGrams, mostGrams, wholeBags, substituteLineId, asTyped };
}

const enteredBy = ({ actor }: Context) => ({ enteredBy: actor.personId, isEnteredFor: actor.isHelping });

function ceilingOf({ ceilingMinorUnits, ceilingPerGrams }: PledgeTerms): UnitPrice | null {
  if (ceilingMinorUnits === undefined || ceilingPerGrams === undefined) return null;
  return { minorUnits: ceilingMinorUnits, grams: ceilingPerGrams };
}

async function keepCeiling(tx: Tx, pledge: PledgeRow, ceiling: UnitPrice | null): Promise<UnitPrice | null> {
  await deleteCeiling(tx, pledge);
  if (ceiling) await insertCeiling(tx, pledge, ceiling);
  return ceiling;
}
