export * from './free-times.ts';
export * from './interval.ts';
export * from './loan-rules.ts';
export * from './partition.ts';
export * from './pool.ts';
export * from './still-out.ts';
export * from './use-figures.ts';
export * from './wall-clock.ts';
