import { type ChildProcess, fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Load, LoadResult } from './load.ts';

/** The process that asks; one for the whole bench. */
export type Asker = { ask(load: Load): Promise<LoadResult>; end(): void };

export function startAsker(): Asker {
  const file = fileURLToPath(new URL('./load.ts', import.meta.url));
  const child = fork(file, { execArgv: ['--import', 'tsx'] });
  return { ask: (load) => askChild(child, load), end: () => child.kill() };
}

function askChild(child: ChildProcess, load: Load): Promise<LoadResult> {
  return new Promise((resolve, reject) => {
    child.once('message', (answer: { result?: LoadResult; error?: string }) =>
      answer.result ? resolve(answer.result) : reject(new Error(answer.error)),
    );
    child.send(load);
  });
}

export type Pair = { readonly ours: LoadResult; readonly bare: LoadResult };

/** Turns of ours and bare, close together, so that whatever else the machine does hits both of a pair alike. */
export async function takeTurns(
  rounds: number,
  ours: () => Promise<LoadResult>,
  bare: () => Promise<LoadResult>,
): Promise<Pair[]> {
  await ours(); // warms both sides up: connections, prepared statements, compiled code
  await bare();
  const pairs: Pair[] = [];
  for (let round = 0; round < rounds; round += 1) pairs.push({ ours: await ours(), bare: await bare() });
  return pairs;
}
