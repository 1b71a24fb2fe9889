import type { AccountKind } from '../account-key.ts';
import type { BuyStage } from '../buy-stages.ts';
import type { Guard } from '../guard.ts';
import type { OutsideKind } from '../outside.ts';

/** A unit of the book. Units: none. Errors: none. */
export type AuditUnit = { readonly unitId: string; readonly kind: 'currency' | 'lot' | 'supply' };

/**
 * An account with its running totals. `outsideKind` is set when its vessel stands for the outside.
 * Units: totals in the account's unit. Errors: none.
 */
export type AuditAccount = {
  readonly accountId: string;
  readonly unitId: string;
  readonly kind: AccountKind;
  readonly vesselId: string | null;
  readonly outsideKind: OutsideKind | null;
  readonly ownerId: string | null;
  readonly causeId: string | null;
  readonly guard: Guard;
  readonly inflow: number;
  readonly outflow: number;
};

/** An entry, by its running number and the UTC instant it was written down. Units: none. Errors: none. */
export type AuditEntry = {
  readonly entryId: string;
  readonly entryNo: number;
  readonly recordedAt: string;
  readonly reversesEntryId: string | null;
};

/** A posted movement. Units: `amount` in the unit's own. Errors: none. */
export type AuditMovement = {
  readonly entryId: string;
  readonly line: number;
  readonly unitId: string;
  readonly sourceId: string;
  readonly destinationId: string;
  readonly amount: number;
};

/** A buy, where it stands, and every move of its stage in order. Units: none. Errors: none. */
export type AuditBuy = {
  readonly buyId: string;
  readonly stage: BuyStage;
  readonly moves: readonly { readonly from: BuyStage; readonly to: BuyStage }[];
};

/** A packing day and where it stands. Units: none. Errors: none. */
export type AuditSession = {
  readonly sessionId: string;
  readonly stage: 'open' | 'running' | 'signed' | 'settled' | 'called-off';
};

/**
 * One cost line with its frozen weights and what each bore. Weights are bigints: scaled fractions can pass 2^53. A line
 * that brings charges up to what came later holds differences; `chargedBefore…` is what the same cost came to until then,
 * in all and for each of the shares, and is left out of a line that was the first.
 * Units: minor units; weights have none. Errors: none.
 */
export type AuditCostLine = {
  readonly costLineId: string;
  readonly totalMinorUnits: number;
  readonly chargedBeforeMinorUnits?: number;
  readonly shares: readonly {
    readonly weight: bigint;
    readonly amountMinorUnits: number;
    readonly chargedBeforeMinorUnits?: number;
  }[];
};

/** A split as it was awarded. Units: grams. Errors: none. */
export type AuditSplit = {
  readonly splitId: string;
  readonly availableGrams: number;
  readonly awards: readonly { readonly claimGrams: number; readonly awardGrams: number }[];
};

/** A frozen answer that was computed again from its frozen inputs. Units: none. Errors: none. */
export type AuditRerun = {
  readonly kind: 'fill' | 'split' | 'settlement';
  readonly id: string;
  readonly isSame: boolean;
};

/** A lot and what it comes from: a delivery, an intake, or other lots. Units: none. Errors: none. */
export type AuditLot = {
  readonly lotId: string;
  readonly deliveryId: string | null;
  readonly intakeId: string | null;
  readonly parentLotIds: readonly string[];
};

/** A container and its level capacity for its food. Units: grams. Errors: none. */
export type AuditContainer = {
  readonly containerId: string;
  readonly lotId: string;
  readonly netGrams: number;
  readonly capacityGrams: number;
};

/**
 * A pledge and what the fixed fill gave it; null before there is one.
 * Units: the five amounts in the whole units that the line is filled in, pounds for a line of 50 lb bags, since steps of
 * 5 lb are no whole grams. Errors: none.
 */
export type AuditPledge = {
  readonly pledgeId: string;
  readonly least: number;
  readonly wanted: number;
  readonly most: number;
  readonly step: number;
  readonly allotted: number | null;
  readonly isWithinCeiling: boolean | null;
};

/** A fill whose key was compared with the least one that can be had. Units: none. Errors: none. */
export type AuditFill = { readonly fillId: string; readonly isBest: boolean };

/**
 * A hold on a lot, or on some of its vessels. It covers what was written down after `heldAt` and before `releasedAt`,
 * or ever since when it still stands. `releasedByLoginIds` is null where nobody let it go: it ended with its bag, which
 * was thrown away or went back.
 * Units: UTC instants. Errors: none.
 */
export type AuditHold = {
  readonly holdId: string;
  readonly lotUnitId: string;
  readonly vesselIds: readonly string[] | null;
  readonly heldAt: string;
  readonly releasedAt: string | null;
  readonly releasedByLoginIds: readonly string[] | null;
};

/** A line of the bank that stands as an entry of the book. Units: minor units, above zero came in. Errors: none. */
export type AuditBankMatch = {
  readonly lineId: string;
  readonly entryId: string;
  readonly lineMinorUnits: number;
};

/** A count of the cash tin: counted less expected, and the entry that booked it. Units: minor units. Errors: none. */
export type AuditTinCount = {
  readonly countId: string;
  readonly entryId: string | null;
  readonly differenceMinorUnits: number;
};

/** The time that a booking holds a piece, its buffers with it. Units: milliseconds. Errors: none. */
export type AuditBooking = {
  readonly bookingId: string;
  readonly unitId: string;
  readonly startMs: number;
  readonly endMs: number;
};

/**
 * A loan: from when to when, which piece of which thing, its parts out and in, what it left as a deposit.
 * Units: milliseconds, pieces. `inMs` is null while it is out. Errors: none.
 */
export type AuditLoan = {
  readonly loanId: string;
  readonly unitId: string;
  readonly itemId: string;
  readonly itemUnits: number;
  readonly outMs: number;
  readonly inMs: number | null;
  readonly parts: readonly { readonly out: number; readonly back: number | null }[];
  /** Whether it went out without a piece of a critical part. */
  readonly isCrippled: boolean;
};

/** All that the audit looks at, as plain rows read in one snapshot. Units: as in the rows. Errors: none. */
export type AuditInput = {
  readonly units: readonly AuditUnit[];
  readonly accounts: readonly AuditAccount[];
  readonly entries: readonly AuditEntry[];
  readonly movements: readonly AuditMovement[];
  readonly buys: readonly AuditBuy[];
  readonly sessions: readonly AuditSession[];
  readonly costLines: readonly AuditCostLine[];
  readonly splits: readonly AuditSplit[];
  readonly reruns: readonly AuditRerun[];
  readonly lots: readonly AuditLot[];
  readonly containers: readonly AuditContainer[];
  readonly codes: readonly string[];
  readonly pledges: readonly AuditPledge[];
  readonly fills: readonly AuditFill[];
  readonly holds: readonly AuditHold[];
  readonly bankMatches: readonly AuditBankMatch[];
  readonly tinCounts: readonly AuditTinCount[];
  readonly bookings: readonly AuditBooking[];
  readonly loans: readonly AuditLoan[];
  /** Each close that kept a digest, and whether its entries give it again. */
  readonly digests: readonly { readonly closedThrough: string; readonly isSame: boolean }[];
};

/**
 * One invariant, whether it holds, and the figure that shows it.
 * `number` is the invariant's number in the trade's list of twenty, `key` names the invariant for programs. Units: none. Errors: none. Source: job map 15.
 */
export type AuditFinding = {
  readonly invariant: string;
  readonly number: number;
  readonly key: string;
  readonly holds: boolean;
  readonly figure: string;
};
