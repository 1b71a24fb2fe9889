import { mkdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { chooseScratch } from '../support/scratch.ts';
import { makeTemporaryFolder } from '../support/temporary-folder.ts';

test('databases lie in the memory’s folder where it has room, else where temporary files do', () => {
  const folder = join(makeTemporaryFolder(), 'memory');
  mkdirSync(folder);
  expect(chooseScratch(folder, 1)).toBe(folder);
  expect(chooseScratch(folder, Number.MAX_SAFE_INTEGER)).toBe(tmpdir());
  expect(chooseScratch(join(folder, 'not-there'), 1)).toBe(tmpdir());
});
