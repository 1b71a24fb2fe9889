import { readFileSync } from 'node:fs';
import { setTimeout as sleep } from 'node:timers/promises';

export type Postmaster = { pid: number; port: number; isReady: boolean };

/** Reads `postmaster.pid`: PostgreSQL keeps pid, port and state on its lines 1, 4 and 8. */
export function readPostmaster(path: string): Postmaster | undefined {
  const lines = readIfThere(path)?.split('\n') ?? [];
  const [pid, port] = [Number(lines[0]), Number(lines[3])];
  if (!(pid > 0) || !(port > 0)) return undefined;
  return { pid, port, isReady: lines[7]?.trim() === 'ready' };
}

export function readIfThere(path: string): string | undefined {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return undefined;
  }
}

export function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EPERM') return false;
  }
  return !isZombie(pid);
}

/** A killed process whose parent was killed too answers signals until init gets round to it, but runs no more. */
function isZombie(pid: number): boolean {
  const stat = readIfThere(`/proc/${pid}/stat`) ?? '';
  return stat
    .slice(stat.lastIndexOf(')') + 1)
    .trimStart()
    .startsWith('Z');
}

/** After a power cut the recorded pid may belong to something else; only Linux tells us cheaply what it is. */
export function isSomethingElse(pid: number): boolean {
  const name = readIfThere(`/proc/${pid}/comm`)?.trim();
  return name !== undefined && name !== 'postgres';
}

/** Asks again every 20 ms until `find` returns something; undefined when the time is over. */
export async function waitFor<Found>(milliseconds: number, find: () => Found | undefined) {
  for (const until = performance.now() + milliseconds; performance.now() < until; await sleep(20)) {
    const found = find();
    if (found !== undefined) return found;
  }
  return undefined;
}
