import { type CheckPlan, TEARDOWN_PLAN } from './seam-window.ts';

/** A good check, or a container that was closed. Units: milliseconds since 1970; `kind` names the container. Errors: none. */
export type Sealed = { readonly atMs: number; readonly kind: string };

/**
 * When the next check of what a machine closes at a line comes due: with its first container when there is no good check,
 * later with the hour, the count or another kind of container, whichever is first. `closedSince` are those closed since the
 * good check, in the order of their serials. Null while nothing is: a line that stands still needs no check.
 * Units: milliseconds since 1970. Errors: none. Source: as the plan.
 */
export function checkDueAt(
  lastGood: Sealed | null,
  closedSince: readonly Sealed[],
  plan: CheckPlan = TEARDOWN_PLAN,
): number | null {
  const [first] = closedSince;
  if (!first) return null;
  if (lastGood === null) return first.atMs;
  const byCount = closedSince[plan.everyContainers - 1];
  const byKind = closedSince.find(({ kind }) => kind !== lastGood.kind);
  const moments = [byCount, byKind].flatMap((one) => (one ? [one.atMs] : []));
  return Math.min(lastGood.atMs + plan.everyMinutes * 60_000, ...moments);
}
