import { assert, assertWhole } from '@sheafbook/units';
import { type Buffers, blockedBy, type Interval, overlaps } from './interval.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;

/**
 * How a group lends.
 * Units: hours. Errors: none. Source: common practice, no source.
 */
export const LENDING_RULES = { graceHours: 2, vetoHours: 24 } as const;

/**
 * The fee for bringing something back late: one for each day that was begun after the grace.
 * Units: milliseconds, hours, minor units. Errors: AssertionError when the fee or the grace is not whole and ≥ 0.
 */
export function lateFee(
  { dueMs, backMs }: { readonly dueMs: number; readonly backMs: number },
  feeMinorUnits: number,
  graceHours: number = LENDING_RULES.graceHours,
): number {
  assertWhole(feeMinorUnits, 'feeMinorUnits');
  assertWhole(graceHours, 'graceHours');
  const lateMs = backMs - dueMs - graceHours * HOUR;
  return lateMs <= 0 ? 0 : Math.ceil(lateMs / DAY) * feeMinorUnits;
}

/** What is held back of a deposit. Units: minor units. Errors: none by itself. */
export type LoanCosts = {
  readonly lateMinorUnits: number;
  readonly partsMinorUnits: number;
  readonly damageMinorUnits: number;
};

/**
 * What of a deposit goes back, what stays, and what is charged beyond it.
 * Units: minor units; refund + kept = deposit, kept + charged = costs. Errors: AssertionError when a figure is not whole and ≥ 0.
 */
export function settleDeposit(
  depositMinorUnits: number,
  costs: LoanCosts,
): {
  readonly refundMinorUnits: number;
  readonly keptMinorUnits: number;
  readonly chargedMinorUnits: number;
} {
  assertWhole(depositMinorUnits, 'depositMinorUnits');
  for (const [name, value] of Object.entries(costs)) assertWhole(value, name);
  const owed = costs.lateMinorUnits + costs.partsMinorUnits + costs.damageMinorUnits;
  const keptMinorUnits = Math.min(depositMinorUnits, owed);
  return {
    refundMinorUnits: depositMinorUnits - keptMinorUnits,
    keptMinorUnits,
    chargedMinorUnits: owed - keptMinorUnits,
  };
}

/** A part of something lent. Units: pieces, minor units for one. Errors: none by itself. */
export type LoanPart = {
  readonly partId: string;
  readonly out: number;
  readonly back: number;
  readonly minorUnits: number;
  readonly isCritical: boolean;
};

/**
 * What is missing of the parts that went out, what it costs, and whether the thing can be lent on.
 * Units: pieces, minor units. Errors: AssertionError when more came back than went out.
 */
export function missingParts(parts: readonly LoanPart[]): {
  readonly missing: readonly { readonly partId: string; readonly pieces: number }[];
  readonly minorUnits: number;
  readonly isOutOfService: boolean;
} {
  for (const { out, back } of parts) {
    assertWhole(out, 'out');
    assertWhole(back, 'back');
    assert(back <= out, 'no more parts come back than went out');
  }
  const gone = parts.filter(({ out, back }) => back < out);
  return {
    missing: gone.map(({ partId, out, back }) => ({ partId, pieces: out - back })),
    minorUnits: gone.reduce((sum, { out, back, minorUnits }) => sum + (out - back) * minorUnits, 0),
    isOutOfService: gone.some(({ isCritical }) => isCritical),
  };
}

/** A loan that might be handed on. Units: milliseconds. Errors: none by itself. */
export type Handable = Interval & { readonly borrowerId: string };

/** Why two borrowers can't hand on. Units: none. Errors: none. */
export type RelayRefusal =
  | 'not-relayed'
  | 'same-borrower'
  | 'overlap'
  | 'too-late-to-veto'
  | 'allergen-change';

/**
 * Whether one borrower may hand a thing straight to the next: it must allow that, the first loan must end before the second
 * begins, the keeper must still have time to say no, and a mill that changes allergens never goes on without a clean.
 * Units: milliseconds. Errors: none.
 */
export function relayRefusals(
  from: Handable,
  to: Handable,
  facts: { readonly mayRelay: boolean; readonly changesAllergen: boolean; readonly nowMs: number },
): RelayRefusal[] {
  const refusals: RelayRefusal[] = [];
  if (!facts.mayRelay) refusals.push('not-relayed');
  if (from.borrowerId === to.borrowerId) refusals.push('same-borrower');
  if (from.endMs > to.startMs) refusals.push('overlap');
  if (!mayStillVeto(to, facts.nowMs)) refusals.push('too-late-to-veto');
  if (facts.changesAllergen) refusals.push('allergen-change');
  return refusals;
}

/**
 * Whether the keeper may still say no to a thing being handed straight on: until a day before, so that whoever takes it can
 * look for another.
 * Units: milliseconds. Errors: none.
 */
export const mayStillVeto = (to: Pick<Interval, 'startMs'>, nowMs: number): boolean =>
  to.startMs - nowMs >= LENDING_RULES.vetoHours * HOUR;

/** Somebody who waits for a thing. Units: milliseconds; `seat` breaks ties. Errors: none by itself. */
export type Waiting = Interval &
  Buffers & { readonly waitingId: string; readonly askedAtMs: number; readonly seat: number };

/**
 * Who gets a time that came free: the earliest request whose whole time, buffers and all, fits among what is still taken.
 * Units: milliseconds. Shape: null when nobody's does. Errors: none.
 */
export function nextWaiting(
  waiting: readonly Waiting[],
  stillTaken: readonly (Interval & Buffers)[],
): string | null {
  const blocked = stillTaken.map(blockedBy);
  const fits = waiting
    .filter((request) => blocked.every((other) => !overlaps(blockedBy(request), other)))
    .toSorted((a, b) => a.askedAtMs - b.askedAtMs || a.seat - b.seat);
  return fits[0]?.waitingId ?? null;
}

/** When a thing wants service. Units: uses and days, null where it has no such interval. Errors: none. */
export type ServicePlan = { readonly everyUses: number | null; readonly everyDays: number | null };

/**
 * Whether a thing is due for service, and how many uses and days it has left: whichever ends first. A due thing may finish
 * the loan it is on and takes no new one.
 * Units: uses, whole days. Errors: AssertionError when a figure is not whole and ≥ 0.
 */
export function serviceDue(
  since: { readonly uses: number; readonly days: number },
  plan: ServicePlan,
): { readonly isDue: boolean; readonly usesLeft: number | null; readonly daysLeft: number | null } {
  assertWhole(since.uses, 'uses');
  assertWhole(since.days, 'days');
  const usesLeft = plan.everyUses === null ? null : Math.max(0, plan.everyUses - since.uses);
  const daysLeft = plan.everyDays === null ? null : Math.max(0, plan.everyDays - since.days);
  return { isDue: usesLeft === 0 || daysLeft === 0, usesLeft, daysLeft };
}

/** When a thing comes due, and by what: its calendar, or its uses in the bookings ahead. Units: whole days. Errors: none. */
export type ServiceAhead = { readonly inDays: number; readonly because: 'days' | 'uses' };

/**
 * In how many days a thing will be due for service, as far as its calendar and its bookings tell: the sooner of the two,
 * its days where both fall together. Each booking ahead counts as many uses as told. Null when it is beyond the horizon.
 * Units: whole days from today, uses. Errors: AssertionError when a figure is not whole and ≥ 0.
 * Source: that bookings ahead use as much as those before did is common practice, no source.
 */
export function serviceAhead(
  left: { readonly usesLeft: number | null; readonly daysLeft: number | null },
  ahead: {
    readonly bookingsInDays: readonly number[];
    readonly usesEach: number;
    readonly horizonDays: number;
  },
): ServiceAhead | null {
  const { bookingsInDays, usesEach, horizonDays } = ahead;
  assertWhole(usesEach, 'usesEach');
  assertWhole(horizonDays, 'horizonDays');
  for (const days of bookingsInDays) assertWhole(days, 'bookingsInDays');
  const { usesLeft, daysLeft } = left;
  const lastBooking =
    usesLeft === null || usesEach === 0 ? null : Math.max(1, Math.ceil(usesLeft / usesEach));
  const byUses = usesLeft === 0 ? 0 : bookingsInDays.toSorted((a, b) => a - b)[(lastBooking ?? 0) - 1];
  const due: ServiceAhead[] = [
    ...(daysLeft === null ? [] : [{ inDays: daysLeft, because: 'days' as const }]),
    ...(byUses === undefined ? [] : [{ inDays: byUses, because: 'uses' as const }]),
  ];
  const [first] = due.toSorted((a, b) => a.inDays - b.inDays);
  return first && first.inDays <= horizonDays ? first : null;
}
