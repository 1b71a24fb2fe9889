import { chmodSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  administer,
  checkServer,
  type Embedded,
  type EmbeddedOptions,
  startEmbedded,
  withLogin,
} from '@sheafbook/db';
import postgres from 'postgres';
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest';
import { firstLine, startChild } from '../support/child.ts';
import { copyProjectInto } from '../support/closed-project.ts';
import { makeTemporaryFolder, writeFile } from '../support/temporary-folder.ts';
import { THROWAWAY_SETTINGS } from '../support/test-server.ts';

const isRoot = process.getuid?.() === 0;
const modeOf = (path: string) => (statSync(path).mode & 0o777).toString(8);

async function start(options: Partial<EmbeddedOptions> = {}) {
  const server = await startEmbedded({ dataFolder: makeTemporaryFolder(), persistent: false, ...options });
  onTestFinished(() => server.stop());
  return server;
}

// One lasting server for the tests that only look at it.
const dataFolder = mkdtempSync(join(tmpdir(), 'sheafbook-test-'));
let lasting: Embedded;
beforeAll(async () => {
  lasting = await startEmbedded({ dataFolder, persistent: true });
});
afterAll(async () => {
  await lasting.stop();
  rmSync(dataFolder, { recursive: true, force: true });
});

const writeBale = (url: string) =>
  administer(url, async (sql) => {
    await sql`create table if not exists bale (grams bigint not null)`;
    await sql`insert into bale values (18143695)`;
  });
const countBales = (url: string) =>
  administer(url, async (sql) => {
    const [row] = await sql`select count(*)::int as bales from bale`;
    return row?.bales;
  });

test('what was written is there after a stop and a new start', async () => {
  const dataFolder = makeTemporaryFolder();
  const first = await start({ dataFolder, persistent: true });
  await writeBale(first.adminUrl);
  await first.stop();
  expect(existsSync(join(dataFolder, 'cluster/postmaster.pid'))).toBe(false);
  const second = await start({ dataFolder, persistent: true });
  expect(await countBales(second.adminUrl)).toBe(1);
});

test('the server is PostgreSQL 18 with durable settings, the same locale everywhere and scram passwords', async () => {
  const settings = await administer(
    lasting.adminUrl,
    (sql) => sql`select current_setting('server_version_num')::int / 10000 as version,
      current_setting('fsync') as fsync, current_setting('synchronous_commit') as commit,
      current_setting('listen_addresses') as listens, current_setting('unix_socket_directories') as sockets,
      current_setting('password_encryption') as passwords, datlocprovider as provider, datlocale as locale,
      pg_encoding_to_char(encoding) as encoding from pg_database where datname = 'postgres'`,
  );
  expect([...settings]).toEqual([
    {
      version: 18,
      fsync: 'on',
      commit: 'on',
      listens: '127.0.0.1',
      sockets: '',
      passwords: 'scram-sha-256',
      provider: 'b',
      locale: 'C.UTF-8',
      encoding: 'UTF8',
    },
  ]);
});

test('nobody gets in without the password, which only its owner can read', async () => {
  const stranger = postgres(withLogin(lasting.adminUrl, 'postgres', 'guess'), { max: 1 });
  await expect(stranger`select 1`).rejects.toThrow('password authentication failed');
  await stranger.end();
  expect(modeOf(join(dataFolder, 'superuser-password'))).toBe('600');
  expect(modeOf(dataFolder)).toBe('700');
  const rules = readFileSync(join(dataFolder, 'cluster/pg_hba.conf'), 'utf8');
  const ways = rules.split('\n').filter((line) => /^(local|host)/.test(line));
  expect(ways.length).toBeGreaterThan(0);
  expect(ways.filter((line) => !line.endsWith('scram-sha-256'))).toEqual([]);
  expect(lasting.adminUrl).toContain(readFileSync(join(dataFolder, 'superuser-password'), 'utf8'));
});

test('a throwaway server removes its data when it stops', async () => {
  const dataFolder = join(makeTemporaryFolder(), 'data');
  const server = await start({ dataFolder });
  expect(existsSync(dataFolder)).toBe(true);
  await server.stop();
  expect(existsSync(dataFolder)).toBe(false);
});

test('a server that can not start says why, from its own log', async () => {
  const failing = start({ settings: { shared_buffers: 'plenty' } });
  await expect(failing).rejects.toThrow('invalid value for parameter "shared_buffers": "plenty"');
});

test('a given port is used, and one that is in use is refused', async () => {
  const freed = await start();
  await freed.stop();
  const server = await start({ port: freed.port });
  expect(server.port).toBe(freed.port);
  await expect(start({ port: lasting.port })).rejects.toThrow('could not bind');
});

test('ledger-notes 6.22: a server with fsync off is refused, unless a test says that it knows', async () => {
  const { adminUrl } = await start({ settings: THROWAWAY_SETTINGS });
  await administer(adminUrl, async (sql) => {
    await expect(checkServer(sql)).rejects.toThrow('fsync off');
    await expect(checkServer(sql, { allowUnsafe: true })).resolves.toBeUndefined();
  });
});

test('ledger-notes 6.22: a server with its defaults is accepted, one with synchronous_commit off refused', async () => {
  await administer(lasting.adminUrl, (sql) => expect(checkServer(sql)).resolves.toBeUndefined());
  await administer(lasting.adminUrl, async (sql) => {
    await sql`set synchronous_commit to off`;
    await expect(checkServer(sql)).rejects.toThrow('synchronous_commit off');
  });
});

// As root this proves the way through a closed folder; as anyone else, that the same project runs plainly.
test('the server runs from a project and data in a closed folder, and never as root', async () => {
  const folder = makeTemporaryFolder();
  copyProjectInto(folder);
  const cacheFolder = makeTemporaryFolder();
  chmodSync(cacheFolder, 0o755);
  writeFile(
    join(folder, 'twice.mts'),
    `import { statSync } from 'node:fs';
    import { administer } from './db/src/administer.ts';
    import { startEmbedded } from './db/src/embedded.ts';
    const options = { dataFolder: '.sheafbook', persistent: true, cacheFolder: process.argv[2] };
    const first = await startEmbedded(options);
    await administer(first.adminUrl, (sql) => sql\`create table bale as select 18143695 as grams\`);
    await first.stop();
    const second = await startEmbedded(options);
    const rows = await administer(second.adminUrl, (sql) => sql\`select grams from bale\`);
    await second.stop();
    console.log(JSON.stringify({ grams: rows[0]?.grams, uid: statSync('.sheafbook/cluster').uid }));`,
  );
  const told = await firstLine(startChild('twice.mts', [cacheFolder], folder));
  expect(told).toEqual({ grams: 18_143_695, uid: expect.any(Number) });
  const { uid } = told as { uid: number };
  expect(uid === 0).toBe(false);
  expect(readdirSync(cacheFolder)).toHaveLength(isRoot ? 1 : 0); // the binaries that the server's user can reach
  if (!isRoot) expect(uid).toBe(process.getuid?.());
});
