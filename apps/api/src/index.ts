export { type AppType, createApp } from './app.ts';
export type { Actor, Duty } from './platform/actor.ts';
export { type Config, readConfig } from './platform/config.ts';
export type { Outside } from './platform/context.ts';
export { openLog } from './platform/log.ts';
export { type Mail, openMail } from './platform/mail.ts';
export type { WorkTask, WorkTasks } from './platform/work/task.ts';
export { enqueueEverywhere, runWorkOnce } from './work/run-work-once.ts';
export { TASKS } from './work/tasks.ts';
