export * from './buy.ts';
export * from './container.ts';
export * from './food.ts';
export * from './landing.ts';
export * from './ledger.ts';
export * from './money.ts';
export * from './people.ts';
export * from './sharing-out.ts';
