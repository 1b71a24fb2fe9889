import { administer } from '@sheafbook/db';
import { extract } from 'letterparser';
import { expect, onTestFinished, test } from 'vitest';
import { openCatcher } from '../support/catcher.ts';
import { aServer, found, interrupt, lookAt, startProcess, writeOne } from '../support/server-process.ts';

/** The same settings for each process; ports of the system's own choosing, so that two stand beside each other. */
function settingsOf(adminUrl: string, smtpUrl: string): Record<string, string> {
  return {
    ...{ DATABASE_URL: adminUrl, PORT: '0', HOST: '127.0.0.1', SMTP_URL: smtpUrl },
    ...{ MAIL_FROM: 'book@alder.example', PUBLIC_URL: 'http://book.alder.example' },
  };
}

async function aCatcher() {
  const catcher = await openCatcher();
  onTestFinished(() => catcher.close());
  return catcher;
}

test('npm start sends what is written unless WORK=none, which leaves it to another process', async () => {
  const server = await aServer();
  const { database, outside } = server;
  await found(outside);
  const catcher = await aCatcher();
  const settings = settingsOf(database.adminUrl, catcher.smtpUrl);
  const letterId = await writeOne(server);

  const idle = await startProcess('start', { ...settings, WORK: 'none' });
  expect(await lookAt(database, letterId)).toMatchObject({ state: 'waiting', living: 0 });
  // The idle one has as long as the other takes to start and to send.
  const busy = await startProcess('start', settings);
  await expect.poll(() => lookAt(database, letterId), { timeout: 30_000 }).toMatchObject({ state: 'done' });
  expect(catcher.caught.map(({ to, source }) => [to, extract(source).subject])).toEqual([
    ['ada@example.org', 'Your pick-up is tomorrow'],
  ]);
  expect(await interrupt(busy)).toBe(0);

  const nextId = await writeOne(server);
  expect(await lookAt(database, nextId)).toEqual({ state: 'waiting', tries: 0, living: 0, held: 0 });
  expect(await interrupt(idle)).toBe(0);
  expect(await lookAt(database, nextId)).toEqual({ state: 'waiting', tries: 0, living: 0, held: 0 });
  expect(catcher.caught).toHaveLength(1);
}, 120_000);

test('npm run demo does its work, writing to nobody whatever the settings say, and leaves it alone with WORK=none', async () => {
  const server = await aServer();
  const { database } = server;
  const catcher = await aCatcher();
  const settings = settingsOf(database.adminUrl, catcher.smtpUrl);

  const idle = await startProcess('demo', { ...settings, WORK: 'none' });
  const letterId = await writeOne(server);
  expect(await interrupt(idle)).toBe(0);
  expect(await lookAt(database, letterId)).toEqual({ state: 'waiting', tries: 0, living: 0, held: 0 });

  const busy = await startProcess('demo', settings);
  await expect.poll(() => lookAt(database, letterId), { timeout: 30_000 }).toMatchObject({ state: 'done' });
  expect((await lookAt(database, letterId))?.living).toBeGreaterThan(0);
  const [letter] = await administer(
    database.adminUrl,
    (sql) => sql`select state, unsent_because as because from book.letter where letter_id = ${letterId}`,
  );
  expect(letter).toEqual({ state: 'unsent', because: 'E-mail is off on this server.' });
  expect(catcher.caught).toEqual([]);
  expect(await interrupt(busy)).toBe(0);
  expect(await lookAt(database, letterId)).toEqual({ state: 'done', tries: 1, living: 0, held: 0 });
}, 240_000);
