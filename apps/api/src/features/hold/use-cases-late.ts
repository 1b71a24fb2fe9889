import type { WorkTask } from '../../platform/work/task.ts';
import { listHolds, lockHold } from './queries.ts';
import { listConcerned, listToldOfHold } from './queries-owners.ts';
import { tellConcerned } from './use-cases-scope.ts';

/** More holds than any storehouse has standing at once. */
const MOST_STANDING = 1000;

/** Work in the background: a household that came to have some of what is on hold since it began is told, once. */
export const tellLateOwners: WorkTask = {
  privateTask: 'notice',
  async settle(tx, { context }) {
    const { storehouseId } = context.actor;
    for (const seen of await listHolds(tx, storehouseId, { isOpen: true, limit: MOST_STANDING })) {
      const told = async () => new Set(await listToldOfHold(tx, storehouseId, seen.hold.holdId));
      const toldBefore = await told();
      const concerned = await listConcerned(tx, seen.hold);
      if (concerned.every(({ householdId }) => toldBefore.has(householdId))) continue;
      // Only a hold that has somebody to tell is kept from whoever would release it.
      const { releasedAt } = await lockHold(tx, storehouseId, seen.hold.holdId);
      if (releasedAt !== null) continue; // it ended meanwhile
      await tellConcerned(tx, context, seen, [...(await told())]);
    }
  },
};
