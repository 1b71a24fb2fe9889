import { randomBytes } from 'node:crypto';
import { mkdtempSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { devNull, tmpdir } from 'node:os';
import { join } from 'node:path';
import { serve } from '@hono/node-server';
import { createApp, openLog, readConfig } from '@sheafbook/api';
import { connectApp, ensureAppLogin, ensureDatabase, migrate, startEmbedded } from '@sheafbook/db';
import { drizzle } from 'drizzle-orm/postgres-js';
import pino, { type Logger } from 'pino';
import postgres, { type Sql } from 'postgres';
import { bareHandlers } from './bare.ts';
import { type Recording, recordAll } from './recording.ts';
import { type Seeded, seedStorehouse } from './seed.ts';

export type Bench = Seeded &
  Recording & {
    readonly port: number;
    /** In words: which server, and the settings that matter. */
    readonly server: string;
    /** One connection of the administrator's, for what is measured beside the product. */
    readonly admin: Sql;
    close(): Promise<void>;
  };

const MOST_CONNECTIONS = 10;

/**
 * The product as `npm start` runs it, on an embedded server with fsync on and logs written (to nowhere), and beside it
 * on the same port the bare handlers. Their pool is as large; it logs in as the administrator, whom the tenants' walls
 * do not stop, and its storehouse is set once for the whole connection.
 */
export async function openBench(): Promise<Bench> {
  const dataFolder = mkdtempSync(join(tmpdir(), 'sheafbook-bench-'));
  const server = await startEmbedded({ dataFolder, persistent: false });
  const adminUrl = await ensureDatabase(server.adminUrl, 'sheafbook');
  await migrate(adminUrl);
  const appUrl = await ensureAppLogin(adminUrl);
  const log = pino({ level: 'info', base: null }, pino.destination({ dest: devNull, sync: true }));
  const { app, sql } = openApp(appUrl, log);
  const admin = postgres(adminUrl, { max: 1, onnotice: () => undefined });
  const seeded = await seedStorehouse(app, admin);
  const recording = await record(appUrl, seeded);
  const bareSql = openBarePool(adminUrl, seeded.storehouseId);
  const bare = bareHandlers({ sql: bareSql, ...recording });
  const isBare = /^https?:\/\/[^/]+\/bare\//;
  const listening = serve({
    port: 0,
    hostname: '127.0.0.1',
    fetch: (request, env) => (isBare.test(request.url) ? bare.fetch(request, env) : app.fetch(request, env)),
  });
  await new Promise((resolve) => listening.once('listening', resolve));
  return {
    ...seeded,
    ...recording,
    port: (listening.address() as AddressInfo).port,
    server: await describeServer(admin),
    admin,
    async close() {
      listening.close();
      await Promise.all([sql, bareSql, admin].map((pool) => pool.end({ timeout: 5 })));
      await server.stop();
    },
  };
}

function openApp(appUrl: string, log: Logger, options: Parameters<typeof connectApp>[1] = {}) {
  const { db, sql } = connectApp(appUrl, { maxConnections: MOST_CONNECTIONS, ...options });
  const outside = { db, sql, now: () => new Date(), randomBytes };
  return { app: createApp({ outside, config: readConfig({}), log }), sql };
}

/** On connections of its own, which are closed again: listening slows them down. */
async function record(appUrl: string, seeded: Seeded): Promise<Recording> {
  return recordAll(seeded, async (hear, work) => {
    const { app, sql } = openApp(appUrl, openLog('silent'), { onStatement: hear });
    await work(app);
    await sql.end({ timeout: 5 });
  });
}

function openBarePool(adminUrl: string, storehouseId: string): Sql {
  const sql = postgres(adminUrl, {
    max: MOST_CONNECTIONS,
    onnotice: () => undefined,
    connection: { application_name: 'bare', 'app.storehouse': storehouseId },
  });
  drizzle(sql); // the recorded parameters are meant for a client that serializes as Drizzle's does
  return sql;
}

async function describeServer(admin: Sql): Promise<string> {
  const [row] = await admin<
    { text: string }[]
  >`select concat_ws(', ', 'PostgreSQL ' || current_setting('server_version'),
    'fsync ' || current_setting('fsync'), 'synchronous_commit ' || current_setting('synchronous_commit'),
    'shared_buffers ' || current_setting('shared_buffers')) as text`;
  return row?.text ?? '';
}
