export * from './split-by-weight.ts';
