import type { PackingQueueRow } from '@sheafbook/db/tables';
import type { Context } from '../../platform/context.ts';
import { happenedAt } from '../../platform/happened-at.ts';
import { newId } from '../../platform/new-id.ts';
import { fieldProblem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { lockSessionForShare } from '../packing-session/queries.ts';
import { requireSessionStage } from '../packing-session/use-cases.ts';
import { insertQueue } from './queries-queues.ts';
import type { QueueWish } from './schema.ts';

/** Writes down how many containers wait in front of a station. Whoever stands at the line may, with a duty or without. */
export function sayQueue(context: Context, sessionId: string, wish: QueueWish): Promise<PackingQueueRow> {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    const session = await lockSessionForShare(tx, storehouseId, sessionId);
    requireSessionStage(session, 'running');
    const { saidAt: at, ...said } = wish;
    if (said.line > session.lines)
      throw fieldProblem('invalid-input', 'line', `The session has ${session.lines} lines.`);
    if (!session.stations.some(({ name }) => name === said.station))
      throw fieldProblem('invalid-input', 'station', 'The lines of this day have no such station.');
    return insertQueue(tx, {
      ...{ storehouseId, packingQueueId: newId(context), packingSessionId: sessionId, ...said },
      ...{ saidBy: personId, saidAt: happenedAt(context.now(), { field: 'saidAt', at }) },
    });
  });
}
