import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const top = fileURLToPath(new URL('../../..', import.meta.url));

/** All that a build is made from. */
const SOURCES = [
  'apps/web/src',
  'apps/web/static',
  'apps/web/index.html',
  'apps/web/vite.config.ts',
  'packages',
];
/** What a build writes last. */
const BUILT = join(top, 'apps/web/dist/index.html.gz');

/**
 * Builds the web app as it stands, so that the demo opens on screens. Whatever the builder says goes to standard
 * error. An installation without the builder serves the door plate, or what was built before. What is built already
 * stays: a server that runs beside this one may be sending it just now.
 */
export async function buildWeb(): Promise<void> {
  const vite = `${top}/node_modules/vite/bin/vite.js`;
  if (!existsSync(vite) || isBuilt()) return;
  const building = spawn(process.execPath, [vite, 'build', 'apps/web', '--logLevel', 'warn'], {
    cwd: top,
    env: { ...process.env, NODE_ENV: 'production' },
    stdio: ['ignore', 2, 2],
  });
  const [status] = await once(building, 'exit');
  if (status !== 0) console.error('The web app could not be built; the API answers all the same.');
}

function isBuilt(): boolean {
  if (!existsSync(BUILT)) return false;
  const builtAt = statSync(BUILT).mtimeMs;
  return [...SOURCES, 'package-lock.json'].every((path) => changedAt(join(top, path)) < builtAt);
}

/** When a file, or whatever lies in a folder, was changed last; a file that went away changes its folder. */
function changedAt(path: string): number {
  const found = statSync(path);
  if (!found.isDirectory()) return found.mtimeMs;
  const inner = readdirSync(path).filter((name) => name !== 'node_modules');
  return Math.max(found.mtimeMs, ...inner.map((name) => changedAt(join(path, name))));
}
