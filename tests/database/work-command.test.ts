import { spawn } from 'node:child_process';
import { extract } from 'letterparser';
import { expect, onTestFinished, test } from 'vitest';
import { openCatcher } from '../support/catcher.ts';
import {
  aServer,
  commandOf,
  endOf,
  found,
  lookAt,
  startProcess,
  writeOne,
} from '../support/server-process.ts';

test('a process of its own sends the letter that was written elsewhere, and ends cleanly when it is told to', async () => {
  const server = await aServer();
  const { database, outside } = server;
  await found(outside);
  const catcher = await openCatcher();
  onTestFinished(() => catcher.close());
  const child = await startProcess('work', {
    ...{ DATABASE_URL: database.adminUrl, SMTP_URL: catcher.smtpUrl },
    ...{ MAIL_FROM: 'book@alder.example', PUBLIC_URL: 'http://book.alder.example' },
  });
  const letterId = await writeOne(server);
  await expect.poll(() => lookAt(database, letterId), { timeout: 20_000 }).toMatchObject({ state: 'done' });
  expect((await lookAt(database, letterId))?.living).toBeGreaterThan(0);
  const sent = catcher.caught.map(({ to, source }) => [to, extract(source).subject]);
  expect(sent).toEqual([['ada@example.org', 'Your pick-up is tomorrow']]);

  const ending = endOf(child);
  child.kill('SIGTERM');
  expect(await ending).toBe(0);
  expect(await lookAt(database, letterId)).toEqual({ state: 'done', tries: 1, living: 0, held: 0 });
}, 90_000);

test('it says in words that it needs a database server, and ends', async () => {
  const child = spawn(process.execPath, commandOf('work'), {
    env: { ...process.env, DATABASE_URL: '' },
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  let said = '';
  child.stderr.on('data', (chunk) => {
    said += String(chunk);
  });
  expect(await endOf(child)).toBe(1);
  expect(said).toContain('npm run work needs DATABASE_URL');
});
