import { existsSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { openDatabase } from '@sheafbook/db';
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';
import { runCommand } from '../support/run-command.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { makeTemporaryFolder } from '../support/temporary-folder.ts';

// The two commands as an operator types them: out of a server of one's own, into an embedded one in an empty folder.
let app: TestApp;
let storehouse: TestStorehouse;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
});
afterAll(() => app.close());

const EXPORT = 'db/src/export-command.ts';
const IMPORT = 'apps/api/src/import-command.ts';
const exportTo = (out: string, ...args: string[]) =>
  runCommand(EXPORT, ['--out', out, ...args], { DATABASE_URL: app.adminUrl });

test('a storehouse moves from one server to another by two commands', async () => {
  const folder = makeTemporaryFolder();
  const out = join(folder, 'alder-row.jsonl');
  const exported = await exportTo(out);
  expect(exported).toMatchObject({ code: 0, errors: '' });
  expect(exported.output).toMatch(/^Alder Row Storehouse: \d+ rows in .*alder-row\.jsonl\./);
  expect(statSync(out).mode & 0o777).toBe(0o600);

  const SHEAFBOOK_DATA = join(folder, 'book');
  const args = [out, '--coordinator-email', 'Ada@new.example.org'];
  const imported = await runCommand(IMPORT, args, { SHEAFBOOK_DATA });
  expect(imported.code).toBe(0);
  expect(imported.output).toMatch(
    new RegExp(`^Alder Row Storehouse \\(${storehouse.storehouseId}\\), as of `),
  );
  expect(imported.output).toMatch(/\n0 entries and 0 movements add up; all \d+ invariants hold\.\n/);
  expect(imported.output).toMatch(
    /\nAda Ashdown signs in as ada@new\.example\.org with [\w-]{16} — shown this once/,
  );

  const again = await runCommand(IMPORT, args, { SHEAFBOOK_DATA });
  expect(again).toMatchObject({ code: 1, output: '' });
  expect(again.errors).toMatch(/is in this database already\n$/);

  const book = await openDatabase({ env: {}, dataFolder: SHEAFBOOK_DATA, log: () => undefined });
  onTestFinished(() => book.close());
  expect([
    ...(await book.sql`select email, name from door.find_login_by_email('ada@new.example.org')`),
  ]).toEqual([{ email: 'ada@new.example.org', name: 'Ada Ashdown' }]);
});

test('nothing is written over, and of several storehouses one must be named', async () => {
  const folder = makeTemporaryFolder({ 'there.jsonl': 'something else\n' });
  const there = join(folder, 'there.jsonl');
  expect(await exportTo(there)).toMatchObject({ code: 1, errors: expect.stringMatching(/is there already/) });
  expect(readFileSync(there, 'utf8')).toBe('something else\n');

  const other = await anotherStorehouse(app);
  const unsaid = await exportTo(join(folder, 'unsaid.jsonl'));
  expect(unsaid.errors).toBe(
    `Say --storehouse with the id of one of these:\n  ${storehouse.storehouseId}  Alder Row Storehouse\n  ${other.storehouseId}  Bell Lane Storehouse\n`,
  );
  const out = join(folder, 'bell-lane.jsonl');
  expect(await exportTo(out, '--storehouse', other.storehouseId)).toMatchObject({ code: 0 });
  expect(JSON.parse(readFileSync(out, 'utf8').split('\n')[0] ?? '').storehouse.name).toBe(
    'Bell Lane Storehouse',
  );
});

test.for([
  { args: [], words: /Say which file to import/ },
  { args: ['no-such-file.jsonl', '--coordinator-email', 'nobody'], words: /e-mail/i },
  { args: ['no-such-file.jsonl', '--coordinator-email', 'a@example.org'], words: /no-such-file.jsonl/ },
  { args: ['x', '--login', 'Ada'], words: /--login reads 'Name=email'/ },
  { args: ['x', '--colour', 'red'], words: /--colour/ },
])('import $args is refused before anything is opened', async ({ args, words }) => {
  const refused = await runCommand(IMPORT, args, { DATABASE_URL: 'postgres://nobody@127.0.0.1:1/nothing' });
  expect(refused).toMatchObject({ code: 1, output: '', errors: expect.stringMatching(words) });
  expect(refused.errors).not.toMatch(/\n\s+at /);
});

test('an export without a book says so, and leaves no file', async () => {
  const folder = makeTemporaryFolder();
  const out = join(folder, 'out.jsonl');
  const refused = await runCommand(EXPORT, ['--out', out], { SHEAFBOOK_DATA: join(folder, 'nowhere') });
  expect(refused).toMatchObject({ code: 1, errors: expect.stringMatching(/^there is no book in /) });
  expect(existsSync(out)).toBe(false);
});
