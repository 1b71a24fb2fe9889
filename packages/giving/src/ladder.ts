import type { Outcome } from '@sheafbook/keeping';

/** The steps that food goes down, best first. Units: none. Errors: none. */
export const LADDER = ['own-kitchen', 'members', 'pantry', 'animals', 'compost', 'discard'] as const;

/** One of `LADDER`. Units: none. Errors: none. */
export type LadderStep = (typeof LADDER)[number];

/** What decides how far down something must go. Units: none. Errors: none. */
export type OnTheLadder = {
  /** The best that its last inspection allows; null when nobody looked. */
  readonly inspected: Outcome | null;
  readonly isOnHold: boolean;
  readonly isTreatedSeed: boolean;
  readonly isPastEatFirst: boolean;
  readonly isOfferOver: boolean;
  /** Whether no pantry takes it any more by its card, which may take some foods past their date. */
  readonly isGiftClosed: boolean;
  readonly isMouldy: boolean;
};

/**
 * Whether the last inspection lets something go to a pantry: to the kitchen soon is too late for one.
 * Units: none; null when nobody looked. Errors: none. Source: common practice, no source.
 */
export const inspectionLetsGive = (inspected: Outcome | null): boolean =>
  inspected === null || inspected === 'table';

/**
 * The steps that are still open to something, best first. Treated seed and mould reach neither people nor animals; what is on
 * hold goes nowhere; what was not found fit for a table goes to animals at best.
 * Units: none. Errors: none. Source: common practice, no source; FDA 21 CFR 2.25 for treated seed (from memory).
 */
export function openSteps(thing: OnTheLadder): LadderStep[] {
  if (thing.isOnHold) return [];
  if (thing.isTreatedSeed || thing.isMouldy || thing.inspected === 'discard') return ['discard'];
  return LADDER.filter((step) => isOpen(step, thing));
}

function isOpen(step: LadderStep, thing: OnTheLadder): boolean {
  const { inspected } = thing;
  const isForTable =
    inspected === null ? !thing.isPastEatFirst : inspected === 'table' || inspected === 'kitchen-soon';
  if (step === 'own-kitchen') return isForTable;
  if (step === 'members') return isForTable && !thing.isOfferOver;
  if (step === 'pantry') return inspectionLetsGive(inspected) && !thing.isGiftClosed;
  if (step === 'animals') return inspected !== 'compost';
  return true;
}
