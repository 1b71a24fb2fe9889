import { type ChildProcess, spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** Runs a TypeScript file in a process of its own; killed when the test ends, if it still runs. */
export function startChild(file: string, args: readonly string[] = [], folder = ROOT): ChildProcess {
  const child = spawn(process.execPath, ['--import', 'tsx', file, ...args], {
    cwd: folder,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  onTestFinished(() => {
    child.kill('SIGKILL');
  });
  return child;
}

/** The first line that the child prints, as JSON. Rejects when it ends without one. */
export function firstLine(child: ChildProcess): Promise<unknown> {
  return new Promise((resolve, reject) => {
    child.once('exit', (code) => reject(new Error(`the child ended with ${code} and said nothing`)));
    if (child.stdout) createInterface(child.stdout).once('line', (line) => resolve(JSON.parse(line)));
  });
}

export function ended(child: ChildProcess): Promise<void> {
  return new Promise((resolve) => {
    if (child.exitCode !== null || child.signalCode !== null) resolve();
    child.once('exit', () => resolve());
  });
}
