/**
 * The stages of a buy in their order, the way out last.
 * Units: none. Errors: none. Source: job map 2.
 */
export const BUY_STAGES = [
  'planning',
  'gathering',
  'fixed',
  'ordered',
  'landed',
  'shared-out',
  'closed',
  'called-off',
] as const;

/** Where a buy stands. Units: none. Errors: none. */
export type BuyStage = (typeof BUY_STAGES)[number];

const NEXT_STAGES: Readonly<Record<BuyStage, readonly BuyStage[]>> = {
  planning: ['gathering', 'called-off'],
  gathering: ['fixed', 'called-off'],
  fixed: ['ordered', 'gathering', 'called-off'], // back to gathering is the one step back the trade allows
  ordered: ['landed', 'called-off'],
  landed: ['shared-out'],
  'shared-out': ['closed'],
  closed: [],
  'called-off': [],
};

/**
 * Tells whether a buy may move from one stage to another at all; `stageGuards` then says what is missing for it.
 * Units: none. Errors: none. Source: job map 2.
 */
export const mayMove = (from: BuyStage, to: BuyStage): boolean => NEXT_STAGES[from].includes(to);
