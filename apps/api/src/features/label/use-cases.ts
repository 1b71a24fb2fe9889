import type { Tx } from '@sheafbook/db';
import { eatFirstAsKnown } from '@sheafbook/keeping';
import { householdOf } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { withKeeping } from '../keeping/use-cases.ts';
import { listToLabel, type ToLabel } from './queries.ts';
import { type LabelQuery, MOST_LABELS } from './schema.ts';

/** What the labels of one's own containers say, in the order of the codes' making. */
export function readLabels(context: Context, { codes }: LabelQuery) {
  const { storehouseId } = context.actor;
  const householdId = householdOf(context);
  return withTx(context, async (tx) => {
    const rows = await listToLabel(tx, storehouseId, { householdId, codes });
    const found = new Set(rows.map(({ container }) => container.containerCode));
    if (codes.some((code) => !found.has(code))) throw new Problem('thing-not-found', { thing: 'container' });
    return withEatFirst(tx, context, rows.slice(0, MOST_LABELS));
  });
}

/** When each is to be eaten first: no finer than a year, as its sheet says it, and none where nobody said how the food keeps. */
export async function withEatFirst(tx: Tx, context: Context, rows: readonly ToLabel[]) {
  const todayOn = todayOf(context);
  const kept = await withKeeping(tx, context.actor.storehouseId, { rows, todayOn });
  return kept.map((row) => ({ ...row, eatFirst: row.keeping && eatFirstAsKnown(todayOn, row.keeping.life) }));
}

export type LabelFacts = Awaited<ReturnType<typeof readLabels>>[number];
