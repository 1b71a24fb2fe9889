import type { Tx } from '@sheafbook/db';
import type { ContainerRow } from '@sheafbook/db/tables';
import { fieldProblem } from '../../platform/problem.ts';
import { findOutcome } from '../container/queries.ts';
import { refuseHeld } from '../hold/queries.ts';

/** Refuses what goes to no neighbour: in doubt, opened at home, or found unfit for a table. */
export async function refuseUnfit(
  tx: Tx,
  storehouseId: string,
  containers: readonly ContainerRow[],
): Promise<void> {
  await refuseHeld(
    tx,
    storehouseId,
    containers.map(({ containerId }) => containerId),
  );
  for (const { containerId, containerCode, openedOn } of containers) {
    if (openedOn !== null)
      throw fieldProblem(
        'container-opened',
        'containerIds',
        `${containerCode} has been opened. Only what is still shut is offered to others.`,
      );
    const outcome = await findOutcome(tx, storehouseId, containerId);
    if (outcome !== undefined && outcome !== 'table' && outcome !== 'kitchen-soon')
      throw fieldProblem(
        'inspection-forbids',
        'containerIds',
        `What was found in ${containerCode} does not let it go to others.`,
      );
  }
}
