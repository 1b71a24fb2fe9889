import type { Context } from '../../platform/context.ts';
import { withTx } from '../../platform/with-tx.ts';
import { type CarrySpread, listCarrySpreads } from './queries.ts';

/** How fair the splits have been over time (job map 3.1, question 9): the most borne beyond a part, and the least. Names nobody. */
export function readFairness(context: Context): Promise<CarrySpread[]> {
  return withTx(context, (tx) => listCarrySpreads(tx, context.actor.storehouseId), { isReadOnly: true });
}
