import type { Tx } from '@sheafbook/db';
import { eatFirstAsKnown, inspectByOn, offerAsKnown, readBarrier } from '@sheafbook/keeping';
import { householdOf } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { withKeeping } from '../keeping/use-cases.ts';
import { listMetOnLine } from '../trace/use-cases.ts';
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
    return withLabelFacts(tx, context, rows.slice(0, MOST_LABELS));
  });
}

/**
 * When each is to be eaten first: no finer than a year, as its sheet says it, and none where nobody said how the food keeps;
 * and what ran before it on its line, whosever it was, for somebody who must not eat a trace of it.
 */
export async function withLabelFacts(tx: Tx, context: Context, rows: readonly ToLabel[]) {
  const { storehouseId } = context.actor;
  const todayOn = todayOf(context);
  const kept = await withKeeping(tx, storehouseId, { rows, todayOn });
  const containerIds = rows.map(({ container }) => container.containerId);
  const met = await listMetOnLine(tx, storehouseId, containerIds);
  return kept.map((row) => ({
    ...row,
    eatFirst: row.keeping && eatFirstAsKnown(todayOn, row.keeping.life),
    offerYear: row.keeping && offerAsKnown(todayOn, row.keeping.life),
    inspectByOn: inspectByOn(
      { barrier: readBarrier(row.kind.barrier), packedOn: row.container.packedOn },
      todayOn,
    ),
    metOnLine: met.get(row.container.containerId) ?? [],
  }));
}

export type LabelFacts = Awaited<ReturnType<typeof readLabels>>[number];
