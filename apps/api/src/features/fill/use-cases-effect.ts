import { type EffectLine, pledgeEffect, type UnitPrice } from '@sheafbook/sharing';
import { assert } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { noteHelpersRead } from '../../platform/private-read.ts';
import { Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadBuy, requireStage } from '../buy/queries.ts';
import { loadRules } from '../storehouse/queries.ts';
import type { BuyFill } from './answer.ts';
import { solveEstimate } from './estimate.ts';
import { loadFill, loadFillInputs } from './queries.ts';
import { loadFillSolver } from './solver.ts';

export type PledgeEffectAnswer = {
  readonly buyId: string;
  /** Null when the household had no pledge when the buy was fixed. */
  readonly effect:
    | (Omit<ReturnType<typeof pledgeEffect>, 'lines'> & {
        readonly lines: readonly (ReturnType<typeof pledgeEffect>['lines'][number] & {
          readonly landedWithIt: UnitPrice | null;
          readonly landedWithout: UnitPrice | null;
        })[];
      })
    | null;
};

/**
 * What the own household's pledges did for all others (job map 16, number 15): the bags of a fixed buy are filled again
 * from the frozen inputs without them, and the two landed prices are held against each other. Nothing is stored.
 */
export async function readPledgeEffect(context: Context, buyId: string): Promise<PledgeEffectAnswer> {
  const { storehouseId, householdId } = context.actor;
  if (householdId === null) throw new Problem('household-needed');
  return withTx(
    context,
    async (tx) => {
      const solver = await loadFillSolver();
      const buy = await loadBuy(tx, storehouseId, buyId);
      requireStage(buy, 'fixed', 'ordered', 'landed', 'shared-out', 'closed');
      const { fillId, rulesVersion } = buy;
      assert(fillId !== null && rulesVersion !== null, 'a fixed buy names its fill and its rules');
      const rules = await loadRules(tx, storehouseId, rulesVersion);
      const inputs = await loadFillInputs(tx, storehouseId, fillId);
      const { answer: withIt } = await loadFill(tx, storehouseId, fillId);
      await noteHelpersRead(tx, context, 'pledges');
      const others = inputs.pledges.filter((pledge) => pledge.householdId !== householdId);
      if (others.length === inputs.pledges.length) return { buyId, effect: null };
      const without = solveEstimate({ ...inputs, pledges: others }, rules, solver).fill;
      return { buyId, effect: effectOf(householdId, withIt, without) };
    },
    { task: 'fill' },
  );
}

function effectOf(householdId: string, withIt: BuyFill, without: BuyFill) {
  const lines = withIt.lines
    .filter((line) => line.pledges.some((pledge) => pledge.householdId === householdId && pledge.grams > 0))
    .map(
      (line): EffectLine => ({
        lineId: line.lineId,
        othersGrams: line.pledges
          .filter((pledge) => pledge.householdId !== householdId)
          .reduce((sum, pledge) => sum + pledge.grams, 0),
        withIt: pricesOf(withIt, line.lineId),
        without: pricesOf(without, line.lineId),
      }),
    );
  const effect = pledgeEffect(lines);
  return {
    ...effect,
    lines: effect.lines.map((row, at) => ({
      ...row,
      landedWithIt: lines[at]?.withIt?.landed ?? null,
      landedWithout: lines[at]?.without?.landed ?? null,
    })),
  };
}

function pricesOf({ lines, baskets }: BuyFill, lineId: string): EffectLine['withIt'] {
  const line = lines.find((known) => known.lineId === lineId);
  const basket = baskets.find((known) => known.quoteId === line?.quoteId);
  if (!line?.landedPrice || !basket || basket.grams === 0) return null;
  const freight = { minorUnits: basket.freightMinorUnits, grams: basket.grams };
  return { landed: line.landedPrice, freight };
}
