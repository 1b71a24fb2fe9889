import { chmodSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { administer, startEmbedded } from '@sheafbook/db';
import { expect, onTestFinished, test } from 'vitest';
import { makeTemporaryFolder } from '../support/temporary-folder.ts';

/** The user ids that a running process has, by what the kernel says of it. */
const userIdsOf = (processId: number): number[] => {
  const line = /^Uid:\s+(.*)$/m.exec(readFileSync(`/proc/${processId}/status`, 'utf8'))?.[1] ?? '';
  return line.split(/\s+/).map(Number);
};

const processIdOf = (dataFolder: string): number =>
  Number(readFileSync(join(dataFolder, 'cluster/postmaster.pid'), 'utf8').split('\n')[0]);

test('this part is run by root, as it must be', () => {
  expect(process.getuid?.()).toBe(0);
});

test('root starts a server that runs as nobody of consequence, from a folder closed to all others', async () => {
  const closed = makeTemporaryFolder();
  chmodSync(closed, 0o700);
  const dataFolder = join(closed, 'book');
  const server = await startEmbedded({ dataFolder, persistent: true });
  onTestFinished(() => server.stop());
  const userIds = userIdsOf(processIdOf(dataFolder));
  expect(userIds).toHaveLength(4);
  expect(userIds).not.toContain(0);
  expect(statSync(closed).mode & 0o777).toBe(0o700);
  const answer = await administer(server.adminUrl, async (sql) => {
    await sql`create table bale (grams bigint not null)`;
    await sql`insert into bale values (22680)`;
    const [row] = await sql<{ grams: string }[]>`select sum(grams) as grams from bale`;
    return Number(row?.grams);
  });
  expect(answer).toBe(22_680);
});
