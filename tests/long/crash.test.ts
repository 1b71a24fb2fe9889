import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, onTestFinished, test } from 'vitest';
import { makeTemporaryFolder } from '../support/temporary-folder.ts';

const main = fileURLToPath(new URL('../../apps/api/src/main.ts', import.meta.url));
const CLIENTS = 8;

/** A server of its own process on an embedded database with durable settings, reachable when this resolves. */
async function startServer(dataFolder: string, port: number): Promise<ChildProcess> {
  const child = spawn(process.execPath, ['--import', 'tsx', main], {
    env: {
      ...process.env,
      DATABASE_URL: '',
      SHEAFBOOK_DATA: dataFolder,
      PORT: String(port),
      LOG_LEVEL: 'error',
    },
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  onTestFinished(() => void child.kill('SIGKILL'));
  for (let tries = 0; tries < 600; tries += 1) {
    const answer = await fetch(`http://127.0.0.1:${port}/api/readiness`).catch(() => undefined);
    if (answer?.ok) return child;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error('the server did not come up');
}

const postmasterOf = (dataFolder: string): number =>
  Number(readFileSync(join(dataFolder, 'cluster/postmaster.pid'), 'utf8').split('\n')[0]);

test('what was acknowledged is there after server and database were killed under load, and the audit holds', async () => {
  const dataFolder = makeTemporaryFolder();
  const port = 20_000 + (process.pid % 20_000);
  const server = await startServer(dataFolder, port);
  const { call, storehouseId, householdId, personId } = await foundStorehouse(port);
  await call('POST', `/persons/${personId}/duties`, { duty: 'treasurer' });

  const acknowledged: string[] = [];
  let isOver = false;
  const pay = async (client: number): Promise<void> => {
    for (let count = 1; !isOver; count += 1) {
      const body = {
        householdId,
        minorUnits: count,
        till: 'bank',
        note: `${client}`,
        isKnownDuplicate: true,
      };
      const answer = await call('POST', '/payments', body, `${client}-${count}`).catch(() => undefined);
      if (answer?.status === 201) acknowledged.push((answer.body as { entryId: string }).entryId);
    }
  };
  const clients = Array.from({ length: CLIENTS }, (_, client) => pay(client));
  await new Promise((resolve) => setTimeout(resolve, 4_000));
  process.kill(postmasterOf(dataFolder), 'SIGKILL');
  server.kill('SIGKILL');
  isOver = true;
  await Promise.all(clients);
  expect(acknowledged.length).toBeGreaterThan(50);

  await startServer(dataFolder, port);
  const found = new Set<string>();
  for (let after: string | null = ''; after !== null; ) {
    const query: string = after === '' ? '' : `&after=${after}`;
    const page = await call('GET', `/entries?limit=200${query}`);
    const { entries, next } = page.body as { entries: { id: string }[]; next: string | null };
    for (const { id } of entries) found.add(id);
    after = next;
  }
  expect(acknowledged.filter((entryId) => !found.has(entryId))).toEqual([]);
  const audit = await call('GET', '/audit');
  expect(audit.body).toMatchObject({ holds: true });
  console.log(
    `${acknowledged.length} payments acknowledged before the kill, all there after it (${storehouseId}).`,
  );
});

/** The first run, and a way to call inside its storehouse with its cookie. */
async function foundStorehouse(port: number) {
  const address = `http://127.0.0.1:${port}`;
  const setUp = await fetch(`${address}/api/set-up`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({
      email: 'coordinator@example.org',
      password: 'a long enough password',
      personName: 'Ada',
      householdName: 'Ashdown',
      storehouse: { name: 'Alder Row', currency: 'USD', timeZone: 'America/Chicago' },
    }),
  });
  const cookie = setUp.headers.getSetCookie()[0]?.split(';')[0] ?? '';
  const { storehouseId } = (await setUp.json()) as { storehouseId: string };
  const call = async (method: string, path: string, body?: unknown, key = path) => {
    const answer = await fetch(`${address}/api/storehouses/${storehouseId}${path}`, {
      method,
      headers: {
        Cookie: cookie,
        'Idempotency-Key': key,
        ...(body === undefined ? {} : { 'Content-Type': 'application/json' }),
      },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
    return { status: answer.status, body: (await answer.json()) as unknown };
  };
  const persons = (await call('GET', '/persons')).body as {
    persons: { id: string; householdId: string }[];
  };
  const [first] = persons.persons;
  if (!first) throw new Error('a storehouse is founded with its first person');
  return { call, storehouseId, householdId: first.householdId, personId: first.id };
}
