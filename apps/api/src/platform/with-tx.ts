import type { Tx } from '@sheafbook/db';
import { sql } from 'drizzle-orm';
import type { Actor } from './actor.ts';
import type { Context, Outside } from './context.ts';
import { claimKey, keepAnswer } from './kept-answer.ts';
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
  | 'take-along';

export type TxOptions = { readonly task?: Task; readonly isReadOnly?: boolean };

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
  return retry(() =>
    context.db.transaction(
      async (tx) => {
        await setStorehouse(tx, context.actor, options.task ?? '');
        if (!context.once) return work(tx);
        await claimKey(tx, context, context.once);
        const result = await work(tx);
        await keepAnswer(tx, context, context.once, result);
        return result;
      },
      { isolationLevel: options.isReadOnly ? 'repeatable read' : 'read committed' },
    ),
  );
}

/** A transaction of a login that is not (yet) in a storehouse, or that looks for its own storehouses. */
export function withLoginTx<Result>(
  outside: Outside,
  loginId: string | null,
  work: (tx: Tx) => Promise<Result>,
): Promise<Result> {
  return retry(() =>
    outside.db.transaction(async (tx) => {
      await setAll(tx, { storehouse: '', login: loginId ?? '', household: '', task: '' });
      return work(tx);
    }),
  );
}

/** Steps into a storehouse inside a running transaction, such as the one that founds it. */
export function enterStorehouse(tx: Tx, storehouseId: string, loginId: string | null): Promise<void> {
  return setAll(tx, { storehouse: storehouseId, login: loginId ?? '', household: '', task: '' });
}

function setStorehouse(tx: Tx, actor: Actor, task: string): Promise<void> {
  return setAll(tx, {
    storehouse: actor.storehouseId,
    login: actor.loginId,
    household: actor.householdId ?? '',
    task,
  });
}

async function setAll(
  tx: Tx,
  settings: { storehouse: string; login: string; household: string; task: string },
): Promise<void> {
  const { storehouse, login, household, task } = settings;
  await tx.execute(sql`select set_config('app.storehouse', ${storehouse}, true),
    set_config('app.login', ${login}, true), set_config('app.household', ${household}, true),
    set_config('app.task', ${task}, true)`);
}

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
