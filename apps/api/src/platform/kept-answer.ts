import type { Tx } from '@sheafbook/db';
import { keptAnswers } from '@sheafbook/db/tables';
import { and, eq } from 'drizzle-orm';
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

/** Takes the key first, so that a second sending waits for the first to commit and then finds its answer. */
export async function claimKey(tx: Tx, context: Context, once: Once): Promise<void> {
  const { storehouseId, loginId } = context.actor;
  const taken = await tx
    .insert(keptAnswers)
    .values({
      storehouseId,
      loginId,
      idempotencyKey: once.key,
      requestHash: once.requestHash,
      status: once.status,
      keptAt: context.now(),
    })
    .onConflictDoNothing()
    .returning({ key: keptAnswers.idempotencyKey });
  if (taken.length > 0) return;
  const [kept] = await tx.select().from(keptAnswers).where(ofKey(context, once));
  if (!kept) throw new Problem('busy-retry');
  if (kept.requestHash !== once.requestHash) throw new Problem('idempotency-key-reused');
  throw new KeptAnswer(kept.status, kept.body);
}

export async function keepAnswer(tx: Tx, context: Context, once: Once, result: unknown): Promise<void> {
  const body = once.present(result as never) ?? null;
  await tx.update(keptAnswers).set({ body }).where(ofKey(context, once));
}

const ofKey = ({ actor }: Context, once: Once) =>
  and(
    eq(keptAnswers.storehouseId, actor.storehouseId),
    eq(keptAnswers.loginId, actor.loginId),
    eq(keptAnswers.idempotencyKey, once.key),
  );
