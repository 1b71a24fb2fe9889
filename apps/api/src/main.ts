import { randomBytes } from 'node:crypto';
import { serve } from '@hono/node-server';
import { openDatabase } from '@sheafbook/db';
import { createApp } from './app.ts';
import { readConfig } from './platform/config.ts';
import { openLog } from './platform/log.ts';

/** Serves the API for a real group: DATABASE_URL, or an embedded PostgreSQL with its data in .sheafbook/. */
const config = readConfig(process.env);
const log = openLog(config.logLevel);
const database = await openDatabase({
  env: process.env,
  dataFolder: process.env.SHEAFBOOK_DATA ?? '.sheafbook',
  log: (line) => log.info(line),
});
const outside = { db: database.db, sql: database.sql, now: () => new Date(), randomBytes };
const app = createApp({ outside, config, log });
const server = serve({ fetch: app.fetch, port: config.port, hostname: config.host });
log.info(`Sheafbook answers at ${config.publicUrl} (${database.where} PostgreSQL)`);

for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.once(signal, () => {
    server.close(() => void database.close().then(() => process.exit(0)));
    setTimeout(() => process.exit(1), 10_000).unref();
  });
}
