import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { administer, ensureDatabase } from './administer.ts';
import { startEmbedded } from './embedded.ts';
import { migrate } from './migrate.ts';
import { printSchema } from './print-schema.ts';

// `npm run schema`: migrates an empty throwaway database and writes what its catalogue then says to db/schema.sql.
const dataFolder = mkdtempSync(join(tmpdir(), 'sheafbook-schema-'));
const { adminUrl, stop } = await startEmbedded({ dataFolder, persistent: false, settings: { fsync: 'off' } });
try {
  const url = await ensureDatabase(adminUrl, 'sheafbook');
  await migrate(url);
  writeFileSync(fileURLToPath(new URL('../schema.sql', import.meta.url)), await administer(url, printSchema));
} finally {
  await stop();
}
