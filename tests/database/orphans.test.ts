import { existsSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { administer, startEmbedded } from '@sheafbook/db';
import { expect, onTestFinished, test } from 'vitest';
import { ended, firstLine, startChild } from '../support/child.ts';
import { makeTemporaryFolder, writeFile } from '../support/temporary-folder.ts';

const startHolder = (dataFolder: string) => startChild('tests/support/embedded-process.ts', [dataFolder]);
const isRunning = (dataFolder: string) => existsSync(join(dataFolder, 'cluster/postmaster.pid'));
const answers = (url: string) =>
  administer(url, async (sql) => {
    const [row] = await sql`select 6 * 7 as answer`;
    return row?.answer;
  });

async function waitUntilStopped(dataFolder: string): Promise<void> {
  for (let attempt = 0; attempt < 1_500 && isRunning(dataFolder); attempt += 1) await sleep(20);
}

async function start(dataFolder: string) {
  const server = await startEmbedded({ dataFolder, persistent: true });
  onTestFinished(() => server.stop());
  return server;
}

test('when Node is killed, its guard stops the server cleanly', async () => {
  const dataFolder = makeTemporaryFolder();
  const holder = startHolder(dataFolder);
  await firstLine(holder);
  holder.kill('SIGKILL');
  await ended(holder);
  await waitUntilStopped(dataFolder);
  expect(isRunning(dataFolder)).toBe(false);
  // The server takes its pid file away first, and says its last word after that.
  const log = () => readFileSync(join(dataFolder, 'server.log'), 'utf8');
  await expect.poll(log, { timeout: 10_000 }).toContain('database system is shut down');
  expect(readdirSync(join(dataFolder, 'holders'))).toEqual([]);
});

test('an orphan whose guard was killed too is taken over, and stopped at the end', async () => {
  const dataFolder = makeTemporaryFolder();
  const holder = startHolder(dataFolder);
  const told = await firstLine(holder);
  for (const name of readdirSync(join(dataFolder, 'holders'))) {
    process.kill(Number(readFileSync(join(dataFolder, 'holders', name), 'utf8')), 'SIGKILL');
  }
  holder.kill('SIGKILL');
  await ended(holder);
  await sleep(300); // time in which a surviving guard would have acted
  expect(isRunning(dataFolder)).toBe(true);

  const server = await start(dataFolder);
  expect({ adminUrl: server.adminUrl, port: server.port }).toEqual(told);
  expect(await answers(server.adminUrl)).toBe(42);
  await server.stop();
  expect(isRunning(dataFolder)).toBe(false);
});

test('two processes share one server, and the last to go stops it', async () => {
  const dataFolder = makeTemporaryFolder();
  const holders = [startHolder(dataFolder), startHolder(dataFolder)];
  const [first, second] = await Promise.all(holders.map(firstLine));
  expect(first).toEqual(second);
  const here = await start(dataFolder);
  expect({ adminUrl: here.adminUrl, port: here.port }).toEqual(first);

  for (const holder of holders) {
    holder.kill('SIGKILL');
    await ended(holder);
  }
  await sleep(300);
  expect(await answers(here.adminUrl)).toBe(42);
  await here.stop();
  expect(isRunning(dataFolder)).toBe(false);
});

test('a pid file left by a power cut, whose number another program now has, is no obstacle', async () => {
  const dataFolder = makeTemporaryFolder();
  const before = await start(dataFolder);
  const [, ...lines] = readFileSync(join(dataFolder, 'cluster/postmaster.pid'), 'utf8').split('\n');
  await before.stop();
  writeFile(join(dataFolder, 'cluster/postmaster.pid'), [process.pid, ...lines].join('\n'));
  const after = await start(dataFolder);
  expect(await answers(after.adminUrl)).toBe(42);
});

test('a half-made cluster of an interrupted first start is no obstacle', async () => {
  const dataFolder = makeTemporaryFolder({ 'cluster.Xy12Zq/PG_VERSION': '18\n' });
  const server = await start(dataFolder);
  expect(await answers(server.adminUrl)).toBe(42);
  rmSync(join(dataFolder, 'cluster.Xy12Zq'), { recursive: true });
});
