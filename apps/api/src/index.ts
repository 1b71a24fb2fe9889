export { type AppType, createApp } from './app.ts';
export type { Actor, Duty } from './platform/actor.ts';
export { type Config, readConfig } from './platform/config.ts';
export type { Outside } from './platform/context.ts';
export { openLog } from './platform/log.ts';
