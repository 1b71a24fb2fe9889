import { afterAll, beforeAll, expect, test } from 'vitest';
import { ended, firstLine, startChild } from '../support/child.ts';
import { openTestDatabase, type TestDatabase } from '../support/database.ts';
import { aBusyStorehouse, makeTally, untilMarked } from '../support/tally.ts';

let book: TestDatabase;
beforeAll(async () => {
  book = await openTestDatabase();
  await makeTally(book);
});
afterAll(() => book.close());

async function startWorker() {
  const child = startChild('tests/support/work-process.ts', [book.appUrl]);
  await firstLine(child);
  return async () => {
    child.kill('SIGKILL');
    await ended(child);
  };
}

const countLocked = async (): Promise<number> => {
  const [row] = await book.admin<{ count: number }[]>`
    select count(*)::integer as count from graphile_worker._private_jobs where locked_by is not null`;
  return row?.count ?? 0;
};

test('of a thousand pieces of work none is lost and none done twice when workers are killed in the middle', async () => {
  for (let number = 0; number < 4; number += 1) await aBusyStorehouse(book, 250);
  let left = 0;
  for (const marks of [250, 600]) {
    const kills = await Promise.all([startWorker(), startWorker()]);
    await untilMarked(book, marks);
    await Promise.all(kills.map((kill) => kill()));
    left += await countLocked();
  }
  expect(left).toBeGreaterThan(0); // else nobody died in the middle of anything, and nothing was shown
  const kills = await Promise.all([startWorker(), startWorker()]);
  await untilMarked(book, 1000);
  await book.admin`select pg_sleep(1)`; // whatever would be done twice has the time to be
  await Promise.all(kills.map((kill) => kill()));
  const [found] =
    await book.admin`select count(*)::integer as marks, count(distinct m.work_id)::integer as works,
    (select count(*)::integer from book.work where state = 'done') as done from tally.mark m`;
  expect(found).toEqual({ marks: 1000, works: 1000, done: 1000 });
}, 600_000);
