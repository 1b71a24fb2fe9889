import { connectApp, type Db } from '@sheafbook/db';
import postgres, { type Sql } from 'postgres';
import { inject } from 'vitest';
import { cloneTemplate } from './template.ts';

/**
 * A database of one test file's own. `db` and `sql` are the app's unprivileged role, bound by row-level security;
 * `admin` is the superuser, for looking behind the policies and for making what the app may not.
 */
export type TestDatabase = {
  db: Db;
  sql: Sql;
  admin: Sql;
  name: string;
  adminUrl: string;
  appUrl: string;
  close(): Promise<void>;
};

export async function openTestDatabase(template = inject('template')): Promise<TestDatabase> {
  const { name, adminUrl, appUrl, drop } = await cloneTemplate(template);
  const { db, sql } = connectApp(appUrl, { applicationName: name });
  const admin = postgres(adminUrl, { max: 3, onnotice: () => undefined });
  const close = async () => {
    await Promise.all([sql.end({ timeout: 5 }), admin.end({ timeout: 5 })]);
    await drop();
  };
  return { db, sql, admin, name, adminUrl, appUrl, close };
}
