import type { Tx } from '@sheafbook/db';
import {
  type EarlierLine,
  foreseeBank,
  type KnownParty,
  type LineGuess,
  pairLines,
  recogniseLine,
  reconcileBank,
  tillAccount,
} from '@sheafbook/ledger';
import type { Context } from '../../platform/context.ts';
import { pageOf, WHOLE_LIST } from '../../platform/paging.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { fieldProblem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadBalance } from '../money/queries.ts';
import { findBalance, loadLine } from './queries.ts';
import {
  type EntryAtBank,
  listEarlierLines,
  listEntriesAtBank,
  listParties,
  listPaymentsDue,
  listReceiptsDue,
  loadFirstDay,
} from './queries-book.ts';
import { countLines, type LineReading, listLines } from './queries-lines.ts';
import type { ForecastQuery, LinesQuery } from './schema.ts';

/** What an open line may be: an entry that the book has, or what its words look like. */
export type Suggestion = {
  readonly entry: EntryAtBank | null;
  readonly guess:
    | (LineGuess & { readonly party: string | null; readonly depositOnBuyId: string | null })
    | null;
};

/** The bank's lines with what became of each; open ones with what each may be. */
export function readLines(context: Context, query: LinesQuery) {
  const { storehouseId, currency } = context.actor;
  return withTx(context, async (tx) => {
    const found = await listLines(tx, storehouseId, query);
    const { rows, next } = pageOf(found, query.limit, (line) => line.bankLineId);
    const entries = await loadEntries(tx, storehouseId);
    const suggestions = await suggest(tx, context, entries);
    const lines = rows.map((line) => ({
      ...line,
      party: entries.find(({ entryId }) => entryId === line.match?.entryId)?.party ?? null,
      suggestion: line.match ? null : (suggestions.get(line.bankLineId) ?? null),
    }));
    const shownIds = new Set(
      lines.map(({ match, suggestion }) => match?.entryId ?? suggestion?.entry?.entryId),
    );
    await noteHouseholds(
      tx,
      context,
      entries.filter(({ entryId }) => shownIds.has(entryId)),
    );
    return { lines, next, currency, counts: await countLines(tx, storehouseId) };
  });
}
export type LinesReading = Awaited<ReturnType<typeof readLines>>;

/** The entries that a line could be by its amount, whatever their day, the nearest first. */
export function readCandidates(context: Context, bankLineId: string) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const line = await loadLine(tx, storehouseId, bankLineId);
    const entries = (await loadEntries(tx, storehouseId)).filter(
      (entry) => entry.clearedOn === null && !entry.isOpening && entry.minorUnits === line.minorUnits,
    );
    await noteHouseholds(tx, context, entries);
    return entries;
  });
}

/** Whether the bank agrees with the book at the end of the last day that it told its balance of. */
export function readReconciliation(context: Context, on: string | undefined) {
  const { storehouseId, currency } = context.actor;
  return withTx(context, async (tx) => {
    const told = await findBalance(tx, storehouseId, on ?? todayOf(context));
    const throughOn = told?.onDay ?? todayOf(context);
    const bookMinorUnits = await loadBalance(tx, storehouseId, tillAccount('bank'));
    const { entries, openLines, reconciliation } = await reconcile(tx, storehouseId, {
      throughOn,
      statementMinorUnits: told?.minorUnits ?? 0,
    });
    await noteHouseholds(
      tx,
      context,
      entries.filter(({ clearedOn }) => clearedOn === null),
    );
    return {
      currency,
      throughOn,
      counts: await countLines(tx, storehouseId),
      isTold: told !== undefined,
      bookMinorUnits,
      entries,
      openLines,
      reconciliation,
    };
  });
}
export type ReconciliationReading = Awaited<ReturnType<typeof readReconciliation>>;

async function reconcile(
  tx: Tx,
  storehouseId: string,
  told: { throughOn: string; statementMinorUnits: number },
) {
  const entries = await loadEntries(tx, storehouseId);
  const open = await listAllOpen(tx, storehouseId);
  const aside = await listLines(tx, storehouseId, { state: 'set-aside', limit: WHOLE_LIST });
  const openLines = [...open, ...aside].map((line) => ({ ...line, lineId: line.bankLineId }));
  return { entries, openLines, reconciliation: reconcileBank({ ...told, entries, openLines }) };
}

/**
 * How far the bank's word was from the book's when it last told its balance by a day, and how many entries came after
 * it by that day. Counts and sums only, so nobody is noted as looked at.
 */
export async function readAgreement(tx: Tx, storehouseId: string, throughOn: string) {
  const told = await findBalance(tx, storehouseId, throughOn);
  const { entries, reconciliation } = await reconcile(tx, storehouseId, {
    throughOn: told?.onDay ?? throughOn,
    statementMinorUnits: told?.minorUnits ?? 0,
  });
  const isSince = ({ onDay }: { onDay: string }) =>
    onDay <= throughOn && (told === undefined || onDay > told.onDay);
  return {
    toldOn: told?.onDay ?? null,
    differenceMinorUnits: told === undefined ? 0 : reconciliation.differenceMinorUnits,
    entriesSince: entries.filter(isSince).length,
  };
}

/** Whether the bank can pay what is due by a day (job map 3.2, question 4). */
export function readForecast(context: Context, { on, more }: ForecastQuery) {
  const { storehouseId, currency } = context.actor;
  const todayOn = todayOf(context);
  if (on < todayOn)
    throw fieldProblem('invalid-input', 'on', 'This day has passed. Choose today or a later one.');
  return withTx(context, async (tx) => {
    const bankMinorUnits = await loadBalance(tx, storehouseId, tillAccount('bank'));
    const tinMinorUnits = await loadBalance(tx, storehouseId, tillAccount('cash_tin'));
    const receipts = await listReceiptsDue(tx, storehouseId, todayOn);
    const payments = await listPaymentsDue(tx, storehouseId, todayOn);
    const householdIds = receipts.map(({ householdId }) => householdId);
    await notePrivateRead(tx, context, { householdIds, what: 'balance', purpose: 'paying what is due' });
    const further = more > 0 ? [{ dueOn: on, minorUnits: more }] : [];
    const forecast = foreseeBank({ byOn: on, bankMinorUnits, receipts, payments: [...payments, ...further] });
    const isDue = ({ dueOn }: { dueOn: string }) => dueOn <= on;
    return {
      ...{ currency, on, more, bankMinorUnits, tinMinorUnits, forecast },
      receipts: receipts.filter(isDue),
      payments: payments.filter(isDue),
    };
  });
}
export type ForecastReading = Awaited<ReturnType<typeof readForecast>>;

const listAllOpen = (tx: Tx, storehouseId: string): Promise<LineReading[]> =>
  listLines(tx, storehouseId, { state: 'open', limit: WHOLE_LIST });

/** What stood in the book before the bank's first line counts as settled, and so does what an older book brought over. */
async function loadEntries(tx: Tx, storehouseId: string): Promise<EntryAtBank[]> {
  const firstOn = await loadFirstDay(tx, storehouseId);
  const entries = await listEntriesAtBank(tx, storehouseId);
  return entries.map((entry) => ({
    ...entry,
    isBeforeLines: entry.isOpening || (firstOn !== null && entry.onDay < firstOn),
  }));
}

/** One suggestion for each open line, reckoned over all of them, so that no entry is offered to two. */
async function suggest(
  tx: Tx,
  context: Context,
  entries: readonly EntryAtBank[],
): Promise<Map<string, Suggestion>> {
  const { storehouseId } = context.actor;
  const open = await listAllOpen(tx, storehouseId);
  const parties = await listParties(tx, storehouseId);
  const earlier = await listEarlierLines(tx, storehouseId);
  const due = await listReceiptsDue(tx, storehouseId, todayOf(context));
  const guesses = new Map(open.map((line) => [line.bankLineId, guessOf(line, { parties, earlier })]));
  const pairs = pairLines({
    lines: open.map((line) => ({
      ...line,
      id: line.bankLineId,
      partyId: guesses.get(line.bankLineId)?.partyId ?? null,
    })),
    entries: entries
      .filter(({ clearedOn, isOpening }) => clearedOn === null && !isOpening)
      .map((entry) => ({ ...entry, id: entry.entryId })),
  });
  const entryOf = new Map(pairs.map(({ lineId, entryId }) => [lineId, entryId]));
  return new Map(
    open.map((line) => {
      const guess = guesses.get(line.bankLineId);
      const entryId = entryOf.get(line.bankLineId);
      const deposit = due.find(
        (row) =>
          row.why === 'deposit' && row.householdId === guess?.partyId && row.minorUnits === line.minorUnits,
      );
      return [
        line.bankLineId,
        {
          entry: entries.find((entry) => entry.entryId === entryId) ?? null,
          guess: guess ? { ...guess, depositOnBuyId: deposit?.buyId ?? null } : null,
        },
      ] as const;
    }),
  );
}

function guessOf(
  line: LineReading,
  known: { parties: readonly KnownParty[]; earlier: readonly EarlierLine[] },
) {
  const guess = recogniseLine(line, known);
  if (!guess) return null;
  return { ...guess, party: known.parties.find(({ id }) => id === guess.partyId)?.name ?? null };
}

function noteHouseholds(tx: Tx, context: Context, entries: readonly EntryAtBank[]): Promise<void> {
  const householdIds = entries.flatMap(({ isHousehold, partyId }) =>
    isHousehold && partyId ? [partyId] : [],
  );
  return notePrivateRead(tx, context, { householdIds, what: 'entries', purpose: 'matching the bank' });
}
