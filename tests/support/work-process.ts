import { randomBytes } from 'node:crypto';
import { openLog, startWork } from '@sheafbook/api';
import { connectApp } from '@sheafbook/db';
import { TALLY_TASKS } from './tally.ts';

// A worker in a process of its own, on the database of the first argument, until it is killed.
const [appUrl = ''] = process.argv.slice(2);
const outside = { ...connectApp(appUrl), now: () => new Date(), randomBytes };
const workshop = { outside, tasks: TALLY_TASKS, log: openLog('error') };
await startWork({ workshop, appUrl, sweepMilliseconds: 200 });
console.log(JSON.stringify({ isReady: true }));
