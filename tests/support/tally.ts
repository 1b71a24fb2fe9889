import type { WorkTasks } from '@sheafbook/api';
import { sql } from 'drizzle-orm';
import type { TestDatabase } from './database.ts';

/**
 * Work that leaves one mark each time that it is done, and takes a moment over it; nothing in its table keeps marks apart,
 * so work that counts twice shows.
 */
export const TALLY_TASKS: WorkTasks = {
  tally: {
    async settle(tx, { storehouseId, workId }) {
      await tx.execute(
        sql`insert into tally.mark (storehouse_id, work_id) values (${storehouseId}, ${workId})`,
      );
      await tx.execute(sql`select pg_sleep(0.003)`);
    },
  },
};

export async function makeTally({ admin }: TestDatabase): Promise<void> {
  await admin`create schema tally`;
  await admin`create table tally.mark (mark_no bigint generated always as identity, storehouse_id uuid, work_id uuid)`;
  await admin`grant usage on schema tally to sheafbook_app`;
  await admin`grant insert on tally.mark to sheafbook_app`;
}

/** A storehouse with so much work waiting. */
export async function aBusyStorehouse({ admin, sql: app }: TestDatabase, works: number): Promise<string> {
  const [row] = await admin<
    { id: string }[]
  >`insert into book.storehouse (name, currency, time_zone, founded_at)
    values ('Busy', 'USD', 'UTC', now()) returning storehouse_id as id`;
  const id = row?.id ?? '';
  await app.begin(async (tx) => {
    await tx`select set_config('app.storehouse', ${id}, true)`;
    await tx`select book.enqueue_work(${id}, 'tally', '{}', null, null, null) from generate_series(1, ${works})`;
  });
  return id;
}

/** Waits until so many marks stand, or the test's time is over. */
export async function untilMarked(
  { admin }: TestDatabase,
  least: number,
  storehouseId?: string,
): Promise<void> {
  for (;;) {
    const [row] = await admin<{ count: number }[]>`select count(*)::integer as count from tally.mark
      where ${storehouseId ?? null}::uuid is null or storehouse_id = ${storehouseId ?? null}`;
    if ((row?.count ?? 0) >= least) return;
    await admin`select pg_sleep(0.02)`;
  }
}
