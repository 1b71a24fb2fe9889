import postgres, { type Sql } from 'postgres';

export type Liveness = {
  /** Says that this worker lives, for as long as this process and its connection do. */
  announce(workerId: string): Promise<void>;
  /** Sets free what workers hold that live no more. */
  sweep(): Promise<void>;
  end(): Promise<void>;
};

/**
 * A worker that is killed leaves its job and its storehouse's queue locked; the library lets go of them after four hours
 * only. So each worker holds a lock of the session under its id: the server drops it with the connection, and whoever can
 * take it knows that the worker is dead. Unlocking one that only lost its connection does no harm, since work counts once
 * by the lock of its own row.
 */
export function openLiveness(appUrl: string): Liveness {
  const own = new Set<string>();
  const held = new Set<string>();
  const sql = postgres(appUrl, {
    max: 1,
    max_lifetime: null,
    onnotice: () => undefined,
    onclose: () => held.clear(),
    connection: { application_name: 'sheafbook-worker' },
  });
  const hold = async () => {
    for (const workerId of own) {
      if (held.has(workerId)) continue;
      await sql`select pg_advisory_lock(hashtextextended(${workerId}, 0))`;
      held.add(workerId);
    }
  };
  return {
    announce(workerId) {
      own.add(workerId);
      return hold();
    },
    async sweep() {
      await hold();
      await unlockDead(sql, [...own]);
    },
    end: () => sql.end({ timeout: 5 }),
  };
}

async function unlockDead(sql: Sql, own: readonly string[]): Promise<void> {
  await sql`
    with taken as (
      select locked_by as worker_id from graphile_worker._private_jobs where locked_by is not null
      union select locked_by from graphile_worker._private_job_queues where locked_by is not null
    ), dead as materialized (
      select worker_id from taken where worker_id <> all (${[...own]}::text[])
        and pg_try_advisory_xact_lock(hashtextextended(worker_id, 0)))
    select graphile_worker.force_unlock_workers(array_agg(worker_id)) from dead having count(*) > 0`;
}
