import { expect, test } from 'vitest';
import { isTest, isTypeScript, listFiles, type SourceFile } from './source-files.ts';

const EXPORT = /^export (?:declare )?(?:async )?(?:abstract )?(function|const|class|type|interface) (\w+)/;

/** The exports of a file whose doc comment is missing, or names no units or no errors. */
function undocumented({ path, text }: SourceFile): string[] {
  const lines = text.split('\n');
  return lines.flatMap((line, index) => {
    const [, , name] = EXPORT.exec(line) ?? [];
    if (!name) return [];
    const comment = commentAbove(lines, index);
    if (comment === '') return [`${name} of ${path} has no doc comment`];
    const missing = ['Units:', 'Errors:'].filter((word) => !comment.includes(word));
    return missing.map((word) => `${name} of ${path} says nothing of its ${word.toLowerCase().slice(0, -1)}`);
  });
}

function commentAbove(lines: readonly string[], index: number): string {
  if (!lines[index - 1]?.trim().endsWith('*/')) return '';
  const start = lines.slice(0, index).findLastIndex((line) => line.trim().startsWith('/**'));
  return start < 0 ? '' : lines.slice(start, index).join('\n');
}

/** The files whose exports leave a package by its door. */
function publicFiles(): SourceFile[] {
  const files = listFiles(
    (path) => /^packages\/[^/]+\/src\//.test(path) && isTypeScript(path) && !isTest(path),
  );
  const doors = files.filter(({ path }) => path.endsWith('/src/index.ts'));
  const reached = new Set(
    doors.flatMap(({ path, text }) =>
      [...text.matchAll(/from '\.\/([^']+)'/g)].map((match) => path.replace('index.ts', match[1] ?? '')),
    ),
  );
  return files.filter(({ path }) => reached.has(path));
}

test('each public export of a package says its units and its errors', () => {
  const files = publicFiles();
  expect(files.length).toBeGreaterThan(50);
  expect(files.flatMap(undocumented)).toEqual([]);
});

test('what the check says of a bare export, and of a comment that is not enough', () => {
  const path = 'packages/x/src/y.ts';
  expect(undocumented({ path, text: 'export function half() {}' })).toEqual([
    `half of ${path} has no doc comment`,
  ]);
  const text = '/** Halves. Units: grams. */\nexport const half = 1;';
  expect(undocumented({ path, text })).toEqual([`half of ${path} says nothing of its errors`]);
});
