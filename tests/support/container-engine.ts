import { existsSync } from 'node:fs';
import { request } from 'node:http';
import { homedir } from 'node:os';
import { join } from 'node:path';

export type Env = Readonly<Record<string, string | undefined>>;

/** Asks only whether a container engine answers, and never waits longer than the given time (ledger-notes 6.22). */
export async function findEngine(env: Env, probeMilliseconds: number): Promise<string | undefined> {
  const addresses = env.DOCKER_HOST ? [env.DOCKER_HOST] : usualSockets(env);
  const answers = await Promise.all(
    addresses.map(async (address) => ((await answersPing(address, probeMilliseconds)) ? address : undefined)),
  );
  return answers.find((address) => address !== undefined);
}

function usualSockets(env: Env): string[] {
  const runtime = env.XDG_RUNTIME_DIR;
  return [
    '/var/run/docker.sock',
    join(homedir(), '.docker/run/docker.sock'),
    ...(runtime ? [join(runtime, 'docker.sock')] : []),
  ]
    .filter((path) => existsSync(path))
    .map((path) => `unix://${path}`);
}

function answersPing(address: string, probeMilliseconds: number): Promise<boolean> {
  return new Promise((resolve) => {
    const call = request(pingOptions(address), (answer) => {
      answer.resume();
      settle(answer.statusCode === 200);
    });
    const timer = setTimeout(() => settle(false), probeMilliseconds);
    const settle = (isThere: boolean) => {
      clearTimeout(timer);
      call.destroy();
      resolve(isThere);
    };
    call.on('error', () => settle(false)).end();
  });
}

function pingOptions(address: string) {
  if (address.startsWith('unix://')) return { socketPath: address.slice('unix://'.length), path: '/_ping' };
  const { hostname, port } = new URL(address);
  return { host: hostname, port: port || 2375, path: '/_ping' };
}
