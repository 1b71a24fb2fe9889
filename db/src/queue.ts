import { Logger, runMigrations } from 'graphile-worker';
import type { Sql } from 'postgres';
import { withRole } from './database-url.ts';
import { ROLES } from './roles.ts';

/** The schema of the job library: its tables are its own affair, and are in neither the golden schema nor an archive. */
export const QUEUE_SCHEMA = 'graphile_worker';

const SILENT = new Logger(() => () => undefined);

/**
 * Brings the queue's tables up to date, as the owner of the book, and lets the app work on them. They hold ids alone, so
 * one policy without a storehouse does for all of them: a worker takes the work of every storehouse.
 */
export async function prepareQueue(adminUrl: string, sql: Sql): Promise<void> {
  await runMigrations({ connectionString: withRole(adminUrl, ROLES.owner), logger: SILENT });
  await sql.begin(async (tx) => {
    await tx`set local role sheafbook_owner`;
    await tx`do $$ declare here text; begin
      for here in select c.oid::regclass::text from pg_class c
          where c.relnamespace = 'graphile_worker'::regnamespace and c.relkind = 'r'
            and not exists (select from pg_policy p where p.polrelid = c.oid and p.polname = 'worker') loop
        execute 'alter table ' || here || ' enable row level security';
        execute 'create policy worker on ' || here || ' to sheafbook_app using (true) with check (true)';
        execute 'grant select, insert, update, delete on ' || here || ' to sheafbook_app';
      end loop;
    end $$`;
    await tx`grant usage on schema graphile_worker to sheafbook_app`;
  });
}
