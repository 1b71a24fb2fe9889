import type { Tx } from '@sheafbook/db';
import {
  type AuditFinding,
  type AuditInput,
  type AuditSplit,
  accountsDrifted,
  auditBook,
  unitsOutOfBalance,
} from '@sheafbook/ledger';
import { freezeSplit, frozenSplitText, thawSplit } from '@sheafbook/sharing';
import type { Solver } from '@sheafbook/solve';
import type { Actor } from '../../platform/actor.ts';
import type { Context, Outside } from '../../platform/context.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadFillSolver, type Refilled, refill } from '../fill/use-cases.ts';
import { listDigestsAgain } from '../period/use-cases.ts';
import {
  listAccounts,
  listBuys,
  listCodes,
  listContainers,
  listCostLines,
  listEntries,
  listFills,
  listHolds,
  listLots,
  listMovements,
  listOpenPledges,
  listReviewedHouseholdIds,
  listSessions,
  listSplits,
  listUnits,
  loadStorehouseName,
  type StoredFill,
  type StoredSplit,
} from './queries.ts';
import { listBlockedTimes, listLoansOfAll } from './queries-loans.ts';
import { listBankMatches, listTinCounts } from './queries-till.ts';

export type Audit = {
  readonly storehouseId: string;
  readonly storehouse: string;
  readonly holds: boolean;
  readonly findings: readonly AuditFinding[];
  readonly ledger: {
    readonly entries: number;
    readonly movements: number;
    readonly unitsOutOfBalance: number;
    readonly accountsDrifted: number;
  };
};

// One snapshot for all of it, and the right to read what a fill and a split by need were reckoned from.
const REVIEW = { task: 'review', isReadOnly: true } as const;

/** Recomputes every balance from the movements and tests every invariant of the storehouse's book. */
export function audit(context: Context): Promise<Audit> {
  return withTx(context, (tx) => auditAsReviewer(tx, context), REVIEW);
}

/** The same inside a transaction under the task `review`: each household whose fills and splits run again is told. */
export async function auditAsReviewer(tx: Tx, context: Context): Promise<Audit> {
  const { storehouseId } = context.actor;
  const householdIds = await listReviewedHouseholdIds(tx, storehouseId);
  const what = 'ceilings and needs, for running fills and splits again';
  await notePrivateRead(tx, context, { householdIds, what, purpose: 'audit' });
  return auditInside(tx, storehouseId);
}

/** The same by whoever runs the server. Nobody of the storehouse looks, so there is no one to write down. */
export function auditAsOperator(outside: Outside, storehouseId: string): Promise<Audit> {
  const actor: Actor = {
    storehouseId,
    loginId: '',
    personId: '',
    householdId: null,
    isHelping: false,
    duties: new Set(),
    currency: '',
    timeZone: 'UTC',
  };
  return withTx({ ...outside, actor }, (tx) => auditInside(tx, storehouseId), REVIEW);
}

/** The same inside a transaction that runs already, such as an import's. */
export async function auditInside(tx: Tx, storehouseId: string): Promise<Audit> {
  const input = await gather(tx, storehouseId, await loadFillSolver());
  const findings = auditBook(input);
  return {
    storehouseId,
    storehouse: await loadStorehouseName(tx, storehouseId),
    holds: findings.every((finding) => finding.holds),
    findings,
    ledger: {
      entries: input.entries.length,
      movements: input.movements.length,
      unitsOutOfBalance: unitsOutOfBalance(input).length,
      accountsDrifted: accountsDrifted(input).length,
    },
  };
}

async function gather(tx: Tx, storehouseId: string, solver: Solver): Promise<AuditInput> {
  const splits = await listSplits(tx, storehouseId);
  const fills = (await listFills(tx, storehouseId)).map((fill) => ({ fill, again: refill(fill, solver) }));
  return {
    units: await listUnits(tx, storehouseId),
    accounts: await listAccounts(tx, storehouseId),
    entries: await listEntries(tx, storehouseId),
    movements: await listMovements(tx, storehouseId),
    buys: await listBuys(tx, storehouseId),
    sessions: await listSessions(tx, storehouseId),
    costLines: await listCostLines(tx, storehouseId),
    splits: splits.map(toAuditSplit),
    reruns: [...fills.flatMap(toFillRerun), ...splits.map(toSplitRerun)],
    lots: await listLots(tx, storehouseId),
    containers: await listContainers(tx, storehouseId),
    codes: await listCodes(tx, storehouseId),
    pledges: [
      ...(await listOpenPledges(tx, storehouseId)).map((pledge) => ({ ...pledge, ...NOT_ALLOTTED })),
      ...fills.flatMap(({ fill, again }) => (fill.isInForce ? again.pledges : [])),
    ],
    fills: fills.flatMap(({ fill, again }) =>
      fill.isInForce && again.isBest !== null ? [{ fillId: fill.fillId, isBest: again.isBest }] : [],
    ),
    holds: await listHolds(tx, storehouseId),
    bankMatches: await listBankMatches(tx, storehouseId),
    tinCounts: await listTinCounts(tx, storehouseId),
    bookings: await listBlockedTimes(tx, storehouseId),
    loans: await listLoansOfAll(tx, storehouseId),
    digests: await listDigestsAgain(tx, storehouseId),
  };
}

const NOT_ALLOTTED = { step: 1, allotted: null, isWithinCeiling: null } as const;

type FillAgain = { readonly fill: StoredFill; readonly again: Refilled };

const toFillRerun = ({ fill, again }: FillAgain) =>
  again.isSame === null ? [] : [{ kind: 'fill' as const, id: fill.fillId, isSame: again.isSame }];

function toSplitRerun({ splitId, inputs, answer }: StoredSplit) {
  const again = freezeSplit(thawSplit(inputs));
  // What was answered then is kept twice, with the private inputs and without; both must come out again.
  const kept = frozenSplitText({ ...inputs, ...answer });
  const isSame =
    frozenSplitText(again) === frozenSplitText(inputs) && kept === frozenSplitText({ ...answer, ...again });
  return { kind: 'split' as const, id: splitId, isSame };
}

/**
 * A split as it was booked. Where bags stay whole, what makes no whole bag is not there to award; what the claims leave
 * over goes to common stock beyond any claim, so it is taken off again.
 */
function toAuditSplit({ splitId, answer, shares }: StoredSplit): AuditSplit {
  const { availableUnits, stepUnits, surplusUnits } = answer;
  const claimedGrams = shares.reduce((sum, share) => sum + share.claimGrams, 0);
  const isShort = availableUnits < claimedGrams;
  return {
    splitId,
    availableGrams: isShort ? availableUnits - (availableUnits % stepUnits) : availableUnits,
    awards: shares.map(({ isCommon, claimGrams, awardGrams }) => ({
      claimGrams,
      awardGrams: isCommon ? awardGrams - surplusUnits : awardGrams,
    })),
  };
}
