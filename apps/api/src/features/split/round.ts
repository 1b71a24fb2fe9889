import type { Tx } from '@sheafbook/db';
import type { BuyLineRow, BuyRow, FoodRow, SplitRow } from '@sheafbook/db/tables';
import type { SplitClaim, SplitInput, SplitRule } from '@sheafbook/sharing';
import type { Context } from '../../platform/context.ts';
import { Problem } from '../../platform/problem.ts';
import { type BagToSplit, listBagsToSplit } from '../bag/queries.ts';
import { listBuyLines } from '../buy/queries.ts';
import { refuseUnmet } from '../buy/use-cases.ts';
import { loadRules } from '../storehouse/queries.ts';
import { type EarlierAward, openClaims, type Promised, stepOf } from './claims.ts';
import { readNeeds } from './needs.ts';
import {
  listEarlierAwards,
  listPromised,
  listRounds,
  loadFoodOfLine,
  loadSharingOwners,
  type SharingOwners,
  sumCarries,
} from './queries.ts';

/** Everything a round of a split divides, and among whom. */
export type SplitRound = {
  readonly line: BuyLineRow;
  readonly food: FoodRow;
  readonly owners: SharingOwners;
  readonly roundNo: number;
  /** The rule of the first round, which every later one keeps; else the line's own, else the buy's frozen one. */
  readonly defaultRule: SplitRule;
  readonly bags: readonly BagToSplit[];
  readonly availableGrams: number;
  readonly promised: readonly Promised[];
  readonly earlier: readonly EarlierAward[];
  readonly carries: ReadonlyMap<string, number>;
};

/** Gathers what is there of a line to divide. Refuses when nothing is, or a bag has not been weighed. */
export async function prepareRound(
  tx: Tx,
  context: Context,
  { buy, lineId }: { buy: BuyRow; lineId: string },
): Promise<SplitRound> {
  const { storehouseId } = context.actor;
  const line = await loadLine(tx, storehouseId, { buyId: buy.buyId, lineId });
  const owners = await loadSharingOwners(tx, storehouseId);
  const rounds = await listRounds(tx, storehouseId, lineId);
  const bags = await listBagsToSplit(tx, storehouseId, lineId);
  refuseNothingToSplit(context, bags, rounds);
  const food = await loadFoodOfLine(tx, storehouseId, line.foodId);
  const rules = await loadRules(tx, storehouseId, buy.rulesVersion ?? undefined);
  return {
    line,
    food,
    owners,
    bags,
    roundNo: (rounds.at(-1)?.roundNo ?? 0) + 1,
    defaultRule: (rounds[0]?.rule ?? line.splitRule ?? rules.splitRule) as SplitRule,
    availableGrams: bags.reduce((sum, bag) => sum + bag.unassignedGrams, 0),
    promised: await listPromised(tx, storehouseId, { buyId: buy.buyId, lineId, owners }),
    earlier: await listEarlierAwards(tx, storehouseId, lineId),
    carries: await sumCarries(tx, storehouseId, food.foodGroup),
  };
}

export async function loadLine(
  tx: Tx,
  storehouseId: string,
  { buyId, lineId }: { buyId: string; lineId: string },
): Promise<BuyLineRow> {
  const lines = await listBuyLines(tx, storehouseId, buyId);
  const line = lines.find((candidate) => candidate.buyLineId === lineId);
  if (!line) throw new Problem('thing-not-found', { thing: 'line' });
  return line;
}

function refuseNothingToSplit(
  { actor }: Context,
  bags: readonly BagToSplit[],
  rounds: readonly SplitRow[],
): void {
  if (bags.length === 0 && rounds.length > 0)
    throw new Problem('already-split', { splitId: rounds.at(-1)?.splitId });
  if (bags.length === 0)
    throw new Problem('not-enough-left', { detail: 'Nothing of this food is there to split.' });
  const ids = bags.filter((bag) => !bag.isWeighedOrExempted).map((bag) => bag.bagId);
  refuseUnmet(actor, ids.length > 0 ? [{ code: 'bag-not-weighed', count: ids.length, ids }] : []);
}

/** The claims of a round as one rule reads them: need-first alone looks at what households eat and hold. */
export async function claimsFor(
  tx: Tx,
  context: Context,
  { round, rule, purpose }: { round: SplitRound; rule: SplitRule; purpose: string },
): Promise<SplitClaim[]> {
  const { food, owners, promised, earlier, carries } = round;
  const householdIds = promised
    .map(({ ownerId }) => ownerId)
    .filter((ownerId) => ownerId !== owners.commonId);
  const needs =
    rule === 'need-first' ? await readNeeds(tx, context, { food, ownerIds: householdIds, purpose }) : null;
  return openClaims(promised, earlier, { needs, carries });
}

/** The question of a round, as `splitByRule` takes it. */
export const inputOf = (round: SplitRound, rule: SplitRule, claims: readonly SplitClaim[]): SplitInput => ({
  rule,
  availableUnits: round.availableGrams,
  stepUnits: stepOf(
    round.promised,
    claims,
    round.bags.map((bag) => bag.unassignedGrams),
  ),
  claims,
});
