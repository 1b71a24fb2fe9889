export { bulkFromCup, bulkFromTestWeight, bulkOf } from './bulk-density.ts';
export * from './container-kind.ts';
export * from './container-plan.ts';
export * from './containers-for.ts';
export * from './food.ts';
export * from './level-fill.ts';
export * from './nourishment.ts';
export * from './reference-foods.ts';
