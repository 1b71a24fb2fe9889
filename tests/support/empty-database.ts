import { randomBytes } from 'node:crypto';
import { administer, ensureDatabase } from '@sheafbook/db';
import { inject } from 'vitest';

/** A database without any migration on the run's server. */
export async function makeEmptyDatabase(): Promise<{ url: string; drop(): Promise<void> }> {
  const { adminUrl } = inject('template');
  const name = `sheafbook_empty_${randomBytes(6).toString('hex')}`;
  const url = await ensureDatabase(adminUrl, name);
  const drop = () =>
    administer(adminUrl, async (sql) => {
      await sql`drop database if exists ${sql(name)} with (force)`;
    });
  return { url, drop };
}
