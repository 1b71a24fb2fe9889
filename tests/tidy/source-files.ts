import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** A file of the project by its path from the top, with its text. */
export type SourceFile = { readonly path: string; readonly text: string };

const top = fileURLToPath(new URL('../..', import.meta.url));

/** The files that belong to the project: tracked by git, or new and not ignored. Errors: when git does not answer. */
export function listFiles(accept: (path: string) => boolean): SourceFile[] {
  const listed = execFileSync('git', ['ls-files', '-z', '--cached', '--others', '--exclude-standard'], {
    cwd: top,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  return [...new Set(listed.split('\0'))]
    .filter((path) => path !== '' && accept(path) && existsSync(`${top}/${path}`))
    .toSorted()
    .map((path) => ({ path, text: readFileSync(`${top}/${path}`, 'utf8') }));
}

export const isTypeScript = (path: string): boolean => /\.tsx?$/.test(path);
export const isTest = (path: string): boolean =>
  /\.test\.tsx?$/.test(path) || path.startsWith('tests/') || /^packages\/[^/]+\/test\//.test(path);
