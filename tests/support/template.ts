import { randomBytes } from 'node:crypto';
import {
  administer,
  ensureAppLogin,
  ensureDatabase,
  grantDatabase,
  migrate,
  withDatabase,
} from '@sheafbook/db';

/** What a test file needs to clone a database of its own. The password of the app's role is in `appUrl`. */
export type Template = { adminUrl: string; appUrl: string; name: string };

/** Migrates one database and closes it to connections, so that any number of test files may clone it at once. */
export async function makeTemplate(adminUrl: string): Promise<Template> {
  const name = `sheafbook_template_${randomBytes(4).toString('hex')}`;
  const url = await ensureDatabase(adminUrl, name);
  await migrate(url);
  const appUrl = await ensureAppLogin(url);
  await administer(adminUrl, async (sql) => {
    await sql`alter database ${sql(name)} with is_template true allow_connections false`;
  });
  return { adminUrl, appUrl, name };
}

/** The database in which the first test file that needs the demo's story has it told. */
export const demoNameOf = ({ name }: Template): string => `${name}_demo`;

export async function dropTemplate(template: Template): Promise<void> {
  await administer(template.adminUrl, async (sql) => {
    for (const name of [demoNameOf(template), template.name]) {
      const found = await sql`select from pg_database where datname = ${name}`;
      if (found.length === 0) continue;
      await sql`alter database ${sql(name)} with is_template false`;
      await sql`drop database ${sql(name)} with (force)`;
    }
  });
}

export type Clone = { name: string; adminUrl: string; appUrl: string; drop(): Promise<void> };

/** `wal_log` copies through the buffers: quicker than copying files for a database of this size. */
export async function cloneTemplate(
  template: Template,
  name = `sheafbook_test_${randomBytes(6).toString('hex')}`,
): Promise<Clone> {
  await administer(template.adminUrl, async (sql) => {
    await sql`create database ${sql(name)} template ${sql(template.name)} strategy wal_log`;
  });
  const url = withDatabase(template.adminUrl, name);
  await administer(url, grantDatabase);
  return {
    name,
    adminUrl: url,
    appUrl: withDatabase(template.appUrl, name),
    drop: () =>
      administer(template.adminUrl, async (sql) => {
        await sql`drop database if exists ${sql(name)} with (force)`;
      }),
  };
}
