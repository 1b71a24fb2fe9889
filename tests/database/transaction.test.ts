import { connectApp, runTransaction, type Tx } from '@sheafbook/db';
import { sql } from 'drizzle-orm';
import type { Sql } from 'postgres';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestDatabase, type TestDatabase } from '../support/database.ts';

let database: TestDatabase;
let pool: ReturnType<typeof connectApp>;
beforeAll(async () => {
  database = await openTestDatabase();
  pool = connectApp(database.appUrl, { maxConnections: 2 });
  await database.admin`create table public.mark (mark text primary key)`;
  await database.admin`grant select, insert on public.mark to sheafbook_app`;
});
afterAll(async () => {
  await pool.sql.end({ timeout: 5 });
  await database.close();
});

const STOREHOUSE = '0192b1a0-0000-7000-8000-000000000001';
const settings = { storehouse: STOREHOUSE, login: '', household: '', task: 'fill' };
const run: <Result>(work: Parameters<typeof runTransaction<Result>>[2]) => Promise<Result> = (work) =>
  runTransaction(pool.db.lines, { settings }, work);
const write = (tx: Tx, mark: string) => tx.execute(sql`insert into public.mark values (${mark})`);
const marks = async (): Promise<string[]> =>
  (await database.admin<{ mark: string }[]>`select mark from public.mark order by mark`).map(
    ({ mark }) => mark,
  );
const settingsOf = async (tx: Tx) => {
  const [row] = await tx.execute<{ storehouse: string; task: string }>(sql`select
    coalesce(current_setting('app.storehouse', true), '') as storehouse, current_setting('app.task', true) as task`);
  return row;
};
const processOf = async (tx: Tx): Promise<number> =>
  (await tx.execute<{ pid: number }>(sql`select pg_backend_pid() as pid`))[0]?.pid ?? 0;
const endProcess = (admin: Sql, pid: number) => admin`select pg_terminate_backend(${pid}, 5000)`;

/** Drizzle wraps what a statement throws. */
const TOO_LATE = { cause: { message: expect.stringContaining('once the transaction is over') } };

test('settings hold for one transaction, and none is left on its connection', async () => {
  expect(await run(settingsOf)).toEqual({ storehouse: STOREHOUSE, task: 'fill' });
  const others = { storehouse: '', login: '', household: '', task: '' };
  expect(await runTransaction(pool.db.lines, { settings: others }, settingsOf)).toEqual({
    storehouse: '',
    task: '',
  });
});

test('what one statement did is undone when a later one fails, or the work itself', async () => {
  await expect(run(async (tx) => [await write(tx, 'a'), await write(tx, 'a')])).rejects.toThrow();
  const changeOfMind = async (tx: Tx) => {
    await write(tx, 'b');
    throw new Error('no, after all');
  };
  await expect(run(changeOfMind)).rejects.toThrow('no, after all');
  expect(await marks()).toEqual([]);
});

test('a failure that the work makes light of is told all the same', async () => {
  const careless = async (tx: Tx) => {
    await write(tx, 'c');
    await write(tx, 'c').catch(() => undefined);
    return 'fine';
  };
  await expect(run(careless)).rejects.toMatchObject({ constraint_name: 'mark_pkey' });
  expect(await marks()).toEqual([]);
});

test('the last statement takes the commit along, and no further one is sent', async () => {
  await run((tx, steps) => {
    steps.lastFollows();
    return write(tx, 'd');
  });
  expect(await marks()).toEqual(['d']);
  const oneTooMany = async (tx: Tx, steps: { lastFollows(): void }) => {
    steps.lastFollows();
    await write(tx, 'e');
    await write(tx, 'f');
  };
  await expect(run(oneTooMany)).rejects.toMatchObject(TOO_LATE);
  expect(await marks()).not.toContain('f');
});

test('a last statement that fails undoes the whole', async () => {
  const failing = run(async (tx, steps) => {
    await write(tx, 'g');
    steps.lastFollows();
    return write(tx, 'g');
  });
  await expect(failing).rejects.toThrow();
  expect(await marks()).not.toContain('g');
});

test('work that gives up sends nothing more, and what it did is undone', async () => {
  const givingUp = run(async (tx, steps) => {
    await write(tx, 'h');
    steps.giveUp();
    await write(tx, 'i');
  });
  await expect(givingUp).rejects.toMatchObject(TOO_LATE);
  const silent = run(async (tx, steps) => {
    await write(tx, 'j');
    steps.giveUp();
  });
  await expect(silent).rejects.toThrow(/given up/);
  expect(await marks()).toEqual(['d', 'e']);
});

test('a statement that nobody waited for does not reach whoever has the connection next', async () => {
  let late: Tx | undefined;
  await run(async (tx) => {
    late = tx;
    await write(tx, 'k');
  });
  await expect(write(late as Tx, 'l')).rejects.toMatchObject(TOO_LATE);
  expect(await marks()).toEqual(['d', 'e', 'k']);
});

test.for(['while it answers', 'between two statements'])(
  'a connection is lost %s: refused, undone, and the next works',
  async (when) => {
    const isBetween = when === 'between two statements';
    const losing = run(async (tx) => {
      await write(tx, 'lost');
      const pid = await processOf(tx);
      if (isBetween) {
        await endProcess(database.admin, pid);
        await new Promise((resolve) => setTimeout(resolve, 100)); // until the socket has heard of it
      } else setTimeout(() => void endProcess(database.admin, pid).execute(), 50);
      await tx.execute(sql`select pg_sleep(1)`);
      await write(tx, 'on a new connection, outside of any transaction');
    });
    await expect(losing).rejects.toThrow('the connection to the database was lost');
    expect(await marks()).toEqual(['d', 'e', 'k']);
    for (let turn = 0; turn < 4; turn += 1)
      expect(await run(settingsOf)).toEqual({ storehouse: STOREHOUSE, task: 'fill' });
  },
);

test('more transactions than connections wait for their turn', async () => {
  const pids = await Promise.all(Array.from({ length: 20 }, () => run(processOf)));
  expect(new Set(pids).size).toBeLessThanOrEqual(2);
  expect(pids.every((pid) => pid > 0)).toBe(true);
});
