import { afterAll, beforeAll } from 'vitest';
import { openTestDatabase, type TestDatabase } from '../../support/database.ts';
import { type DemoSite, openDemoSite } from './demo-site.ts';

/** The demo's site for one file of tests: told before the first of them, gone after the last. */
export function demoOfFile(): DemoSite & { readonly database: TestDatabase } {
  let opened: { database: TestDatabase; site: DemoSite } | undefined;
  const now = () => {
    if (!opened) throw new Error('the demo is told before the first test');
    return opened;
  };
  beforeAll(async () => {
    const database = await openTestDatabase();
    opened = { database, site: await openDemoSite(database) };
  }, 240_000);
  afterAll(async () => {
    await opened?.site.close();
    await opened?.database.close();
  });
  return {
    get database() {
      return now().database;
    },
    get url() {
      return now().site.url;
    },
    get root() {
      return now().site.root;
    },
    visit: (looker, options) => now().site.visit(looker, options),
    close: () => now().site.close(),
  };
}
