export * from './model.ts';
export * from './solver.ts';
