import { type ChildProcess, spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { readdirSync, rmSync, writeFileSync } from 'node:fs';
import type { Socket } from 'node:net';
import { join } from 'node:path';
import { isAlive } from './postmaster.ts';

/**
 * Several processes may use one embedded server (`npm start` and `npm run audit` beside it): each leaves a file named
 * after its process id, and the last to go stops the server. A process that is killed can't clean up, so a small
 * shell watches over it: when the pipe between them closes, the shell does what the holder would have done.
 */
export type Holder = { isLast(): boolean; release(): void };

const GUARD = `
read -r _
rm -f "$1/$2"
for other in "$1"/*; do
  pid="\${other##*/}"; pid="\${pid%%-*}"
  kill -0 "$pid" 2>/dev/null && exit 0
done
pid="$(head -n 1 "$3/postmaster.pid" 2>/dev/null)" || exit 0
kill -INT "$pid" 2>/dev/null
[ -z "$4" ] && exit 0
while kill -0 "$pid" 2>/dev/null; do sleep 0.1; done
rm -rf "$4"
`;

export type HolderPlace = { holders: string; cluster: string; removeAfterwards: string | undefined };

export function hold({ holders, cluster, removeAfterwards }: HolderPlace): Holder {
  const name = `${process.pid}-${randomBytes(4).toString('hex')}`;
  const guard = startGuard([holders, name, cluster, removeAfterwards ?? '']);
  writeFileSync(join(holders, name), `${guard?.pid ?? ''}`);
  return {
    isLast: () =>
      !readdirSync(holders).some((other) => other !== name && isAlive(Number.parseInt(other, 10))),
    release() {
      guard?.kill('SIGKILL');
      rmSync(join(holders, name), { force: true });
    },
  };
}

/** Detached, so that Ctrl-C in the terminal reaches the app only, which then stops things in order. */
function startGuard(args: string[]): ChildProcess | undefined {
  if (process.platform === 'win32') return undefined; // no shell there: an orphan is taken over at the next start
  const guard = spawn('/bin/sh', ['-c', GUARD, 'sheafbook-guard', ...args], {
    detached: true,
    cwd: '/',
    stdio: ['pipe', 'ignore', 'ignore'],
  });
  guard.on('error', () => undefined); // without a guard the next start takes the orphan over
  guard.unref();
  (guard.stdin as Socket | null)?.unref();
  return guard;
}
