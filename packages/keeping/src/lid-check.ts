import type { Barrier } from './container-traits.ts';
import type { Outcome } from './inspection.ts';
import type { TreatmentCode } from './treatment.ts';

const HOUR_MS = 3_600_000;
const DRAWN_AFTER_HOURS = 24;

/** What can be said of a lid that was looked at. Units: none. Errors: none. */
export const LID_SAYINGS = ['held', 'loose'] as const;

/** One of `LID_SAYINGS`. Units: none. Errors: none. */
export type LidSaying = (typeof LID_SAYINGS)[number];

/**
 * Where the lid of a jar stands: it is too early to tell; it is to be looked at; it was found loose and waits for whoever closes
 * it again or eats it; it held; or a look at the whole jar has answered for it.
 * Units: none. Errors: none.
 */
export type LidState = 'early' | 'due' | 'loose' | 'held' | 'looked-at';

/** Whether a lid still asks for something. Units: none. Errors: none. */
export const isLidOpen = (state: LidState): boolean => state !== 'held' && state !== 'looked-at';

/**
 * Whether something draws the lid of such a container down: a vacuum, or an absorber that takes a fifth of the air, in glass.
 * What nobody wrote down may have been either.
 * Units: none. Errors: none. Source: common practice, no source.
 */
export const isLidDrawn = (barrier: Barrier | null, treatment: TreatmentCode | null): boolean =>
  barrier === 'glass' && (treatment === null || treatment === 'vacuum' || treatment === 'oxygen-absorber');

/**
 * From when on the lid of a jar tells whether it was closed well. An absorber takes the better part of a day, so that before it
 * neither a lid that is down nor one that is up says anything.
 * Units: milliseconds since 1970. Errors: none. Source: common practice, no source.
 */
export const lidDueMs = (closedMs: number): number => closedMs + DRAWN_AFTER_HOURS * HOUR_MS;

/**
 * Where a lid stands at a moment. What was said of an earlier closing counts for nothing. A whole look at the jar a day after it
 * was closed answers for its lid too, and one that left it to less than the table ends the question.
 * Units: milliseconds since 1970. Errors: none.
 */
export function lidStateOf(
  lid: {
    readonly closedMs: number;
    readonly said: { readonly says: LidSaying; readonly ofClosedMs: number } | null;
    readonly lastLook: { readonly atMs: number; readonly outcome: Outcome } | null;
  },
  nowMs: number,
): LidState {
  const { closedMs, said, lastLook } = lid;
  const dueMs = lidDueMs(closedMs);
  if (lastLook && lastLook.atMs >= closedMs && (lastLook.atMs >= dueMs || lastLook.outcome !== 'table'))
    return 'looked-at';
  if (said && said.ofClosedMs === closedMs) return said.says;
  return nowMs < dueMs ? 'early' : 'due';
}
