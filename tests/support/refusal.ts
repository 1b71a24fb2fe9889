import type { Sql } from 'postgres';
import { findPostgresError } from '../../apps/api/src/platform/to-problem.ts';
import type { TestApp } from './app.ts';

/** Runs statements as the app inside a storehouse, and rolls them back. */
export async function asApp<Result>(
  app: TestApp,
  storehouseId: string,
  work: (sql: Sql) => Promise<Result>,
): Promise<Result> {
  const sql = await app.sql.reserve();
  try {
    await sql`begin`;
    await sql`select set_config('app.storehouse', ${storehouseId}, true)`;
    return await work(sql);
  } finally {
    await sql`rollback`;
    sql.release();
  }
}

/** How the database refuses: SQLSTATE and, where one was broken, the constraint's name; nothing when it does not. */
export async function databaseRefusal(
  work: Promise<unknown>,
): Promise<{ code?: string; constraint?: string | undefined }> {
  const error = await work.then(
    () => undefined,
    (thrown: unknown) => findPostgresError(thrown),
  );
  return error ? { code: error.code, constraint: error.constraint_name } : {};
}
