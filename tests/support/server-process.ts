import { type ChildProcess, spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { createApp, openLog, readConfig } from '@sheafbook/api';
import { administer, type OpenDatabase, openDatabase } from '@sheafbook/db';
import { onTestFinished } from 'vitest';
import { writeLetter } from '../../apps/api/src/features/letter/use-cases.ts';
import type { Outside } from '../../apps/api/src/platform/context.ts';
import { withStorehouseTx } from '../../apps/api/src/platform/with-tx.ts';
import project from '../../package.json' with { type: 'json' };
import { makeTemporaryFolder } from './temporary-folder.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const A_PASSWORD = 'a long enough password';

/** What each command says once it is up, on either of its streams. */
const READY = {
  start: 'Sheafbook answers at',
  demo: 'Ctrl-C closes it',
  work: 'Sheafbook works in the background',
} as const;
type Script = keyof typeof READY;

/** What `npm run …` starts, without npm between it and the signal. */
export function commandOf(script: Script): string[] {
  const [, file = ''] = /^tsx (\S+)$/.exec(project.scripts[script]) ?? [];
  return ['--import', 'tsx', file];
}

/** The process of a command with no settings but those given, once it is up; killed when the test ends. */
export async function startProcess(
  script: Script,
  settings: Readonly<Record<string, string>>,
): Promise<ChildProcess> {
  const { APP_DATABASE_URL: _, SHEAFBOOK_DATA: __, NODE_ENV: ___, ...outside } = process.env;
  const child = spawn(process.execPath, commandOf(script), {
    cwd: ROOT,
    env: { ...outside, ...settings },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  onTestFinished(() => {
    child.kill('SIGKILL');
  });
  await new Promise<void>((ready, failed) => {
    child.once('exit', (code) => failed(new Error(`it ended with ${code} before it was up`)));
    for (const input of [child.stdout, child.stderr])
      createInterface({ input }).on('line', (line) => {
        if (line.includes(READY[script])) ready();
      });
  });
  return child;
}

/** How a process ends. */
export const endOf = (child: ChildProcess): Promise<number | null> =>
  new Promise((ended) => child.once('exit', (code) => ended(code)));

/** Interrupts a process and says how it ended. */
export function interrupt(child: ChildProcess): Promise<number | null> {
  const ending = endOf(child);
  child.kill('SIGINT');
  return ending;
}

/** How it stands behind the policies: a piece of work, the workers that live, and how much is in their hands. */
export async function lookAt({ adminUrl }: Pick<OpenDatabase, 'adminUrl'>, workId: string) {
  const [row] = await administer(
    adminUrl,
    (sql) => sql<{ state: string; tries: number; living: number; held: number }[]>`select
      (select state from book.work where work_id = ${workId}) as state,
      (select tries from book.work where work_id = ${workId}) as tries,
      (select count(*)::integer from pg_locks l join pg_database d on d.oid = l.database
        where l.locktype = 'advisory' and d.datname = current_database()) as living,
      (select count(*)::integer from graphile_worker._private_jobs where locked_by is not null) as held`,
  );
  return row;
}

/** A database that is empty, on an embedded server of its own that outlives the processes of the test. */
export async function aServer(): Promise<{ database: OpenDatabase; outside: Outside }> {
  const database = await openDatabase({ env: {}, dataFolder: makeTemporaryFolder(), log: () => undefined });
  onTestFinished(() => database.close());
  return {
    database,
    outside: { db: database.db, sql: database.sql, now: () => new Date(), randomBytes },
  };
}

/** Founds a storehouse with one person, `ada@example.org`, who can be written to. */
export async function found(outside: Outside): Promise<void> {
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
}

/** Writes a letter to somebody in the book, as a use case does, and says which piece of work sends it. */
export async function writeOne({ database, outside }: Awaited<ReturnType<typeof aServer>>): Promise<string> {
  const [person] = await administer(
    database.adminUrl,
    (sql) => sql<{ storehouseId: string; personId: string }[]>`
      select storehouse_id as "storehouseId", person_id as "personId" from book.person
      where login_id is not null order by person_id limit 1`,
  );
  const { storehouseId = '', personId = '' } = person ?? {};
  const letter = { personId, kind: 'pick-up', subject: 'Your pick-up is tomorrow', stopUrl: null };
  return withStorehouseTx(outside, storehouseId, (tx) =>
    writeLetter(tx, storehouseId, { ...letter, text: 'At ten.', html: '<p>At ten.</p>' }),
  );
}
