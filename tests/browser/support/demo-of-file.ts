import { afterAll, beforeAll } from 'vitest';
import type { TestDatabase } from '../../support/database.ts';
import { type DemoSite, openDemoSite } from './demo-site.ts';
import { openDemoDatabase } from './demo-template.ts';

/** The demo's site for one file of tests: there before the first of them, gone after the last. */
export function demoOfFile(): DemoSite & { readonly database: TestDatabase } {
  let opened: { database: TestDatabase; site: DemoSite } | undefined;
  const now = () => {
    if (!opened) throw new Error('the demo is there before the first test');
    return opened;
  };
  beforeAll(async () => {
    const database = await openDemoDatabase();
    const [storehouse] = await database.admin`select storehouse_id from book.storehouse`;
    opened = { database, site: await openDemoSite(database, storehouse?.storehouse_id) };
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
