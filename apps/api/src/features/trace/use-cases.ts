import type { Context } from '../../platform/context.ts';
import { withTx } from '../../platform/with-tx.ts';
import { drawCodes } from './draw.ts';
import { listBagCodes, listTracedBags, listTracedSteps } from './queries.ts';
import { DRAWN } from './schema.ts';

/** Ten bags drawn by a seed, each with its way from the supplier to whoever got it, every gram adding up. */
export function drawTraces(context: Context, seed: string) {
  const { storehouseId } = context.actor;
  return withTx(
    context,
    async (tx) => {
      const codes = await listBagCodes(tx, storehouseId);
      const drawn = drawCodes(seed, codes, DRAWN);
      const bags = await listTracedBags(tx, storehouseId, drawn);
      const bagIds = bags.map(({ bagId }) => bagId);
      const steps = bagIds.length === 0 ? [] : await listTracedSteps(tx, storehouseId, bagIds);
      const traces = drawn.flatMap((code) => bags.filter(({ bagCode }) => bagCode === code));
      return {
        seed,
        candidates: codes.length,
        traces: traces.map((bag) => ({ bag, steps: steps.filter(({ bagId }) => bagId === bag.bagId) })),
      };
    },
    { isReadOnly: true },
  );
}
