import { spawnSync } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import {
  chmodSync,
  chownSync,
  existsSync,
  linkSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { refuseUnless } from '../refusal.ts';
import type { Binaries } from './binaries.ts';
import { pathForServer } from './server-path.ts';
import type { ServerUser } from './server-user.ts';

/** What lies in a data folder: the server's own files in `cluster`, and beside them what only we may read. */
export function layOut(dataFolder: string) {
  return {
    cluster: join(dataFolder, 'cluster'),
    password: join(dataFolder, 'superuser-password'),
    holders: join(dataFolder, 'holders'),
    log: join(dataFolder, 'server.log'),
    postmaster: join(dataFolder, 'cluster', 'postmaster.pid'),
  };
}
export type Layout = ReturnType<typeof layOut>;

/** Makes the data folder's skeleton. Safe when two processes do it at once: whoever comes second finds it made. */
export function prepareDataFolder(dataFolder: string): Layout {
  const layout = layOut(dataFolder);
  mkdirSync(dataFolder, { recursive: true });
  chmodSync(dataFolder, 0o700);
  mkdirSync(layout.holders, { recursive: true });
  if (!existsSync(layout.password)) writeOnce(layout.password, randomBytes(24).toString('base64url'));
  return layout;
}

/** A link appears whole or not at all, and never replaces what another process put there first. */
function writeOnce(path: string, text: string): void {
  const draft = `${path}.${randomBytes(4).toString('hex')}`;
  writeFileSync(draft, text, { mode: 0o600 });
  try {
    linkSync(draft, path);
  } catch (error) {
    if (!existsSync(path)) throw error;
  } finally {
    rmSync(draft);
  }
}

type ClusterCall = { layout: Layout; binaries: Binaries; user: ServerUser; syncs: boolean };

/** Runs initdb into a folder of its own and renames it, so that a cluster is either whole or not there. */
export function prepareCluster({ layout, binaries, user, syncs }: ClusterCall): void {
  if (existsSync(join(layout.cluster, 'PG_VERSION'))) return;
  const draft = mkdtempSync(`${layout.cluster}.`);
  const password = `${draft}.password`;
  try {
    writeFileSync(password, readFileSync(layout.password), { mode: 0o600 });
    if (user) for (const path of [draft, password]) chownSync(path, user.uid, user.gid);
    runInitdb({ draft, password, binaries, user, syncs });
    renameSync(draft, layout.cluster);
  } catch (error) {
    rmSync(draft, { recursive: true, force: true });
    if (!existsSync(join(layout.cluster, 'PG_VERSION'))) throw error;
  } finally {
    rmSync(password, { force: true });
  }
}

type InitdbCall = { draft: string; password: string; binaries: Binaries; user: ServerUser; syncs: boolean };

function runInitdb({ draft, password, binaries, user, syncs }: InitdbCall): void {
  const folder = pathForServer(draft, user, 3);
  const secret = pathForServer(password, user, 4);
  const answer = spawnSync(
    binaries.initdb,
    [
      `--pgdata=${folder.argument}`,
      `--pwfile=${secret.argument}`,
      '--username=postgres',
      '--auth=scram-sha-256',
      '--encoding=UTF8',
      '--locale=C',
      '--locale-provider=builtin',
      '--builtin-locale=C.UTF-8',
      '--no-instructions',
      ...(syncs ? [] : ['--no-sync']),
    ],
    {
      ...user,
      cwd: '/',
      env: serverEnvironment(),
      stdio: ['ignore', 'pipe', 'pipe', folder.descriptor ?? 'ignore', secret.descriptor ?? 'ignore'],
      encoding: 'utf8',
    },
  );
  folder.close();
  secret.close();
  refuseUnless(answer.status === 0, `initdb failed: ${answer.error?.message ?? answer.stderr}`);
}

/** The server must not see PGDATA and friends of whoever started us, nor a locale that this machine lacks. */
export function serverEnvironment(): NodeJS.ProcessEnv {
  const { PATH, SystemRoot, TEMP } = process.env;
  return { PATH, SystemRoot, TEMP, LC_ALL: 'C', TZ: 'UTC' };
}
