import type { WorkRow } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import type { Logger } from 'pino';
import { storehouseItself } from '../platform/actor.ts';
import type { Context, Outside } from '../platform/context.ts';
import { logFailure } from '../platform/log.ts';
import { Problem } from '../platform/problem.ts';
import { withStorehouseTx, withTx } from '../platform/with-tx.ts';
import { GiveUp, type Job, TryLater, type WorkTask, type WorkTasks } from '../platform/work/task.ts';
import {
  findStorehouse,
  lockWaiting,
  updateDead,
  updateDone,
  updateLater,
  updateTriesCounted,
  type WorkId,
} from './queries.ts';

/** What doing work needs; the log hears of failures that are nobody's but ours. */
export type Workshop = { readonly outside: Outside; readonly tasks: WorkTasks; readonly log: Logger };

/** `gone`: done by another, taken back, asked for anew. `later`: it failed and is tried again. */
export type Outcome = 'done' | 'gone' | 'later' | 'dead';

/** The waits between the tries grow to e^9 s and add up to 3.5 hours: a mail server that is mended by lunch is enough. */
export const MOST_TRIES = 10;

/**
 * Does one piece of work, whoever else may be at it: what it changes in the book is committed together with its end, under
 * the lock of its row, so that it counts once. A failure is written down with its reason and the next try's time.
 */
export async function carryOut(workshop: Workshop, of: WorkId): Promise<Outcome> {
  const { outside, tasks } = workshop;
  const begun = await begin(outside, of);
  if (!begun) return 'gone';
  const { work, context } = begun;
  try {
    if (work.tries > MOST_TRIES) throw new GiveUp('The server stopped in the middle of it each time.');
    const task = Object.hasOwn(tasks, work.task) ? tasks[work.task] : undefined;
    if (!task) throw new TryLater('This server does not know this work: it may be older than the book.');
    return (await finish(task, work, context)) ? 'done' : 'gone';
  } catch (error) {
    return giveReason(workshop, work, error);
  }
}

function begin(outside: Outside, of: WorkId): Promise<{ work: WorkRow; context: Context } | undefined> {
  return withStorehouseTx(outside, of.storehouseId, async (tx) => {
    const work = await updateTriesCounted(tx, of);
    if (!work) return undefined;
    const storehouse = await findStorehouse(tx, of.storehouseId);
    assert(storehouse, 'work belongs to a storehouse');
    const actor = storehouseItself({ storehouseId: of.storehouseId, ...storehouse });
    return { work, context: { ...outside, actor } };
  });
}

async function finish(task: WorkTask, work: WorkRow, context: Context): Promise<boolean> {
  const { storehouseId, workId, payload, version } = work;
  const job: Job = { context, storehouseId, workId, payload };
  const reached = await task.reachOut?.(job);
  const options = task.privateTask === undefined ? {} : { task: task.privateTask };
  return withTx(
    context,
    async (tx) => {
      if (!(await lockWaiting(tx, { storehouseId, workId, version }))) return false;
      await task.settle(tx, job, reached);
      await updateDone(tx, { storehouseId, workId }, context.now());
      return true;
    },
    options,
  );
}

function giveReason({ outside, log }: Workshop, work: WorkRow, error: unknown): Promise<'later' | 'dead'> {
  const isOurs = !(error instanceof GiveUp || error instanceof TryLater || error instanceof Problem);
  if (isOurs) logFailure(log, work.workId, error);
  const reason = isOurs ? 'Something went wrong in the server. Its log says more.' : error.message;
  const isDead = error instanceof GiveUp || work.tries >= MOST_TRIES;
  const now = outside.now();
  return withStorehouseTx(outside, work.storehouseId, async (tx) => {
    if (isDead) await updateDead(tx, work, { reason, endedAt: now });
    else await updateLater(tx, work, { reason, dueAt: nextTryAt(now, work.tries) });
    return isDead ? 'dead' : 'later';
  });
}

/** As the queue itself waits: e, e², e³ … seconds. */
const nextTryAt = (now: Date, tries: number): Date => new Date(now.getTime() + Math.exp(tries) * 1000);
