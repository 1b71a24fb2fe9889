import postgres, { type Sql } from 'postgres';
import { withDatabase } from './database-url.ts';

/** Opens one connection for administration, lends it to `work`, and closes it whatever happens. */
export async function administer<Result>(url: string, work: (sql: Sql) => Promise<Result>): Promise<Result> {
  const sql = postgres(url, {
    max: 1,
    connect_timeout: 30,
    onnotice: () => undefined,
    connection: { application_name: 'sheafbook-admin' },
  });
  try {
    return await work(sql);
  } finally {
    await sql.end({ timeout: 5 });
  }
}

/**
 * Makes a database unless it is there; returns its URL. The locale is PostgreSQL's own, so that texts sort alike on
 * a laptop, in a container and on a managed server.
 */
export function ensureDatabase(adminUrl: string, name: string): Promise<string> {
  return administer(adminUrl, async (sql) => {
    const [found] = await sql`select from pg_database where datname = ${name}`;
    if (!found)
      await sql`create database ${sql(name)} template template0 encoding 'UTF8'
      locale_provider builtin builtin_locale 'C.UTF-8' locale 'C'`.catch(unlessMadeByAnother);
    return withDatabase(adminUrl, name);
  });
}

function unlessMadeByAnother(error: unknown): void {
  const code = (error as { code?: string }).code ?? '';
  if (!['42P04', '23505'].includes(code)) throw error;
}
