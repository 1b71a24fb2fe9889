import { ensureDatabase } from './administer.ts';
import { startEmbedded } from './embedded.ts';
import { migrate } from './migrate.ts';

// `npm run migrate`: brings DATABASE_URL, or the book in .sheafbook, up to date without starting the app.
const url = process.env.DATABASE_URL;
const dataFolder = process.env.SHEAFBOOK_DATA ?? '.sheafbook';
const embedded = url ? undefined : await startEmbedded({ dataFolder, persistent: true });
try {
  const adminUrl = embedded ? await ensureDatabase(embedded.adminUrl, 'sheafbook') : (url ?? '');
  const applied = await migrate(adminUrl, undefined, { log: console.log });
  if (applied.length === 0) console.log('Nothing to migrate: the database is up to date.');
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
} finally {
  await embedded?.stop();
}
