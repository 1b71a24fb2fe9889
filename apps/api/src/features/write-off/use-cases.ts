import type { Tx } from '@sheafbook/db';
import type { WriteOffRow } from '@sheafbook/db/tables';
import { debtWrittenOff } from '@sheafbook/ledger';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { type PageQuery, pageOf } from '../../platform/paging.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { lockHousehold } from '../money/queries.ts';
import { checkedDay, postMoney, refuseSettledDebt } from '../money/use-cases.ts';
import { loadRules } from '../storehouse/queries.ts';
import {
  insertWriteOff,
  listWriteOffs,
  lockWriteOff,
  sumWrittenOffAlone,
  updateWriteOff,
} from './queries.ts';
import type { WriteOffWish } from './schema.ts';

const YEAR_MILLISECONDS = 365 * 86_400_000;

/**
 * Writes a debt off. Up to the limit of the rules it is posted at once; above it, it waits for a second login. The
 * limit counts what was written off for the household within a year, or a debt could be taken down bit by bit.
 */
export function askWriteOff(context: Context, wish: WriteOffWish): Promise<WriteOffRow> {
  const { storehouseId, personId } = context.actor;
  checkedDay(context, wish);
  return withTx(context, async (tx) => {
    const { householdId } = await lockHousehold(tx, storehouseId, wish.householdId);
    const { writeOffLimitMinorUnits } = await loadRules(tx, storehouseId);
    const since = new Date(context.now().getTime() - YEAR_MILLISECONDS);
    const alone = await sumWrittenOffAlone(tx, storehouseId, { householdId, since });
    const writeOff = await insertWriteOff(tx, {
      storehouseId,
      writeOffId: newId(context),
      householdId,
      minorUnits: wish.minorUnits,
      needsTwo: alone + wish.minorUnits > writeOffLimitMinorUnits,
      reason: wish.reason,
      askedBy: personId,
      askedAt: context.now(),
    });
    return writeOff.needsTwo ? writeOff : postWriteOff(tx, context, writeOff);
  });
}

/** The second login agrees, and the debt is written off with that. */
export function agreeToWriteOff(context: Context, writeOffId: string): Promise<WriteOffRow> {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    const asked = await lockAsked(tx, storehouseId, writeOffId);
    if (asked.askedBy === personId)
      throw new Problem('second-login-needed', {
        detail: 'Whoever asked for a write-off can’t be the one who agrees to it.',
      });
    await lockHousehold(tx, storehouseId, asked.householdId);
    const agreed = await updateWriteOff(tx, asked, { agreedBy: personId, agreedAt: context.now() });
    await noteRead(tx, context, [agreed]);
    return postWriteOff(tx, context, agreed);
  });
}

export function withdrawWriteOff(context: Context, writeOffId: string): Promise<WriteOffRow> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const asked = await lockAsked(tx, storehouseId, writeOffId);
    return updateWriteOff(tx, asked, { withdrawnAt: context.now() });
  });
}

export function readWriteOffs(context: Context, { after, limit }: PageQuery) {
  return withTx(context, async (tx) => {
    const rows = await listWriteOffs(tx, context.actor.storehouseId, { after, limit });
    const page = pageOf(rows, limit, ({ writeOff }) => writeOff.writeOffId);
    await noteRead(
      tx,
      context,
      page.rows.map((row) => row.writeOff),
    );
    return page;
  });
}

async function lockAsked(tx: Tx, storehouseId: string, writeOffId: string): Promise<WriteOffRow> {
  const writeOff = await lockWriteOff(tx, storehouseId, writeOffId);
  if (writeOff.entryId !== null || writeOff.withdrawnAt !== null)
    throw new Problem('already-there', { detail: 'This write-off was settled already.' });
  return writeOff;
}

async function postWriteOff(tx: Tx, context: Context, writeOff: WriteOffRow): Promise<WriteOffRow> {
  const { householdId, minorUnits } = writeOff;
  const { entryId } = await postMoney(tx, context, {
    what: 'debt-written-off',
    onDay: todayOf(context),
    minorUnits,
    note: writeOff.reason,
    subjectId: writeOff.writeOffId,
    drafts: debtWrittenOff({ householdId, amountMinorUnits: minorUnits }),
  });
  await refuseSettledDebt(tx, context, householdId);
  return updateWriteOff(tx, writeOff, { entryId });
}

function noteRead(tx: Tx, context: Context, rows: readonly WriteOffRow[]): Promise<void> {
  const householdIds = rows.map((row) => row.householdId);
  return notePrivateRead(tx, context, { householdIds, what: 'debt', purpose: 'write-off' });
}
