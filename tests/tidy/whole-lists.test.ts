import { expect, test } from 'vitest';
import { listFiles, type SourceFile } from './source-files.ts';

/** A reading that asks for so many rows and has no way to those after them. */
const listCutReadings = (files: readonly SourceFile[]): string[] =>
  files
    .filter(({ text }) => /\blimit: '\d+'/.test(text) && !text.includes('getNextPageParam'))
    .map(({ path }) => path);

test('a page reads a list whole, or leads on to the rest of it', () => {
  const web = listFiles((path) => path.startsWith('apps/web/src/') && /\.tsx?$/.test(path));
  expect(web.length).toBeGreaterThan(200);
  expect(listCutReadings(web)).toEqual([]);
  expect(listCutReadings([{ path: 'a.ts', text: "get({ query: { limit: '200' } })" }])).toEqual(['a.ts']);
});
