import { randomBytes } from 'node:crypto';
import { openDatabase, refuseUnless, StartRefusal } from '@sheafbook/db';
import { z } from 'zod';
import { readConfig } from './platform/config.ts';
import { openLog } from './platform/log.ts';
import { openMail } from './platform/mail.ts';
import { runWorkOnce } from './worker/run-work-once.ts';
import { startWork } from './worker/start-work.ts';
import { TASKS } from './worker/tasks.ts';

/** `npm run work`: does the work in the background in a process of its own; with `-- --once`, what is due, and ends. */
async function work(): Promise<void> {
  const { DATABASE_URL } = process.env;
  refuseUnless(
    DATABASE_URL,
    'npm run work needs DATABASE_URL: without it the book has a server of its own, and npm start does its work inside',
  );
  const config = readConfig(process.env);
  const log = openLog(config.logLevel);
  const database = await openDatabase({ env: process.env, dataFolder: '', log: (line) => log.info(line) });
  const { db, sql, appUrl } = database;
  const mail = config.mail && openMail(config.mail);
  const { publicUrl } = config;
  const outside = { db, sql, now: () => new Date(), randomBytes, mail, publicUrl };
  const workshop = { outside, tasks: TASKS, log };
  if (process.argv.includes('--once')) {
    log.info(await runWorkOnce(workshop));
    return database.close();
  }
  const worker = await startWork({ workshop, appUrl });
  log.info('Sheafbook works in the background');
  for (const signal of ['SIGINT', 'SIGTERM'] as const)
    process.once(signal, () => {
      void worker
        .stop()
        .then(() => database.close())
        .then(() => process.exit(0));
      setTimeout(() => process.exit(1), 10_000).unref();
    });
}

work().catch((error: unknown) => {
  if (error instanceof StartRefusal) console.error(error.message);
  else if (error instanceof z.ZodError) console.error(z.prettifyError(error));
  else console.error(error);
  process.exit(1);
});
