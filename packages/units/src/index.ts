export * from './assert.ts';
export * from './fraction.ts';
