import { randomBytes } from 'node:crypto';
import type { AddressInfo } from 'node:net';
import { serve } from '@hono/node-server';
import { type Config, createApp, openLog, readConfig, startWork, TASKS } from '@sheafbook/api';
import { administer } from '../administer.ts';
import { type OpenDatabase, openDatabase } from '../open-database.ts';
import { refuseUnless, StartRefusal } from '../refusal.ts';
import { buildWeb } from './build-web.ts';
import { listFailures } from './checks.ts';
import { readable } from './readable.ts';
import { STOREHOUSE_NAME } from './story/founding.ts';
import { BUY_NAME } from './story/quoting.ts';
import { tellStory } from './story.ts';
import { sumUp } from './summary.ts';
import { openTeller } from './teller.ts';
import { welcome } from './welcome.ts';

/** The evening on which the story ends. The demo's clock never stands before it, so that nothing lies in the future. */
const STORY_ENDS_AT = Date.parse('2026-11-21T23:00:00Z');

/**
 * Opens the demo for trying out: on the embedded server in its own folder, or on the server of DATABASE_URL. Tells the
 * story if it has not been told there, then answers until it is stopped.
 */
export async function openDemo(): Promise<void> {
  const config = readConfig(process.env);
  const database = await openDatabase({
    env: process.env,
    dataFolder: process.env.SHEAFBOOK_DATA ?? '.sheafbook',
    log: (line) => console.error(line),
  });
  try {
    await buildWeb();
    await tellOnce(database);
    const storehouseId = await findStorehouse(database.adminUrl);
    await answer(database, config, storehouseId);
  } catch (error) {
    await database.close();
    throw error;
  }
}

type Found = { id: string; name: string; stage: string | null };

/** Another group's book is left alone, and so is a story that was broken off in the middle. */
async function tellOnce(database: OpenDatabase): Promise<void> {
  const found = await listStorehouses(database.adminUrl);
  refuseUnless(
    found.every(({ name }) => name === STOREHOUSE_NAME),
    'There is a real storehouse in this database, and the demo leaves it alone. ' +
      'Name another folder in SHEAFBOOK_DATA, or another database in DATABASE_URL.',
  );
  refuseUnless(
    found.every(({ stage }) => stage === 'closed'),
    'The story was broken off here the last time. Remove the folder .sheafbook (or empty the database) and begin anew.',
  );
  if (found.length > 0) return;
  const teller = openTeller(database, (line) => console.error(line));
  const { cast, buy } = await tellStory(teller);
  const { summary, evidence } = await sumUp(database.db, cast, buy.buyId);
  console.log(`\n${readable(summary)}\n`);
  for (const failure of listFailures(summary, evidence)) console.error(`FAILS: ${failure}`);
}

function listStorehouses(adminUrl: string): Promise<Found[]> {
  return administer(
    adminUrl,
    (sql) => sql<Found[]>`select s.storehouse_id as id, s.name, b.stage from book.storehouse s
      left join book.buy b on b.storehouse_id = s.storehouse_id and b.name = ${BUY_NAME}`,
  );
}

async function findStorehouse(adminUrl: string): Promise<string> {
  const [found] = await listStorehouses(adminUrl);
  return found?.id ?? '';
}

/** Serves the API and the door plate until Ctrl-C. */
async function answer(database: OpenDatabase, config: Config, storehouseId: string): Promise<void> {
  const startedAt = Date.now();
  const now = () => new Date(Math.max(Date.now(), STORY_ENDS_AT + Date.now() - startedAt));
  // No mail, whatever the settings say: the people of the story have no mailboxes.
  const outside = { db: database.db, sql: database.sql, now, randomBytes };
  const log = openLog('warn');
  const app = createApp({ outside, config: { ...config, mail: undefined }, log });
  const server = serve({ fetch: app.fetch, port: config.port, hostname: config.host });
  await new Promise<void>((listening, failed) => {
    server.once('listening', listening);
    server.once('error', (error: Error & { code?: string }) =>
      failed(
        error.code === 'EADDRINUSE'
          ? new StartRefusal(`Port ${config.port} is taken already: name another in PORT.`)
          : error,
      ),
    );
  });
  const worker = config.worksInside
    ? await startWork({ workshop: { outside, tasks: TASKS, log }, appUrl: database.appUrl })
    : undefined;
  const { port } = server.address() as AddressInfo;
  console.log(welcome({ publicUrl: config.publicUrl.replace(':0', `:${port}`), storehouseId }));
  for (const signal of ['SIGINT', 'SIGTERM'] as const)
    process.once(signal, () => {
      const stopped = worker?.stop();
      server.close(
        () =>
          void Promise.resolve(stopped)
            .then(() => database.close())
            .then(() => process.exit(0)),
      );
      setTimeout(() => process.exit(1), 10_000).unref();
    });
}
