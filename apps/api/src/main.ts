import { randomBytes } from 'node:crypto';
import { serve } from '@hono/node-server';
import { openDatabase, StartRefusal } from '@sheafbook/db';
import { z } from 'zod';
import { createApp } from './app.ts';
import { readConfig } from './platform/config.ts';
import { keepHouse } from './platform/keep-house.ts';
import { openLog } from './platform/log.ts';
import { openMail } from './platform/mail.ts';
import { startWork } from './worker/start-work.ts';
import { TASKS } from './worker/tasks.ts';

const DAY_MILLISECONDS = 24 * 60 * 60 * 1000;

/** Serves the API for a real group: DATABASE_URL, or an embedded PostgreSQL with its data in .sheafbook/. */
async function start(): Promise<void> {
  const config = readConfig(process.env);
  const log = openLog(config.logLevel);
  const database = await openDatabase({
    env: process.env,
    dataFolder: process.env.SHEAFBOOK_DATA ?? '.sheafbook',
    log: (line) => log.info(line),
  });
  const mail = config.mail && openMail(config.mail);
  const { publicUrl } = config;
  const outside = { db: database.db, sql: database.sql, now: () => new Date(), randomBytes, mail, publicUrl };
  const app = createApp({ outside, config, log });
  const server = serve({ fetch: app.fetch, port: config.port, hostname: config.host });
  log.info(`Sheafbook answers at ${config.publicUrl} (${database.where} PostgreSQL)`);

  const workshop = { outside, tasks: TASKS, log };
  const worker = config.worksInside ? await startWork({ workshop, appUrl: database.appUrl }) : undefined;
  await keepHouse(outside, log);
  setInterval(() => void keepHouse(outside, log), DAY_MILLISECONDS).unref();
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.once(signal, () => {
      const stopped = worker?.stop();
      server.close(
        () =>
          void Promise.resolve(stopped)
            .then(() => database.close())
            .then(() => process.exit(0)),
      );
      setTimeout(() => process.exit(1), 10_000).unref();
    });
  }
}

/** A mistake that whoever runs the book can mend is told in words, without a stack. */
start().catch((error: unknown) => {
  if (error instanceof StartRefusal) console.error(error.message);
  else if (error instanceof z.ZodError) console.error(z.prettifyError(error));
  else if (isUnreachable(error)) console.error(`The database does not answer: ${error.message}`);
  else console.error(error);
  process.exit(1);
});

function isUnreachable(error: unknown): error is Error {
  const code = error instanceof Error && 'code' in error ? error.code : '';
  return ['ECONNREFUSED', 'ENOTFOUND', 'EHOSTUNREACH', 'CONNECT_TIMEOUT', '28P01', '3D000'].includes(
    String(code),
  );
}
