import type { Tx } from '@sheafbook/db';
import type { Outcome } from '@sheafbook/keeping';
import { commonStockCounted, massAccount, moveGrams } from '@sheafbook/ledger';
import { assert, sumOf } from '@sheafbook/units';
import { Problem } from '../../platform/problem.ts';
import { loadWorth } from '../stock-count/use-cases.ts';
import { loadOutsideVessels } from '../storehouse/queries.ts';
import { type Looked, listOwnersIn } from './queries.ts';
import { WAY_OF_OUTCOME } from './schema.ts';

/** All grams of a container to where its outcome takes them; of common stock what they cost goes to the losses with them. */
export async function movingOut(
  tx: Tx,
  storehouseId: string,
  { looked, outcome }: { looked: Looked; outcome: Outcome },
) {
  assert(outcome in WAY_OF_OUTCOME, 'the schema lets only what is lost be booked out');
  const way = WAY_OF_OUTCOME[outcome as keyof typeof WAY_OF_OUTCOME];
  const { containerId, lotId, householdId } = looked.container;
  const owners = await listOwnersIn(tx, storehouseId, containerId);
  if (owners.length === 0)
    throw new Problem('not-enough-left', {
      detail: 'There is nothing left in it to book out.',
      fields: [{ field: 'isMovedOut', message: 'There is nothing left in it to book out.' }],
    });
  const vesselIdOf = await loadOutsideVessels(tx, storehouseId);
  const grams = owners.map(({ ownerId, grams: amountGrams }) => {
    const [from, to] = [massAccount(containerId, ownerId), massAccount(vesselIdOf(way), ownerId)];
    return moveGrams({ lotId, from, to, amountGrams });
  });
  const lost = -sumOf(owners.map((owner) => owner.grams));
  const differenceMinorUnits =
    householdId === null ? await loadWorth(tx, storehouseId, { lotId, grams: lost }) : 0;
  return {
    what: `container-${way}`,
    subjectId: containerId,
    drafts: [...grams, ...commonStockCounted({ causeId: lotId, differenceMinorUnits })],
  };
}
