import type { Tx } from '@sheafbook/db';
import type { Context } from '../context.ts';
import type { Task } from '../with-tx.ts';

/** One piece of work while it is being done. The actor of `context` is the storehouse itself, which is nobody. */
export type Job = {
  readonly context: Context;
  readonly storehouseId: string;
  readonly workId: string;
  readonly payload: unknown;
};

/**
 * How one kind of work is done. The methods are told apart by what may happen twice: a process can die at any moment.
 */
export type WorkTask<Reached = unknown> = {
  /**
   * Talks to the world outside, with no transaction open; what it returns goes to `settle`. It happens again when the
   * process dies before `settle` is committed.
   */
  reachOut?(job: Job): Promise<Reached>;
  /** What it changes in the book, in one transaction with the mark that the work is done: both once, or neither. */
  settle(tx: Tx, job: Job, reached: Reached): Promise<void>;
  /** Opens a neighbour's private datum to `settle`, see `withTx`. */
  readonly privateTask?: Task;
};

export type WorkTasks = Readonly<Record<string, WorkTask>>;

/** Work that can't be done now. The reason is for the coordinator: a sentence, without anybody's private facts. */
export class TryLater extends Error {
  override readonly name = 'TryLater';
}

/** Work that no further try can mend. */
export class GiveUp extends Error {
  override readonly name = 'GiveUp';
}
