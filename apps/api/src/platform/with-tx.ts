import { runTransaction, type Steps, type TransactionSettings, type Tx, type Work } from '@sheafbook/db';
import { sql } from 'drizzle-orm';
import type { Actor } from './actor.ts';
import type { Context, Once, Outside } from './context.ts';
import { claimKey, keepAnswer, loadKeptAnswer } from './kept-answer.ts';
import { findPostgresError } from './to-problem.ts';

const MOST_TRIES = 5;

/** A task that needs a neighbour's private datum opens its policy; each use is recorded in book.private_read. */
export type Task =
  | 'fill'
  | 'split'
  | 'review'
  | 'need-first'
  | 'coverage-totals'
  | 'contact'
  | 'leaving'
  | 'take-along'
  | 'import'
  | 'notice'
  | 'hold'
  | 'packing'
  | 'letter'
  | 'donor'
  | 'lids';

export type TxOptions = {
  readonly task?: Task;
  readonly isReadOnly?: boolean;
  /** The work is one statement: then the whole transaction is one round trip. For pages that are read most. */
  readonly isOneStatement?: boolean;
};

/**
 * Runs a use case in one transaction of the actor's storehouse. A serialization failure or a deadlock is tried again
 * a bounded number of times. When the request carries an idempotency key, the answer is kept in the same transaction,
 * and a retry throws the `KeptAnswer` that was given first.
 */
export async function withTx<Result>(
  context: Context,
  work: (tx: Tx) => Promise<Result>,
  options: TxOptions = {},
): Promise<Result> {
  const { actor, once } = context;
  const { task = '', isReadOnly = false, isOneStatement = false } = options;
  const run = <Outcome>(inside: Work<Outcome>) => {
    const wish = { settings: settingsOf(actor, task), isSnapshot: isReadOnly };
    return retry(() => runTransaction(context.db.lines, wish, inside));
  };
  if (once) {
    const result = await run((tx, steps) => carryOutOnce({ ...context, once }, { tx, steps, work })).catch(
      unlessTaken,
    );
    if (result) return result.value;
    throw await run((tx) => loadKeptAnswer(tx, context, once));
  }
  return run((tx, steps) => {
    if (isOneStatement) steps.lastFollows();
    return work(tx);
  });
}

/** The key was taken before; not a refusal, since the first sending's answer is given instead. */
class KeyTaken extends Error {
  override readonly name = 'KeyTaken';
}

const unlessTaken = (error: unknown): undefined => {
  if (!(error instanceof KeyTaken)) throw error;
};

/**
 * The claim of the key and the first statements of the work go out together. If the key turns out to be taken, the work
 * stops at its next statement and whatever it did is rolled back.
 */
async function carryOutOnce<Result>(
  context: Context & { readonly once: Once },
  { tx, steps, work }: { tx: Tx; steps: Steps; work: (tx: Tx) => Promise<Result> },
): Promise<{ readonly value: Result }> {
  const claiming = claimKey(tx, context, context.once).then((isOurs) => {
    if (!isOurs) steps.giveUp();
    return isOurs;
  });
  const [claim, worked] = await Promise.allSettled([claiming, work(tx)]);
  if (claim.status === 'fulfilled' && !claim.value) throw new KeyTaken();
  if (worked.status === 'rejected') throw worked.reason;
  if (claim.status === 'rejected') throw claim.reason;
  steps.lastFollows();
  await keepAnswer(tx, context, context.once, worked.value);
  return worked;
}

/** A transaction of a login that is not (yet) in a storehouse, or that looks for its own storehouses. */
export function withLoginTx<Result>(
  outside: Outside,
  loginId: string | null,
  work: (tx: Tx) => Promise<Result>,
): Promise<Result> {
  const settings = { storehouse: '', login: loginId ?? '', household: '', task: '' };
  return retry(() => runTransaction(outside.db.lines, { settings }, work));
}

/** A transaction of the server's own in one storehouse, of nobody's login: the keeping of its background work. */
export function withStorehouseTx<Result>(
  outside: Outside,
  storehouseId: string,
  work: (tx: Tx) => Promise<Result>,
): Promise<Result> {
  const settings = { storehouse: storehouseId, login: '', household: '', task: '' };
  return retry(() => runTransaction(outside.db.lines, { settings }, work));
}

/** Steps into a storehouse inside a running transaction, such as the one that founds it. */
export async function enterStorehouse(tx: Tx, storehouseId: string, loginId: string | null): Promise<void> {
  await tx.execute(sql`select set_config('app.storehouse', ${storehouseId}, true),
    set_config('app.login', ${loginId ?? ''}, true), set_config('app.household', '', true),
    set_config('app.task', '', true)`);
}

const settingsOf = (actor: Actor, task: string): TransactionSettings => ({
  storehouse: actor.storehouseId,
  login: actor.loginId,
  household: actor.householdId ?? '',
  task,
});

async function retry<Result>(attempt: () => Promise<Result>): Promise<Result> {
  for (let tries = 1; ; tries += 1) {
    try {
      return await attempt();
    } catch (error) {
      const code = findPostgresError(error)?.code;
      if (tries >= MOST_TRIES || (code !== '40001' && code !== '40P01')) throw error;
    }
  }
}
