import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { onTestFinished } from 'vitest';
import { chooseScratch } from './scratch.ts';

/** A folder of the running test's own, removed when the test ends. Made with mode 0700, as mkdtemp does. */
export function makeTemporaryFolder(
  files: Readonly<Record<string, string>> = {},
  inside = chooseScratch(),
): string {
  const folder = mkdtempSync(join(inside, 'sheafbook-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const [name, text] of Object.entries(files)) writeFile(join(folder, name), text);
  return folder;
}

export function writeFile(path: string, text: string): void {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
}
