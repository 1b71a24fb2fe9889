import type { Tx } from '@sheafbook/db';
import type { SplitRow } from '@sheafbook/db/tables';
import {
  type FrozenSplit,
  SPLIT_RULES,
  type SplitClaim,
  type SplitInput,
  type SplitRule,
  splitByRule,
  thawSplit,
} from '@sheafbook/sharing';
import { assert } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadBuy } from '../buy/queries.ts';
import { seesAllShares } from './policy.ts';
import {
  findSplitInputs,
  listLastSplits,
  loadFoodOfLine,
  loadSharingOwners,
  type SharingOwners,
} from './queries.ts';
import { loadLine } from './round.ts';

const LAST = 3;

/** What each rule would have given in the last splits, from the inputs that they froze (job map section 16). */
export function simulateRules(context: Context) {
  const { storehouseId } = context.actor;
  return withTx(
    context,
    async (tx) => {
      const owners = await loadSharingOwners(tx, storehouseId);
      const splits = await listLastSplits(tx, storehouseId, LAST);
      const simulated = [];
      for (const split of splits) simulated.push(await simulate(tx, context, { split, owners }));
      return { actor: context.actor, owners, splits: simulated };
    },
    { task: 'split' },
  );
}

export type Simulation = Awaited<ReturnType<typeof simulateRules>>;

async function simulate(
  tx: Tx,
  context: Context,
  { split, owners }: { split: SplitRow; owners: SharingOwners },
) {
  const { storehouseId } = context.actor;
  const { buyId, buyLineId: lineId, splitId } = split;
  const kept = (await findSplitInputs(tx, storehouseId, splitId)) as FrozenSplit | undefined;
  assert(kept, 'a split keeps its inputs');
  const input = thawSplit(kept);
  await noteLooked(tx, context, { input, owners });
  const line = await loadLine(tx, storehouseId, { buyId, lineId });
  return {
    split,
    buy: await loadBuy(tx, storehouseId, buyId),
    food: await loadFoodOfLine(tx, storehouseId, line.foodId),
    landedGrams: input.availableUnits,
    rules: SPLIT_RULES.map((rule) => ({ rule, awards: awardsUnder(rule, input, owners) })),
  };
}

/** Null where the split froze too little for a rule: what households eat and hold is read by need-first alone. */
function awardsUnder(rule: SplitRule, input: SplitInput, { commonId }: SharingOwners) {
  if (!input.claims.every((claim) => holdsEnough(rule, claim))) return null;
  const { awards, surplusUnits } = splitByRule({ ...input, rule });
  const given = awards.map(({ ownerId, claimUnits, awardUnits }) => ({
    ownerId,
    claimGrams: claimUnits,
    awardGrams: awardUnits + (ownerId === commonId ? surplusUnits : 0), // what no claim reaches is everybody's
  }));
  const isClaiming = given.some(({ ownerId }) => ownerId === commonId);
  if (isClaiming || surplusUnits === 0) return given;
  return [...given, { ownerId: commonId, claimGrams: 0, awardGrams: surplusUnits }];
}

const holdsEnough = (rule: SplitRule, claim: SplitClaim): boolean =>
  (rule !== 'need-first' || (claim.dailyNeedUnits !== undefined && claim.stockUnits !== undefined)) &&
  (rule !== 'rotation-of-loss' || claim.carryUnits !== undefined);

/** Whoever sees what others would have had is written down for each of them. */
function noteLooked(
  tx: Tx,
  context: Context,
  { input, owners }: { input: SplitInput; owners: SharingOwners },
): Promise<void> {
  const households = input.claims.flatMap(({ ownerId }) => (ownerId === owners.commonId ? [] : [ownerId]));
  const hasNeeds = input.claims.some(({ dailyNeedUnits }) => dailyNeedUnits !== undefined);
  return notePrivateRead(tx, context, {
    householdIds: seesAllShares(context.actor) ? households : [],
    what: hasNeeds ? 'days of stock, as need-first read it' : 'shares',
    purpose: 'what each rule would have given',
  });
}
