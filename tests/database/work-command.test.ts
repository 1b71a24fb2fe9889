import { type ChildProcess, spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { createApp, openLog, readConfig } from '@sheafbook/api';
import { administer, type OpenDatabase, openDatabase } from '@sheafbook/db';
import { extract } from 'letterparser';
import { expect, onTestFinished, test } from 'vitest';
import { writeLetter } from '../../apps/api/src/features/letter/use-cases.ts';
import { withStorehouseTx } from '../../apps/api/src/platform/with-tx.ts';
import project from '../../package.json' with { type: 'json' };
import { openCatcher } from '../support/catcher.ts';
import { makeTemporaryFolder } from '../support/temporary-folder.ts';

const A_PASSWORD = 'a long enough password';
const ROOT = fileURLToPath(new URL('../..', import.meta.url));
/** What `npm run work` starts, without npm between it and the signal. */
const [, FILE = ''] = /^tsx (\S+)$/.exec(project.scripts.work) ?? [];
const COMMAND = ['--import', 'tsx', FILE];

/** The process of `npm run work`, with no settings but those given; ready once it says so. */
async function startWorking(settings: Readonly<Record<string, string>>): Promise<ChildProcess> {
  const { APP_DATABASE_URL: _, SHEAFBOOK_DATA: __, NODE_ENV: ___, ...outside } = process.env;
  const child = spawn(process.execPath, COMMAND, {
    cwd: ROOT,
    env: { ...outside, ...settings },
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  onTestFinished(() => {
    child.kill('SIGKILL');
  });
  await new Promise<void>((ready, failed) => {
    child.once('exit', (code) => failed(new Error(`it ended with ${code} before it worked`)));
    createInterface({ input: child.stderr as NonNullable<ChildProcess['stderr']> }).on('line', (line) => {
      if (line.includes('Sheafbook works in the background')) ready();
    });
  });
  return child;
}

const endOf = (child: ChildProcess): Promise<number | null> =>
  new Promise((ended) => child.once('exit', (code) => ended(code)));

/** How it stands behind the policies: a piece of work, the workers that live, and how much is in their hands. */
async function lookAt({ adminUrl }: OpenDatabase, workId: string) {
  const [row] = await administer(
    adminUrl,
    (sql) => sql<{ state: string; living: number; held: number }[]>`select
      (select state from book.work where work_id = ${workId}) as state,
      (select count(*)::integer from pg_locks l join pg_database d on d.oid = l.database
        where l.locktype = 'advisory' and d.datname = current_database()) as living,
      (select count(*)::integer from graphile_worker._private_jobs where locked_by is not null) as held`,
  );
  return row;
}

/** A server that keeps what it is told, as the command demands, with one person who can be written to. */
async function aServer() {
  const database = await openDatabase({ env: {}, dataFolder: makeTemporaryFolder(), log: () => undefined });
  onTestFinished(() => database.close());
  const outside = { db: database.db, sql: database.sql, now: () => new Date(), randomBytes };
  const app = createApp({ outside, config: readConfig({}), log: openLog('silent') });
  const founding = await app.request('/api/set-up', {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', 'Idempotency-Key': 'founding' },
    body: JSON.stringify({
      ...{ email: 'ada@example.org', password: A_PASSWORD, personName: 'Ada', householdName: 'Ashdown' },
      storehouse: { name: 'Alder Row', currency: 'USD', timeZone: 'America/Chicago' },
    }),
  });
  if (founding.status !== 201) throw new Error(await founding.text());
  const [person] = await administer(
    database.adminUrl,
    (sql) => sql<{ storehouseId: string; personId: string }[]>`
      select storehouse_id as "storehouseId", person_id as "personId" from book.person`,
  );
  return { database, outside, storehouseId: person?.storehouseId ?? '', personId: person?.personId ?? '' };
}

test('a process of its own sends the letter that was written elsewhere, and ends cleanly when it is told to', async () => {
  const { database, outside, storehouseId, personId } = await aServer();
  const catcher = await openCatcher();
  onTestFinished(() => catcher.close());
  const child = await startWorking({
    ...{ DATABASE_URL: database.adminUrl, SMTP_URL: catcher.smtpUrl },
    ...{ MAIL_FROM: 'book@alder.example', PUBLIC_URL: 'http://book.alder.example' },
  });
  const letter = { personId, kind: 'pick-up', subject: 'Your pick-up is tomorrow', stopUrl: null };
  const letterId = await withStorehouseTx(outside, storehouseId, (tx) =>
    writeLetter(tx, storehouseId, { ...letter, text: 'At ten.', html: '<p>At ten.</p>' }),
  );
  await expect.poll(() => lookAt(database, letterId), { timeout: 20_000 }).toMatchObject({ state: 'done' });
  expect((await lookAt(database, letterId))?.living).toBeGreaterThan(0);
  const sent = catcher.caught.map(({ to, source }) => [to, extract(source).subject]);
  expect(sent).toEqual([['ada@example.org', 'Your pick-up is tomorrow']]);

  const ending = endOf(child);
  child.kill('SIGTERM');
  expect(await ending).toBe(0);
  expect(await lookAt(database, letterId)).toEqual({ state: 'done', living: 0, held: 0 });
}, 90_000);

test('it says in words that it needs a database server, and ends', async () => {
  const child = spawn(process.execPath, COMMAND, {
    cwd: ROOT,
    env: { ...process.env, DATABASE_URL: '' },
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  let said = '';
  child.stderr.on('data', (chunk) => {
    said += String(chunk);
  });
  expect(await endOf(child)).toBe(1);
  expect(said).toContain('npm run work needs DATABASE_URL');
});
