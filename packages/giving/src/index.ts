export * from './first-refusal.ts';
export * from './gift-value.ts';
export * from './ladder.ts';
export * from './loading-order.ts';
export * from './matching.ts';
export { nearestDoorFirst } from './matching-check.ts';
export * from './matching-terms.ts';
export * from './rule-card.ts';
