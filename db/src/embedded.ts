import { type ChildProcess, spawn } from 'node:child_process';
import { closeSync, existsSync, openSync, renameSync, rmSync, statSync } from 'node:fs';
import { createServer } from 'node:net';
import { isAbsolute, resolve } from 'node:path';
import postgres from 'postgres';
import { type Binaries, chooseCacheFolder, prepareBinaries } from './embedded/binaries.ts';
import { type Layout, prepareCluster, prepareDataFolder, serverEnvironment } from './embedded/cluster.ts';
import { type Holder, hold } from './embedded/holders.ts';
import { isAlive, isSomethingElse, readIfThere, readPostmaster, waitFor } from './embedded/postmaster.ts';
import { pathForServer } from './embedded/server-path.ts';
import { chooseServerUser, type ServerUser } from './embedded/server-user.ts';
import { asArguments, FIXED_SETTINGS, memorySettings, type Settings } from './embedded/settings.ts';
import { refuseUnless } from './refusal.ts';

/** An embedded server in use. `stop` waits for a clean shutdown, unless another process still uses the server. */
export type Embedded = { adminUrl: string; port: number; stop(): Promise<void> };

export type EmbeddedOptions = {
  dataFolder: string;
  /** 0 or nothing: any free port. A server that already runs on the data folder keeps its own port. */
  port?: number;
  /** False: a throwaway server, whose data folder is removed when it stops. */
  persistent: boolean;
  /** Server settings over the defaults. Only throwaway servers pass `fsync: 'off'`. */
  settings?: Settings;
  /** Where the binaries are copied to if the server's user can't reach those of npm; any folder that all may enter. */
  cacheFolder?: string;
};

const START_MILLISECONDS = 60_000; // recovery after a crash may take a while on a small board
const STOP_MILLISECONDS = 30_000;

/**
 * Starts PostgreSQL from the binaries of npm on a data folder of its own, or joins the one that already runs there:
 * another process of ours, or an orphan whose Node was killed. Whoever leaves last stops the server. As root the
 * server runs as an unprivileged user. `adminUrl` is the superuser's, and its password lies in the data folder,
 * readable by the owner of that folder alone.
 */
export async function startEmbedded(options: EmbeddedOptions): Promise<Embedded> {
  const dataFolder = isAbsolute(options.dataFolder) ? options.dataFolder : resolve(options.dataFolder);
  const layout = prepareDataFolder(dataFolder);
  const removeAfterwards = options.persistent ? undefined : dataFolder;
  const holder = hold({ ...layout, removeAfterwards });
  try {
    const { port } = (await joinRunning(layout)) ?? (await startFresh(layout, options));
    const adminUrl = urlFor(layout, port);
    let stopping: Promise<void> | undefined;
    const stop = () => {
      stopping ??= leave(layout, holder, removeAfterwards);
      return stopping;
    };
    return { adminUrl, port, stop };
  } catch (error) {
    await leave(layout, holder, removeAfterwards);
    throw error;
  }
}

function urlFor(layout: Layout, port: number): string {
  return `postgres://postgres:${readIfThere(layout.password) ?? ''}@127.0.0.1:${port}/postgres`;
}

/** A server that accepts this data folder's own random password is this data folder's server. */
async function joinRunning(layout: Layout): Promise<{ port: number } | undefined> {
  const recorded = readPostmaster(layout.postmaster);
  if (!recorded) return undefined;
  if (!isAlive(recorded.pid) || isSomethingElse(recorded.pid)) {
    rmSync(layout.postmaster, { force: true }); // left by a crash
    return undefined;
  }
  const settled = await waitFor(START_MILLISECONDS, () => {
    const now = readPostmaster(layout.postmaster);
    return !now || !isAlive(now.pid) || now.isReady ? { now } : undefined;
  });
  const port = settled?.now?.port;
  return port !== undefined && (await accepts(urlFor(layout, port))) ? { port } : undefined;
}

async function accepts(url: string): Promise<boolean> {
  const sql = postgres(url, { max: 1, connect_timeout: 5, onnotice: () => undefined });
  try {
    await sql`select 1`;
    return true;
  } catch {
    return false;
  } finally {
    await sql.end({ timeout: 1 });
  }
}

async function startFresh(layout: Layout, options: EmbeddedOptions): Promise<{ port: number }> {
  const user = chooseServerUser(layout.cluster);
  const binaries = prepareBinaries(user, options.cacheFolder ?? chooseCacheFolder(options.persistent));
  prepareCluster({ layout, binaries, user, syncs: options.persistent });
  for (let attempt = 1; ; attempt += 1) {
    const port = options.port || (await findFreePort());
    const settings = { ...memorySettings(), ...FIXED_SETTINGS, ...options.settings, port };
    const problem = await launch({ layout, binaries, user, settings });
    if (problem === undefined) return { port };
    // Two processes may have started at once: the postmaster's own lock file let one through, the other joins it.
    const joined = await joinRunning(layout);
    if (joined) return joined;
    const mayRetry = attempt < 3 && !options.port && problem.includes('could not bind'); // a port just taken
    refuseUnless(mayRetry, `PostgreSQL did not start:\n${problem}`);
  }
}

type Launch = { layout: Layout; binaries: Binaries; user: ServerUser; settings: Settings };

/** Spawns the postmaster and waits until it is ready; returns the end of its log when it gave up instead. */
async function launch({ layout, binaries, user, settings }: Launch): Promise<string | undefined> {
  const log = openLog(layout.log);
  const folder = pathForServer(layout.cluster, user, 3);
  const child = spawn(binaries.postgres, ['-D', folder.argument, ...asArguments(settings)], {
    ...user,
    cwd: '/',
    env: serverEnvironment(),
    detached: true, // Ctrl-C must not stop the database under an app that is still answering
    stdio: ['ignore', log.descriptor, log.descriptor, folder.descriptor ?? 'ignore'],
  });
  closeSync(log.descriptor);
  folder.close();
  child.unref();
  return waitUntilReady(child, layout, log.startsAt);
}

async function waitUntilReady(child: ChildProcess, layout: Layout, logStartsAt: number) {
  let failure: string | undefined;
  child.once('error', (error) => {
    failure = error.message;
  });
  child.once('exit', (code) => {
    failure = `exit code ${code}\n${readIfThere(layout.log)?.slice(logStartsAt) ?? ''}`;
  });
  const end = await waitFor(START_MILLISECONDS, () => {
    if (failure !== undefined) return { failure };
    const now = readPostmaster(layout.postmaster);
    return now?.isReady && now.pid === child.pid ? { failure: undefined } : undefined;
  });
  return end ? end.failure : `not ready after ${START_MILLISECONDS} ms`;
}

/** Straight into a file, not a pipe: the server must be able to write on when Node is gone. */
function openLog(path: string): { descriptor: number; startsAt: number } {
  const startsAt = statSync(path, { throwIfNoEntry: false })?.size ?? 0;
  const isLong = startsAt > 5_000_000;
  if (isLong) renameSync(path, `${path}.old`);
  return { descriptor: openSync(path, 'a', 0o600), startsAt: isLong ? 0 : startsAt };
}

function findFreePort(): Promise<number> {
  return new Promise((found, failed) => {
    const server = createServer().once('error', failed);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      const port = typeof address === 'object' && address ? address.port : 0;
      server.close(() => found(port));
    });
  });
}

async function leave(layout: Layout, holder: Holder, removeAfterwards: string | undefined): Promise<void> {
  const isLast = holder.isLast();
  holder.release();
  if (!isLast) return;
  await shutDown(layout);
  if (removeAfterwards !== undefined) rmSync(removeAfterwards, { recursive: true, force: true });
}

/** Fast shutdown: open transactions are rolled back, what was committed stays. The pid file goes last of all. */
async function shutDown(layout: Layout): Promise<void> {
  const running = readPostmaster(layout.postmaster);
  if (!running || !isAlive(running.pid) || isSomethingElse(running.pid)) return;
  const isGone = () => !existsSync(layout.postmaster) || !isAlive(running.pid) || undefined;
  signal(running.pid, 'SIGINT');
  if (await waitFor(STOP_MILLISECONDS, isGone)) return;
  signal(running.pid, 'SIGQUIT'); // immediate: the next start recovers from the log
  await waitFor(STOP_MILLISECONDS, isGone);
}

function signal(pid: number, name: NodeJS.Signals): void {
  try {
    process.kill(pid, name);
  } catch {
    // gone in the meantime, which is what we wanted
  }
}
