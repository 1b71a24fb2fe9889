import { expect, test } from 'vitest';
import { isTypeScript, listFiles, type SourceFile } from './source-files.ts';

const TEXT = /\.(tsx?|mjs|sql|md|json|ya?ml|css|html|sh)$|(^|\/)(Dockerfile|run|\.npmrc|\.gitignore)$/;
// Spelt in parts, so that this file does not hold what it looks for.
const MACHINE_PATH = new RegExp(
  `(^|[^A-Za-z0-9_.@*])(/(${['wo' + 'rk', 'ho' + 'me', 'Us' + 'ers', 'ro' + 'ot'].join('|')})/[a-z]|[A-Z]:\\\\\\\\Us` +
    'ers)',
);
const DYNAMIC_SQL = /\bsql\.(unsafe|raw)\(|\.unsafe\(/;

/**
 * Text of SQL that was written by a person and is run as it stands: migrations, the roles an administrator runs, what
 * Drizzle compiled, and the same again as the bench recorded it.
 */
const WRITTEN_SQL = new Set([
  'db/src/migrate.ts',
  'db/src/transaction.ts',
  'tests/bench/bare.ts',
  'tests/database/open-database.test.ts',
]);

const linesWith = ({ path, text }: SourceFile, pattern: RegExp): string[] =>
  text.split('\n').flatMap((line, index) => (pattern.test(line) ? [`${path}:${index + 1}`] : []));

const ownText = listFiles((path) => TEXT.test(path));

test('no file names a path of one machine', () => {
  const files = ownText.filter(({ path }) => path !== 'package-lock.json');
  expect(files.flatMap((file) => linesWith(file, MACHINE_PATH))).toEqual([]);
  const bad = { path: 'a.md', text: `see /${'ho' + 'me'}/somebody/notes` };
  expect(linesWith(bad, MACHINE_PATH)).toEqual(['a.md:1']);
});

test('the lockfile names no host to download from', () => {
  const lock = listFiles((path) => path === 'package-lock.json');
  expect(lock).toHaveLength(1);
  expect(lock.flatMap((file) => linesWith(file, /"resolved": "https?:/))).toEqual([]);
});

test('no SQL is built from dynamic text (ledger-notes 6.20)', () => {
  const code = ownText.filter(({ path }) => isTypeScript(path) && !WRITTEN_SQL.has(path));
  const found = code.filter(({ path }) => !path.startsWith('tests/tidy/'));
  expect(found.flatMap((file) => linesWith(file, DYNAMIC_SQL))).toEqual([]);
  expect(linesWith({ path: 'a.ts', text: 'tx.execute(sql.raw(text))' }, DYNAMIC_SQL)).toEqual(['a.ts:1']);
});

test('nothing is skipped, singled out or left for later', () => {
  const LEFT = /\b(it|test|describe)\.(skip|only|todo)\(|\b(TODO|FIXME)\b/;
  const code = ownText.filter(({ path }) => isTypeScript(path) && path !== 'tests/tidy/plain-text.test.ts');
  expect(code.flatMap((file) => linesWith(file, LEFT))).toEqual([]);
  expect(linesWith({ path: 'a.test.ts', text: 'test.skip("x")' }, LEFT)).toEqual(['a.test.ts:1']);
});

test('no file of code is longer than a reader holds in mind', () => {
  const code = ownText.filter(({ path }) => isTypeScript(path));
  const long = code.filter(({ text }) => text.split('\n').length > 401);
  expect(long.map(({ path }) => path)).toEqual([]);
});
