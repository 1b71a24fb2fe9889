import { once } from 'node:events';
import { createWriteStream, existsSync, renameSync, rmSync } from 'node:fs';
import { parseArgs } from 'node:util';
import type { Sql } from 'postgres';
import { administer } from './administer.ts';
import { writeArchive } from './archive/write.ts';
import { withDatabase } from './database-url.ts';
import { startEmbedded } from './embedded.ts';
import { refuseUnless, StartRefusal } from './refusal.ts';

// `npm run export -- --storehouse <id> --out archive.jsonl`: a whole storehouse as one file, to bring into another server.
// The id may be left out where there is one storehouse only.
try {
  const { values } = parseArgs({ options: { storehouse: { type: 'string' }, out: { type: 'string' } } });
  const { out } = values;
  refuseUnless(out !== undefined, 'Say --out with the file to write.');
  refuseUnless(!existsSync(out), `${out} is there already, and nothing is written over it.`);
  await withBook(async (admin) => {
    const storehouseId = await chooseStorehouse(admin, values.storehouse);
    await writeFile(admin, storehouseId, out);
  });
} catch (error) {
  const isUsage =
    error instanceof TypeError && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS');
  console.error(error instanceof StartRefusal || isUsage ? error.message : error);
  process.exitCode = 1;
}

/** The server of DATABASE_URL, or the embedded one where it has a book; a server that is running is joined. */
async function withBook(work: (admin: Sql) => Promise<void>): Promise<void> {
  const url = process.env.DATABASE_URL;
  if (url) return administer(url, work);
  const dataFolder = process.env.SHEAFBOOK_DATA ?? '.sheafbook';
  refuseUnless(existsSync(dataFolder), `there is no book in ${dataFolder}, and no DATABASE_URL is given`);
  const embedded = await startEmbedded({ dataFolder, persistent: true });
  try {
    await administer(withDatabase(embedded.adminUrl, 'sheafbook'), work);
  } finally {
    await embedded.stop();
  }
}

async function chooseStorehouse(admin: Sql, wanted: string | undefined): Promise<string> {
  const storehouses = await admin<{ id: string; name: string }[]>`
    select storehouse_id as id, name from book.storehouse order by name, storehouse_id`;
  const found = storehouses.filter(({ id }) => wanted === undefined || id === wanted);
  const [only] = found;
  const list = storehouses.map(({ id, name }) => `  ${id}  ${name}`).join('\n');
  refuseUnless(
    only && found.length === 1,
    `Say --storehouse with the id of one of these:\n${list || '  (none)'}`,
  );
  return only.id;
}

/** Readable by its owner alone, and under its name only once it is whole. */
async function writeFile(admin: Sql, storehouseId: string, out: string): Promise<void> {
  const part = `${out}.part`;
  const file = createWriteStream(part, { mode: 0o600, flags: 'wx' });
  try {
    const written = await writeArchive(admin, { storehouseId, takenAt: new Date() }, async (line) => {
      if (!file.write(`${line}\n`)) await once(file, 'drain');
    });
    file.end();
    await once(file, 'finish');
    renameSync(part, out);
    const rows = Object.values(written.end.tables).reduce((sum, count) => sum + count, 0);
    console.log(
      `${written.head.storehouse.name}: ${rows} rows in ${out}. It holds everything, so keep it private.`,
    );
  } catch (error) {
    file.destroy();
    rmSync(part, { force: true });
    throw error;
  }
}
