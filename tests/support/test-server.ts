import { mkdtempSync } from 'node:fs';
import { join } from 'node:path';
import { startEmbedded } from '@sheafbook/db';
import { type Env, findEngine } from './container-engine.ts';
import { chooseScratch } from './scratch.ts';

/** A PostgreSQL 18 for one run of the tests, and in words which one it is and why. */
export type TestServer = { adminUrl: string; where: string; stop(): Promise<void> };

export type TestServerOptions = { probeMilliseconds?: number; pullMilliseconds?: number };

const IMAGE = 'postgres:18';

/** Speed matters and the data does not: these servers live for one run. Never pass these to a server with a book. */
export const THROWAWAY_SETTINGS = {
  fsync: 'off',
  synchronous_commit: 'off',
  full_page_writes: 'off',
  shared_buffers: '256MB',
  max_connections: 200,
  plan_cache_mode: 'force_generic_plan', // few rows, and few statements that come often: planning is what they cost
  max_wal_size: '512MB',
} as const;

/** TEST_DATABASE_URL if given, else a container where an engine answers and has the image, else the embedded server. */
export async function startTestServer(env: Env, options: TestServerOptions = {}): Promise<TestServer> {
  if (env.TEST_DATABASE_URL) {
    return {
      adminUrl: env.TEST_DATABASE_URL,
      where: 'the server of TEST_DATABASE_URL',
      stop: async () => undefined,
    };
  }
  const engine = await findEngine(env, options.probeMilliseconds ?? 5_000);
  if (engine === undefined) return startEmbeddedServer('no container engine answers');
  try {
    return await startContainer(options.pullMilliseconds ?? 180_000);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return startEmbeddedServer(`an engine answers at ${engine}, but ${IMAGE} did not start: ${reason}`);
  }
}

async function startEmbeddedServer(because: string): Promise<TestServer> {
  const dataFolder = mkdtempSync(join(chooseScratch(), 'sheafbook-test-'));
  const { adminUrl, stop } = await startEmbedded({
    dataFolder,
    persistent: false,
    settings: THROWAWAY_SETTINGS,
  });
  return { adminUrl, where: `embedded PostgreSQL, because ${because}`, stop };
}

/** The same locale as the embedded server's, so that texts sort alike in both. */
async function startContainer(pullMilliseconds: number): Promise<TestServer> {
  const { PostgreSqlContainer } = await import('@testcontainers/postgresql');
  const starting = new PostgreSqlContainer(IMAGE)
    .withEnvironment({
      POSTGRES_INITDB_ARGS: '--locale-provider=builtin --builtin-locale=C.UTF-8 --locale=C',
    })
    .withCommand(['postgres', ...Object.entries(THROWAWAY_SETTINGS).flatMap(([k, v]) => ['-c', `${k}=${v}`])])
    .start();
  const started = await withinTime(starting, pullMilliseconds).catch((error: unknown) => {
    starting.then((late) => late.stop()).catch(() => undefined); // a container that comes too late must not stay
    throw error;
  });
  return {
    adminUrl: started.getConnectionUri(),
    where: `a container of ${IMAGE}`,
    stop: async () => {
      await started.stop();
    },
  };
}

async function withinTime<Result>(work: Promise<Result>, milliseconds: number): Promise<Result> {
  let timer: NodeJS.Timeout | undefined;
  const tooLate = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(`nothing after ${milliseconds} ms`)), milliseconds);
  });
  return Promise.race([work, tooLate]).finally(() => clearTimeout(timer));
}
