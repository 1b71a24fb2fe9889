import type { Tx } from '@sheafbook/db';
import type { MovementRow } from '@sheafbook/db/tables';
import { respectsGuard } from '@sheafbook/ledger';
import { assert } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { pageOf } from '../../platform/paging.ts';
import { reverseEntry } from '../../platform/post-entry.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { Problem } from '../../platform/problem.ts';
import { refusing } from '../../platform/to-problem.ts';
import { refuseFutureDay, todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { findMatchOfEntry } from '../bank/queries.ts';
import { loadBuy, lockBuyForUpdate } from '../buy/queries.ts';
import { loadHousehold } from '../household/queries.ts';
import { refuseClosedDay } from '../period/queries.ts';
import { AT_THE_BANK, MENDED_ELSEWHERE } from './mended-elsewhere.ts';
import { isHomeStock } from './policy.ts';
import { nameOf } from './present.ts';
import {
  type EntryInWords,
  type EntryReading,
  listAccountsInWords,
  listEntries,
  listEntriesById,
  listMovementsOf,
  loadEntry,
} from './queries.ts';
import type { EntriesQuery, ReversalWish } from './schema.ts';

export { mayReadEntries } from './policy.ts';
export { presentEntry } from './present.ts';

/** The book in the order it was written, with each account in words. */
export function readEntries(context: Context, query: EntriesQuery) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    if (query.buy !== undefined) await loadBuy(tx, storehouseId, query.buy);
    if (query.household !== undefined) await loadHousehold(tx, storehouseId, query.household);
    const found = await listEntries(tx, storehouseId, query);
    const { rows, next } = pageOf(found, query.limit, (entry) => String(entry.entryNo));
    return { entries: await putInWords(tx, context, rows), next };
  });
}

export function readEntry(context: Context, entryId: string): Promise<EntryInWords> {
  return withTx(context, (tx) => loadInWords(tx, context, entryId));
}

/** Some entries in words, in the order of their ids as given, inside the caller's transaction. */
export async function readEntriesInside(
  tx: Tx,
  context: Context,
  entryIds: readonly string[],
): Promise<EntryInWords[]> {
  if (entryIds.length === 0) return [];
  const found = await putInWords(
    tx,
    context,
    await listEntriesById(tx, context.actor.storehouseId, entryIds),
  );
  return entryIds.flatMap((entryId) => found.filter((entry) => entry.entryId === entryId));
}

/**
 * Undoes an entry line by line, once. The guards decide: what has moved on since can't be taken back, and whatever
 * stands in the way is named (ledger-notes 6.3). What has a record of its own beside the book is mended there.
 */
export function reverse(context: Context, entryId: string, wish: ReversalWish): Promise<EntryInWords> {
  const { storehouseId } = context.actor;
  const onDay = wish.onDay ?? todayOf(context);
  refuseFutureDay(context, { field: 'onDay', on: onDay });
  const work = async (tx: Tx) => {
    const entry = await loadEntry(tx, storehouseId, entryId);
    if (entry.buyId !== null) await lockBuyForUpdate(tx, storehouseId, entry.buyId);
    if (entry.reversedByEntryNo !== null)
      throw new Problem('already-reversed', { reversedByEntryNo: entry.reversedByEntryNo });
    const elsewhere = MENDED_ELSEWHERE[entry.what];
    if (elsewhere) throw new Problem('cannot-reverse', { detail: elsewhere, what: entry.what, blockers: [] });
    if (await findMatchOfEntry(tx, storehouseId, entryId))
      throw new Problem('cannot-reverse', { detail: AT_THE_BANK, what: entry.what, blockers: [] });
    await refuseClosedDay(tx, storehouseId, { field: 'onDay', on: onDay });
    await refuseBlocked(tx, context, entryId);
    const posted = await reverseEntry(tx, context, {
      what: 'reversal',
      onDay,
      reversesId: entryId,
      buyId: entry.buyId ?? undefined,
      subjectId: entry.subjectId ?? undefined,
      note: wish.reason,
    });
    return loadInWords(tx, context, posted.entryId);
  };
  return withTx(context, work).catch(refusing(GUARDS, (cause) => new Problem('cannot-reverse', { cause })));
}

/** What a race runs into after the look beforehand passed. */
const GUARDS = new Set([
  'account_never_below_zero',
  'account_never_above_zero',
  'account_closed_at_zero',
  'entry_not_at_the_bank',
]);

async function refuseBlocked(tx: Tx, context: Context, entryId: string): Promise<void> {
  const { storehouseId } = context.actor;
  const lines = await listMovementsOf(tx, storehouseId, [entryId]);
  const accounts = await listAccountsInWords(tx, storehouseId, accountIdsOf(lines));
  const blockers = [...accounts.values()].flatMap((account) => {
    const change = lines.reduce((sum, line) => sum + backwards(line, account.accountId), 0);
    const after = account.balance + change;
    const breaksGuard = !respectsGuard(account.guard, { inflow: after, outflow: 0 });
    if (!breaksGuard && !(account.isClosed && after !== 0)) return [];
    const isPrivate = isHomeStock(context.actor, [account]);
    return [{ account, lacks: isPrivate ? null : Math.abs(after), isPrivate }];
  });
  if (blockers.length === 0) return;
  throw new Problem('cannot-reverse', {
    detail: `What it moved has moved on: ${blockers.map(({ account, isPrivate }) => nameOf(account, isPrivate)).join(', ')}.`,
    blockers: blockers.map(({ account, lacks, isPrivate }) => ({
      accountId: account.accountId,
      account: nameOf(account, isPrivate),
      unit: account.unitKind,
      lacks,
      isClosed: account.isClosed,
    })),
  });
}

/** What undoing one line does to an account. */
function backwards(line: MovementRow, accountId: string): number {
  if (line.sourceId === accountId) return line.amount;
  return line.destinationId === accountId ? -line.amount : 0;
}

async function loadInWords(tx: Tx, context: Context, entryId: string): Promise<EntryInWords> {
  const entry = await loadEntry(tx, context.actor.storehouseId, entryId);
  const [inWords] = await putInWords(tx, context, [entry]);
  assert(inWords, 'one entry in, one out');
  return inWords;
}

/** Names the accounts of some entries, and writes down for each household that its figures were read. */
async function putInWords(
  tx: Tx,
  context: Context,
  entries: readonly EntryReading[],
): Promise<EntryInWords[]> {
  const { storehouseId } = context.actor;
  const entryIds = entries.map((entry) => entry.entryId);
  const lines = await listMovementsOf(tx, storehouseId, entryIds);
  const accounts = await listAccountsInWords(tx, storehouseId, accountIdsOf(lines));
  const inWords = entries.map((entry) => ({
    ...entry,
    movements: lines
      .filter((line) => line.entryId === entry.entryId)
      .map(({ line, amount, sourceId, destinationId }) => {
        const [from, to] = [accounts.get(sourceId), accounts.get(destinationId)];
        assert(from && to, 'a movement has both its accounts');
        return { line, amount, from, to, isHomeStock: isHomeStock(context.actor, [from, to]) };
      }),
  }));
  const shown = inWords.flatMap((entry) => entry.movements).filter((movement) => !movement.isHomeStock);
  const householdIds = shown
    .flatMap(({ from, to }) => [from, to])
    .flatMap(({ ownerKind, ownerId }) => (ownerKind === 'household' && ownerId !== null ? [ownerId] : []));
  await notePrivateRead(tx, context, { householdIds, what: 'entries', purpose: 'books of the storehouse' });
  return inWords;
}

const accountIdsOf = (lines: readonly MovementRow[]): string[] => [
  ...new Set(lines.flatMap((line) => [line.sourceId, line.destinationId])),
];
