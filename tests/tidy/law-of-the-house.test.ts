import { describe, expect, test } from 'vitest';
import { findCircles, listImports } from './imports.ts';
import { judgeAmbient, judgeImport, judgeQueries, judgeTransaction } from './law-of-the-house.ts';
import { isTest, isTypeScript, listFiles } from './source-files.ts';

const files = listFiles((path) => isTypeScript(path) && !isTest(path));
const imports = listImports(files);

test('there is a house to look at', () => {
  expect(files.length).toBeGreaterThan(100);
  expect(imports.length).toBeGreaterThan(300);
});

test('every import keeps the law of the house', () => {
  expect(imports.map(judgeImport).filter((sentence) => sentence !== null)).toEqual([]);
});

test('no files import each other in a circle', () => {
  expect(findCircles(imports)).toEqual([]);
});

test('pure calculation reaches for no clock and no chance', () => {
  const pure = files.filter(({ path }) => path.startsWith('packages/'));
  expect(pure.map(({ path, text }) => judgeAmbient(path, text)).filter(Boolean)).toEqual([]);
});

test('transactions start in use cases only, and queries can’t run outside one', () => {
  expect(files.map(({ path, text }) => judgeTransaction(path, text)).filter(Boolean)).toEqual([]);
  expect(files.flatMap(({ path, text }) => judgeQueries(path, text))).toEqual([]);
});

describe('what the checks say of a breach', () => {
  const api = 'apps/api/src/features';
  test.for([
    ['packages/units/src/a.ts', 'node:fs', 'pure calculation'],
    ['packages/units/src/a.ts', 'db/src/index.ts', 'pure calculation'],
    [`${api}/pledge/use-cases.ts`, `${api}/buy/present.ts`, 'reaches into'],
    [`${api}/pledge/use-cases.ts`, `${api}/buy/policy.ts`, 'reaches into'],
    [`${api}/pledge/queries.ts`, 'hono', 'knows HTTP'],
    [`${api}/pledge/routes.ts`, `${api}/pledge/queries.ts`, 'skips the use cases'],
    [`${api}/pledge/policy.ts`, `${api}/pledge/queries.ts`, 'no reading of its own'],
    ['apps/api/src/platform/a.ts', `${api}/pledge/use-cases.ts`, 'is beneath'],
    ['apps/api/src/platform/other.ts', 'lucia', 'stays behind'],
    ['packages/sharing/src/a.ts', 'highs', 'stays in solve'],
    ['apps/web/src/a.ts', 'db/src/index.ts', 'typed client'],
  ] as const)('%s → %s', ([from, to, words]) => {
    expect(judgeImport({ from, to })).toContain(words);
  });

  test('a circle is found and named', () => {
    const circle = [
      { from: 'a.ts', to: 'b.ts' },
      { from: 'b.ts', to: 'a.ts' },
    ];
    expect(findCircles(circle)).toEqual([['a.ts', 'b.ts']]);
  });

  test('imports are read in each of their forms', () => {
    const text = `import a from './a.ts';\nimport type {\n  B,\n} from '@sheafbook/units';\nexport * from './c.ts';\nawait import('./d.ts');`;
    expect(listImports([{ path: 'x/y.ts', text }]).map(({ to }) => to)).toEqual([
      'x/a.ts',
      'packages/units/src/index.ts',
      'x/c.ts',
      'x/d.ts',
    ]);
  });

  test('an ambient clock, a stray transaction and a query without one', () => {
    expect(judgeAmbient('packages/x.ts', 'const today = Date.now();')).toContain('Date.now');
    expect(judgeTransaction(`${api}/pledge/routes.ts`, 'withTx(context, work)')).toContain('use cases');
    const query = 'export async function listPledges(db: Db): Promise<void> {}';
    expect(judgeQueries(`${api}/pledge/queries.ts`, query)).toEqual([
      `listPledges of ${api}/pledge/queries.ts does not take the transaction first`,
    ]);
  });
});
