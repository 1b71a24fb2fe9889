import type { Tx } from '@sheafbook/db';
import type { PeriodCloseRow } from '@sheafbook/db/tables';
import { yearEndBy } from '@sheafbook/units';
import { hasDuty } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { refuseFutureDay, todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { whoHeld } from '../duty/use-cases.ts';
import { loadStorehouse } from '../storehouse/queries.ts';
import { digestText, sha256 } from './digest.ts';
import { listAccountKinds, listDigestEntries } from './digest-queries.ts';
import { listMissingAtClose, refuseUnsettled } from './missing.ts';
import {
  findCloseBefore,
  insertPeriodClose,
  insertSignature,
  listPeriodCloses,
  listSignatures,
  loadClosedThrough,
  loadPeriodClose,
  updateClosedThrough,
} from './queries.ts';
import type { PeriodEnd, SignatureWish } from './schema.ts';

/**
 * Closes the books through a day, for good, and keeps a digest of what was closed, chained to the close before. Posting
 * takes the lock of the same row, so no entry of the period can slip in behind the closing (ledger-notes 6.5), nor
 * behind the look for what is not settled.
 */
export function closePeriod(context: Context, { throughOn }: PeriodEnd) {
  const { storehouseId, personId } = context.actor;
  refuseFutureDay(context, { field: 'throughOn', on: throughOn });
  return withTx(context, async (tx) => {
    const closed = await updateClosedThrough(tx, throughOn);
    if (closed === null)
      throw fieldProblem(
        'period-closed',
        'throughOn',
        `The books are closed through ${await loadClosedThrough(tx, storehouseId)} already, and stay so.`,
      );
    await refuseUnsettled(tx, context, throughOn);
    const { text, entryCount } = await writeDigest(tx, storehouseId, throughOn);
    await insertPeriodClose(tx, {
      storehouseId,
      closedThrough: throughOn,
      closedBy: personId,
      closedAt: context.now(),
      entryCount,
      digestSha256: sha256(text),
    });
    return readPeriods(tx, context);
  });
}

/** What a close through a day would leave open, before anything is closed. */
export function previewClose(context: Context, throughOn: string) {
  return withTx(
    context,
    async (tx) => ({
      currency: context.actor.currency,
      throughOn,
      missing: await listMissingAtClose(tx, context, throughOn),
    }),
    { isReadOnly: true },
  );
}

export const listPeriods = (context: Context) => withTx(context, (tx) => readPeriods(tx, context));

async function readPeriods(tx: Tx, context: Context) {
  const { storehouseId } = context.actor;
  const { yearEndMonth } = await loadStorehouse(tx, storehouseId);
  return {
    /** The newest year's end that has come. */
    yearEndOn: yearEndBy(todayOf(context), yearEndMonth),
    closedThrough: await loadClosedThrough(tx, storehouseId),
    closes: await listPeriodCloses(tx, storehouseId),
    signatures: await listSignatures(tx, storehouseId),
  };
}

/** The text of a close and its digest as it was kept, so that anybody can reckon it again. */
export function readDigest(context: Context, throughOn: string) {
  const { storehouseId } = context.actor;
  return withTx(
    context,
    async (tx) => {
      const close = await loadPeriodClose(tx, storehouseId, throughOn);
      return { close, ...(await writeDigest(tx, storehouseId, throughOn)) };
    },
    { isReadOnly: true },
  );
}

/** The kinds of the accounts that the text of a close names by their ids alone. */
export function readDigestAccounts(context: Context, throughOn: string) {
  const { storehouseId } = context.actor;
  return withTx(
    context,
    async (tx) => {
      await loadPeriodClose(tx, storehouseId, throughOn);
      const { entries } = await listClosedEntries(tx, storehouseId, throughOn);
      const named = entries
        .flatMap(({ movements }) => movements)
        .flatMap((movement) => (movement.isHomeStock ? [] : [movement.fromAccountId, movement.toAccountId]));
      return listAccountKinds(tx, storehouseId, [...new Set(named)]);
    },
    { isReadOnly: true },
  );
}

async function listClosedEntries(tx: Tx, storehouseId: string, throughOn: string) {
  const before = await findCloseBefore(tx, storehouseId, throughOn);
  const after = before?.closedThrough ?? null;
  return { before, entries: await listDigestEntries(tx, storehouseId, { after, throughOn }) };
}

async function writeDigest(tx: Tx, storehouseId: string, throughOn: string) {
  const { before, entries } = await listClosedEntries(tx, storehouseId, throughOn);
  const previousSha256 = before?.digestSha256 ?? null;
  return {
    text: digestText({ storehouseId, throughOn, previousSha256 }, entries),
    entryCount: entries.length,
  };
}

/** Each close that kept a digest, with the digest that its entries give now. For the audit. */
export async function listDigestsAgain(tx: Tx, storehouseId: string) {
  const closes = await listPeriodCloses(tx, storehouseId);
  const again: { closedThrough: string; isSame: boolean }[] = [];
  for (const { closedThrough, digestSha256 } of closes)
    if (digestSha256 !== null) {
      const { text } = await writeDigest(tx, storehouseId, closedThrough);
      again.push({ closedThrough, isSame: sha256(text) === digestSha256 });
    }
  return again;
}

/**
 * Signs what was closed, under one duty that the signer holds, with remarks. Reviewer, treasurer and coordinator are three
 * people; the reviewer is neither a treasurer of what was closed nor of such a treasurer's household.
 */
export function signPeriod(context: Context, throughOn: string, wish: SignatureWish) {
  const { storehouseId, personId } = context.actor;
  if (!hasDuty(context.actor, wish.duty)) throw new Problem('duty-missing');
  return withTx(context, async (tx) => {
    const close = await loadPeriodClose(tx, storehouseId, throughOn);
    const { digestSha256 } = close;
    if (digestSha256 === null)
      throw new Problem('cannot-sign', { detail: 'This close kept no digest, so there is nothing to sign.' });
    await refuseChanged(tx, close);
    if (wish.digestSha256 !== digestSha256)
      throw fieldProblem('cannot-sign', 'digestSha256', 'This is not the digest of that close.');
    if (wish.duty === 'reviewer') await refuseOwnBooks(tx, context, close);
    await insertSignature(tx, {
      ...{ storehouseId, personId, digestSha256, duty: wish.duty, remarks: wish.remarks },
      closedThrough: throughOn,
      signedAt: context.now(),
    });
    return readPeriods(tx, context);
  });
}

async function refuseChanged(
  tx: Tx,
  { storehouseId, closedThrough, digestSha256 }: PeriodCloseRow,
): Promise<void> {
  const { text } = await writeDigest(tx, storehouseId, closedThrough);
  if (sha256(text) !== digestSha256)
    throw new Problem('cannot-sign', {
      detail: 'What was closed no longer gives its digest. Look at the audit before anybody signs.',
    });
}

/**
 * Nobody reviews what they kept themselves: who was treasurer at any time from the first closed day until the close itself
 * could write into these days, whatever duty they hold now.
 */
async function refuseOwnBooks(tx: Tx, context: Context, close: PeriodCloseRow): Promise<void> {
  const before = await findCloseBefore(tx, close.storehouseId, close.closedThrough);
  const held = await whoHeld(tx, context, {
    duty: 'treasurer',
    afterDay: before?.closedThrough ?? null,
    until: close.closedAt,
  });
  if (held === 'oneself')
    throw new Problem('cannot-sign', {
      detail:
        'You kept these books as treasurer for a part of this time. Please let somebody review them who did not.',
    });
  if (held === 'household')
    throw new Problem('cannot-sign', {
      detail:
        'Somebody of your household kept these books for a part of this time. Please let another household review them.',
    });
}
