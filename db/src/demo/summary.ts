import { divideFractions, fraction, GRAMS_PER_UNIT, roundFraction, sumOf } from '@sheafbook/units';
import type { Db, Tx } from '../connect.ts';
import type { Cast, Neighbour } from './cast.ts';
import { askOfKeeping, type KeepingFigures, loadKeeping } from './summary-keeping.ts';
import {
  type ChargeRow,
  countUnsettled,
  type GivingFigures,
  insideStorehouse,
  type LedgerFigures,
  type LoanFigures,
  listBalances,
  listCharges,
  loadBuy,
  loadGiving,
  loadLedger,
  loadLoans,
  loadStorehouse,
  sumAcceptedGrams,
  sumBilledMinorUnits,
  sumChargedMinorUnits,
  sumClearing,
  sumDeliveredGrams,
  sumDeposits,
  sumLostGrams,
  sumOpenWithSuppliers,
  sumPackingCosts,
  sumPouredGrams,
  sumSharedGrams,
  sumUnassignedGrams,
  sumUpPacking,
} from './summary-queries.ts';

export type HouseholdFigures = {
  household: string;
  balanceMinorUnits: number;
  adultEquivalents: number;
  daysCovered: number | null;
  runsOutFirst: string | null;
};

export type PackingFigures = {
  sessions: number;
  containers: number;
  seamChecks: number;
  overlaps: number;
  clearingMinorUnits: number;
};

/** What the demo prints. Parts of the work that the product does not do yet are absent, never zero. */
export type Summary = {
  storehouse: string;
  currency: string;
  buy: {
    stage: string;
    clearingMinorUnits: number;
    billedMinorUnits: number;
    chargedMinorUnits: number;
    deliveredGrams: number;
    sharedGrams: number;
    pouredGrams: number;
    lostGrams: number;
    charges: ChargeRow[];
  };
  households: HouseholdFigures[];
  packing: PackingFigures;
  loans: LoanFigures;
  rotation: { queued: number; poundsAtRiskThisYear: number };
  giving: GivingFigures;
  ledger: LedgerFigures;
  audit: { invariant: string; holds: boolean; figure: string }[];
};

/** Figures that are held against the summary and not printed. */
export type Evidence = {
  depositsMinorUnits: number;
  openWithSuppliersMinorUnits: number;
  unassignedGrams: number;
  /** Packing days that are signed for and not settled. */
  unsettledSessions: number;
  packingCosts: { settledMinorUnits: number; sharedMinorUnits: number };
  /** What receipts of pantries say that they kept. */
  acceptedGrams: number;
  keeping: KeepingFigures & Awaited<ReturnType<typeof askOfKeeping>>;
  /** What each household's own statement closes with, in the order of seats. */
  statementsMinorUnits: number[];
  auditedLedger: LedgerFigures;
  /** What the page of savings says was paid, food by food, and whether it knows what was saved. */
  paidByFood: { minorUnits: number; isSavedKnown: boolean };
};

type Audit = { findings: Summary['audit']; ledger: LedgerFigures };
type Coverage = { adultEquivalents: number; wholeDays: number | null; runsOutFirst: string | null };

/**
 * Sums the story up: the buy, the balances and the ledger from the tables, coverage and statements as each household is
 * answered, the audit as the reviewer is.
 */
export async function sumUp(
  db: Db,
  cast: Cast,
  buyId: string,
): Promise<{ summary: Summary; evidence: Evidence }> {
  const { findings, ledger: auditedLedger } = await cast.reviewer.get<Audit>('/audit');
  const seen = [];
  for (const neighbour of cast.neighbours) seen.push(await ask(neighbour));
  const read = await insideStorehouse(db, cast.storehouseId, async (tx) => ({
    ...(await loadStorehouse(tx)),
    buy: await sumUpBuy(tx, buyId),
    balances: await listBalances(tx),
    loans: await loadLoans(tx),
    giving: await loadGiving(tx),
    acceptedGrams: await sumAcceptedGrams(tx),
    keeping: await loadKeeping(tx),
    packing: await sumUpPacking(tx),
    ledger: await loadLedger(tx),
    depositsMinorUnits: await sumDeposits(tx, buyId),
    openWithSuppliersMinorUnits: await sumOpenWithSuppliers(tx, buyId),
    unassignedGrams: await sumUnassignedGrams(tx, buyId),
    unsettledSessions: await countUnsettled(tx),
    packingCosts: await sumPackingCosts(tx),
  }));
  const summary = {
    storehouse: read.name,
    currency: read.currency,
    buy: read.buy,
    households: seen.map(({ neighbour, coverage }) => ({
      household: neighbour.name,
      balanceMinorUnits: read.balances.get(neighbour.householdId) ?? 0,
      adultEquivalents: coverage.adultEquivalents,
      daysCovered: coverage.wholeDays,
      runsOutFirst: coverage.runsOutFirst,
    })),
    packing: read.packing,
    loans: read.loans,
    rotation: await sumUpRotation(cast, seen),
    giving: read.giving,
    ledger: read.ledger,
    audit: findings.map(({ invariant, holds, figure }) => ({ invariant, holds, figure })),
  };
  const { depositsMinorUnits, openWithSuppliersMinorUnits, unassignedGrams } = read;
  const { unsettledSessions, packingCosts } = read;
  const statementsMinorUnits = seen.map(({ closingMinorUnits }) => closingMinorUnits);
  return {
    summary,
    evidence: {
      ...{ depositsMinorUnits, openWithSuppliersMinorUnits, unassignedGrams },
      ...{ unsettledSessions, packingCosts, statementsMinorUnits, auditedLedger },
      acceptedGrams: read.acceptedGrams,
      paidByFood: await askPaidByFood(cast),
      keeping: { ...read.keeping, ...(await askOfKeeping(cast)) },
    },
  };
}

/** What a household is told of its own. */
async function ask(neighbour: Neighbour) {
  const { caller, householdId } = neighbour;
  const coverage = await caller.get<Coverage>('/coverage');
  const statement = await caller.get<{ closingMinorUnits: number }>(
    `/households/${householdId}/statement?from=${STORY_FROM}`,
  );
  const rotation = await caller.get<Rotation>('/rotation');
  return { neighbour, coverage, rotation, closingMinorUnits: statement.closingMinorUnits };
}

type Savings = { foods: { landedMinorUnits: number }[]; savedMinorUnits: number | null };

async function askPaidByFood({ coordinator }: Cast): Promise<Evidence['paidByFood']> {
  const { foods, savedMinorUnits } = await coordinator.get<Savings>('/savings');
  return {
    minorUnits: sumOf(foods.map(({ landedMinorUnits }) => landedMinorUnits)),
    isSavedKnown: savedMinorUnits !== null,
  };
}

type Rotation = { queued: number; risk: { byMonth: { month: string; atRiskGrams: number }[] } };
const YEAR_ENDS = '2026-12';

/** What waits to be eaten on all shelves, the store's own too, and what of it no mouth would reach before the year is over. */
async function sumUpRotation(
  { coordinator }: Cast,
  seen: readonly { rotation: Rotation }[],
): Promise<Summary['rotation']> {
  const all = [...seen.map(({ rotation }) => rotation), await coordinator.get<Rotation>('/rotation/store')];
  const months = all.flatMap(({ risk }) => risk.byMonth).filter(({ month }) => month <= YEAR_ENDS);
  const pounds = divideFractions(
    fraction(sumOf(months.map(({ atRiskGrams }) => atRiskGrams))),
    GRAMS_PER_UNIT.lb,
  );
  return {
    queued: sumOf(all.map(({ queued }) => queued)),
    poundsAtRiskThisYear: Number(roundFraction(pounds)),
  };
}

const STORY_FROM = '2026-09-01';

async function sumUpBuy(tx: Tx, buyId: string): Promise<Summary['buy']> {
  return {
    stage: (await loadBuy(tx, buyId)).stage,
    clearingMinorUnits: await sumClearing(tx, buyId),
    billedMinorUnits: await sumBilledMinorUnits(tx, buyId),
    chargedMinorUnits: await sumChargedMinorUnits(tx, buyId),
    deliveredGrams: await sumDeliveredGrams(tx, buyId),
    sharedGrams: await sumSharedGrams(tx, buyId),
    pouredGrams: await sumPouredGrams(tx, buyId),
    lostGrams: await sumLostGrams(tx, buyId),
    charges: await listCharges(tx, buyId),
  };
}
