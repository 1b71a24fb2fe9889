import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Sql } from 'postgres';
import { ensureDatabase } from '../administer.ts';
import { ensureAppLogin } from '../app-login.ts';
import { checkAppRole, connectApp, type Db } from '../connect.ts';
import { startEmbedded } from '../embedded.ts';
import { migrate } from '../migrate.ts';

/** Speed matters and the data does not: this server lives for one telling. Never pass these to one with a book. */
const THROWAWAY_SETTINGS = { fsync: 'off', synchronous_commit: 'off', full_page_writes: 'off' } as const;

/** Lends a fresh database on a server of its own, and takes both away again, whatever happens. */
export async function withThrowawayDatabase<Result>(
  work: (database: { db: Db; sql: Sql }) => Promise<Result>,
): Promise<Result> {
  const dataFolder = mkdtempSync(join(tmpdir(), 'sheafbook-demo-'));
  const server = await startEmbedded({ dataFolder, persistent: false, settings: THROWAWAY_SETTINGS });
  try {
    const adminUrl = await ensureDatabase(server.adminUrl, 'sheafbook');
    await migrate(adminUrl);
    const { db, sql } = connectApp(await ensureAppLogin(adminUrl));
    try {
      await checkAppRole(sql);
      return await work({ db, sql });
    } finally {
      await sql.end({ timeout: 5 });
    }
  } finally {
    await server.stop();
  }
}
