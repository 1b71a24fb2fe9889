import { administer, connectApp, withDatabase } from '@sheafbook/db';
import { inject } from 'vitest';
import { tellStory } from '../../../db/src/demo/story.ts';
import { openTeller } from '../../../db/src/demo/teller.ts';
import { openTestDatabase, type TestDatabase } from '../../support/database.ts';
import { cloneTemplate, demoNameOf } from '../../support/template.ts';

/** A number that no other lock of the tests has. */
const TELLING = 20_261_121;

/**
 * A database of one test file's own with the whole story of the demo in it. The first file of a run that asks for one
 * has the story told; every other clones what was told then, in a tenth of the time.
 */
export async function openDemoDatabase(): Promise<TestDatabase> {
  const template = inject('template');
  const name = demoNameOf(template);
  await administer(template.adminUrl, async (sql) => {
    await sql`select pg_advisory_lock(${TELLING})`; // given up when this connection ends
    const told = await sql`select from pg_database where datname = ${name} and datistemplate`;
    if (told.length > 0) return;
    await sql`drop database if exists ${sql(name)} with (force)`; // of a story that stopped
    await cloneTemplate(template, name);
    const { db, sql: app } = connectApp(withDatabase(template.appUrl, name), { applicationName: name });
    try {
      await tellStory(openTeller({ db, sql: app }, () => undefined));
    } finally {
      await app.end({ timeout: 5 });
    }
    await sql`alter database ${sql(name)} with is_template true allow_connections false`;
  });
  return openTestDatabase({ ...template, name });
}
