import type { Tx } from '@sheafbook/db';
import type { HouseholdRow } from '@sheafbook/db/tables';
import { ageDebts, asKnownOn, buildStatement, type HeldDeposit, splitPeriod } from '@sheafbook/ledger';
import type { Context } from '../../platform/context.ts';
import { pageOf } from '../../platform/paging.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadHousehold } from '../household/queries.ts';
import { loadStorehouse } from '../storehouse/queries.ts';
import { mayReadAccountOf } from './policy.ts';
import {
  type DepositLine,
  listAccountLines,
  listBalances,
  listChargeParts,
  listDatedAmounts,
  listDepositLines,
  listTreasurerNames,
  loadStanding,
  sumAwards,
} from './queries.ts';
import type { BalancesQuery, StatementQuery } from './schema.ts';

/**
 * A household's statement for a period, as the book is known now or was known at an earlier instant. Whoever reads
 * another household's by duty is written down for that household to see.
 */
export function readStatement(context: Context, householdId: string, query: StatementQuery) {
  const { storehouseId } = context.actor;
  const throughOn = query.to ?? todayOf(context);
  const knownAt = (query.knownAt ? new Date(query.knownAt) : context.now()).toISOString();
  return withTx(context, async (tx) => {
    const household = await openAccountOf(tx, context, { householdId, what: 'statement' });
    const knowledge = { throughOn, knownAt };
    const of = { householdId, knownAt };
    // Asked for all at once: they go down one connection together.
    const [accountLines, depositLines, parts, awardGrams, treasurers, storehouse] = await Promise.all([
      listAccountLines(tx, storehouseId, householdId),
      listDepositLines(tx, storehouseId, householdId),
      listChargeParts(tx, storehouseId, of),
      sumAwards(tx, storehouseId, of),
      listTreasurerNames(tx, storehouseId),
      loadStorehouse(tx, storehouseId),
    ]);
    const known = asKnownOn(accountLines, knowledge);
    const days = [household.joinedOn, throughOn, ...known.map(({ onDay }) => onDay)].toSorted();
    const fromOn = query.from ?? days[0] ?? throughOn;
    if (fromOn > throughOn) throw fieldProblem('invalid-input', 'from', 'The period ends before it begins.');
    const { openingMinorUnits, lines } = splitPeriod(known, { fromOn, throughOn });
    const held = heldByBuy(asKnownOn(depositLines, knowledge));
    return {
      storehouseName: storehouse.name,
      currency: context.actor.currency,
      household,
      period: { fromOn, throughOn, knownAt },
      statement: buildStatement({ openingMinorUnits, lines, depositsHeld: held.deposits }),
      buyNames: held.names,
      charges: asKnownOn(parts, knowledge).filter(({ onDay }) => onDay >= fromOn),
      awardGrams,
      treasurers,
    };
  });
}
export type StatementReading = Awaited<ReturnType<typeof readStatement>>;

/** What a household owes or is owed today, and its deposits. One's own is the page most looked at: one statement. */
export function readBalance(context: Context, householdId: string) {
  const { storehouseId, currency } = context.actor;
  const isOwn = householdId === context.actor.householdId && !context.actor.isHelping;
  return withTx(
    context,
    async (tx) => {
      if (!isOwn) await openAccountOf(tx, context, { householdId, what: 'balance' });
      return { householdId, currency, ...(await loadStanding(tx, storehouseId, householdId)) };
    },
    { isOneStatement: isOwn },
  );
}

/** The treasurer's list: each household's balance by the age of what is unpaid. Every household on it can see that. */
export function readBalances(context: Context, query: BalancesQuery) {
  const { storehouseId, currency } = context.actor;
  const todayOn = todayOf(context);
  return withTx(context, async (tx) => {
    const found = await listBalances(tx, storehouseId, query);
    const { rows, next } = pageOf(found, query.limit, (row) => String(row.seat));
    const householdIds = rows.map((row) => row.householdId);
    await notePrivateRead(tx, context, { householdIds, what: 'balance', purpose: 'list of balances' });
    const dated = await listDatedAmounts(tx, storehouseId, householdIds);
    const balances = rows.map((row) => {
      const amounts = dated.filter(({ householdId }) => householdId === row.householdId);
      return { ...row, aged: ageDebts({ amounts, todayOn }) };
    });
    return { balances, next, currency };
  });
}

/** Exists, then theirs, then written down. */
async function openAccountOf(
  tx: Tx,
  context: Context,
  { householdId, what }: { householdId: string; what: string },
): Promise<HouseholdRow> {
  const household = await loadHousehold(tx, context.actor.storehouseId, householdId);
  if (!mayReadAccountOf(context.actor, householdId)) throw new Problem('not-your-household');
  await notePrivateRead(tx, context, {
    householdIds: [householdId],
    what,
    purpose: 'books of the storehouse',
  });
  return household;
}

/** A deposit booked back to an earlier day than it came on was not held then, so it is left out. */
function heldByBuy(lines: readonly DepositLine[]): { deposits: HeldDeposit[]; names: Map<string, string> } {
  const sums = new Map<string, number>();
  for (const { buyId, heldMinorUnits } of lines) sums.set(buyId, (sums.get(buyId) ?? 0) + heldMinorUnits);
  const deposits = [...sums]
    .filter(([, amountMinorUnits]) => amountMinorUnits > 0)
    .map(([buyId, amountMinorUnits]) => ({ buyId, amountMinorUnits }));
  return { deposits, names: new Map(lines.map(({ buyId, buyName }) => [buyId, buyName])) };
}
