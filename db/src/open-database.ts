import type { Sql } from 'postgres';
import { administer, ensureDatabase } from './administer.ts';
import { ensureAppLogin } from './app-login.ts';
import { checkAppRole, checkServer, connectApp, type Db } from './connect.ts';
import { startEmbedded } from './embedded.ts';
import { migrate } from './migrate.ts';

export type OpenDatabaseOptions = {
  /** DATABASE_URL: an administrator's login. APP_DATABASE_URL: the app's own, if it shall not be derived. */
  env: Readonly<Record<string, string | undefined>>;
  /** Where the embedded server keeps its data when there is no DATABASE_URL. */
  dataFolder: string;
  log: (line: string) => void;
};

export type OpenDatabase = {
  db: Db;
  sql: Sql;
  adminUrl: string;
  appUrl: string;
  where: 'embedded' | 'server';
  close(): Promise<void>;
};

/**
 * Opens the book: the server of DATABASE_URL, else an embedded one; brings its tables up to date, refuses an unsafe
 * server, and connects as the app's unprivileged role. Whatever was started is stopped again if any step refuses.
 */
export async function openDatabase({ env, dataFolder, log }: OpenDatabaseOptions): Promise<OpenDatabase> {
  const { DATABASE_URL, APP_DATABASE_URL } = env;
  const embedded = DATABASE_URL ? undefined : await startEmbedded({ dataFolder, persistent: true });
  try {
    const adminUrl = embedded ? await ensureDatabase(embedded.adminUrl, 'sheafbook') : (DATABASE_URL ?? '');
    await administer(adminUrl, checkServer); // before anything is written
    await migrate(adminUrl, undefined, { log });
    const appUrl = APP_DATABASE_URL || (await ensureAppLogin(adminUrl));
    const { db, sql } = await connectChecked(appUrl);
    const close = async () => {
      await sql.end({ timeout: 5 });
      await embedded?.stop();
    };
    return { db, sql, adminUrl, appUrl, where: embedded ? 'embedded' : 'server', close };
  } catch (error) {
    await embedded?.stop();
    throw error;
  }
}

async function connectChecked(appUrl: string) {
  const connected = connectApp(appUrl);
  try {
    await checkServer(connected.sql);
    await checkAppRole(connected.sql);
    return connected;
  } catch (error) {
    await connected.sql.end({ timeout: 5 });
    throw error;
  }
}
