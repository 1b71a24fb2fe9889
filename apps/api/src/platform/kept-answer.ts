import type { Tx } from '@sheafbook/db';
import { keptAnswers } from '@sheafbook/db/tables';
import { and, eq, sql } from 'drizzle-orm';
import type { Context, Once } from './context.ts';
import { Problem } from './problem.ts';

/** Not a refusal: the answer that the first sending of this command got, thrown to leave the transaction unchanged. */
export class KeptAnswer extends Error {
  override readonly name = 'KeptAnswer';
  readonly status: number;
  readonly body: unknown;
  constructor(status: number, body: unknown) {
    super('this command was carried out before');
    this.status = status;
    this.body = body;
  }
}

/**
 * Takes the key, or says that it was taken before. It is sent before this function returns, so whatever the command
 * itself sends comes after it and waits with it: a second sending waits until the first has committed.
 */
export function claimKey(tx: Tx, context: Context, once: Once): Promise<boolean> {
  const { storehouseId, loginId } = context.actor;
  const claim = sql`insert into book.kept_answer (storehouse_id, login_id, idempotency_key, request_hash, status, kept_at)
    values (${storehouseId}, ${loginId}, ${once.key}, ${once.requestHash}, ${once.status},
      ${context.now().toISOString()}) on conflict do nothing returning true`;
  return tx
    .execute(claim)
    .execute()
    .then((taken) => taken.length > 0);
}

export async function keepAnswer(tx: Tx, context: Context, once: Once, result: unknown): Promise<void> {
  const { storehouseId, loginId } = context.actor;
  const body = JSON.stringify(once.present(result as never) ?? null);
  await tx.execute(sql`update book.kept_answer set body = ${body}::jsonb where storehouse_id = ${storehouseId}
    and login_id = ${loginId} and idempotency_key = ${once.key}`);
}

/** The answer that the first sending of a command got, for one whose key was taken. */
export async function loadKeptAnswer(tx: Tx, { actor }: Context, once: Once): Promise<KeptAnswer> {
  const [kept] = await tx
    .select()
    .from(keptAnswers)
    .where(
      and(
        eq(keptAnswers.storehouseId, actor.storehouseId),
        eq(keptAnswers.loginId, actor.loginId),
        eq(keptAnswers.idempotencyKey, once.key),
      ),
    );
  if (!kept) throw new Problem('busy-retry');
  if (kept.requestHash !== once.requestHash) throw new Problem('idempotency-key-reused');
  return new KeptAnswer(kept.status, kept.body);
}
