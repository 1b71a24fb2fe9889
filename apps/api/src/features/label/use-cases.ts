import type { Tx } from '@sheafbook/db';
import { eatFirstAsKnown } from '@sheafbook/keeping';
import { householdOf } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadKept } from '../keeping/use-cases.ts';
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
    const shown = rows.slice(0, MOST_LABELS);
    const eatFirstOf = await readEatFirst(tx, context, shown);
    return shown.map((row) => ({ ...row, eatFirst: eatFirstOf.get(row.container.containerId) ?? null }));
  });
}

export type LabelFacts = Awaited<ReturnType<typeof readLabels>>[number];

/** No finer than a year, as its sheet says it; a food that nobody said how it keeps has none. */
async function readEatFirst(tx: Tx, context: Context, rows: readonly ToLabel[]) {
  const today = todayOf(context);
  const containerIds = rows.map(({ container }) => container.containerId);
  const kept = await loadKept(tx, context.actor.storehouseId, { containerIds }, today);
  return new Map(
    kept.map(({ container, keeping }) => [
      container.containerId,
      keeping && eatFirstAsKnown(today, keeping.life),
    ]),
  );
}
