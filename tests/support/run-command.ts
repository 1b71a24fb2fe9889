import { spawn } from 'node:child_process';
import { text } from 'node:stream/consumers';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** Runs a command of ours to its end, with no settings but those given, and returns what it said. */
export async function runCommand(
  file: string,
  args: readonly string[],
  env: Readonly<Record<string, string>>,
): Promise<{ code: number | null; output: string; errors: string }> {
  const { DATABASE_URL: _, APP_DATABASE_URL: __, SHEAFBOOK_DATA: ___, ...outside } = process.env;
  const child = spawn(process.execPath, ['--import', 'tsx', file, ...args], {
    cwd: ROOT,
    env: { ...outside, ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const ended = new Promise<number | null>((resolve) => child.once('close', resolve));
  const [output, errors, code] = await Promise.all([text(child.stdout), text(child.stderr), ended]);
  return { code, output, errors };
}
