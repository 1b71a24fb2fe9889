import { randomBytes } from 'node:crypto';
import { openLog, startWork } from '@sheafbook/api';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { carryOut } from '../../apps/api/src/worker/carry-out.ts';
import { openTestDatabase, type TestDatabase } from '../support/database.ts';
import { aBusyStorehouse, makeTally, TALLY_TASKS, untilMarked } from '../support/tally.ts';

let book: TestDatabase;
beforeAll(async () => {
  book = await openTestDatabase();
  await makeTally(book);
});
beforeEach(async () => {
  await book.admin`truncate tally.mark restart identity`;
  await book.admin`delete from book.work`;
  await book.admin`delete from graphile_worker._private_jobs`;
});
afterAll(() => book.close());

const workshop = () => ({
  outside: { db: book.db, sql: book.sql, now: () => new Date(), randomBytes },
  tasks: TALLY_TASKS,
  log: openLog(process.env.TEST_LOG ?? 'silent'),
});

test('work that several hands take up at once is done once', async () => {
  const storehouseId = await aBusyStorehouse(book, 5);
  const works = await book.admin<{ id: string }[]>`select work_id as id from book.work`;
  const hands = works.flatMap(({ id: workId }) => [1, 2, 3, 4].map(() => ({ storehouseId, workId })));
  const ends = await Promise.all(hands.map((of) => carryOut(workshop(), of)));
  expect(ends.filter((end) => end === 'done')).toHaveLength(5);
  const [found] =
    await book.admin`select count(*)::integer as marks, count(distinct work_id)::integer as works
    from tally.mark`;
  expect(found).toEqual({ marks: 5, works: 5 });
});

test('a thousand pieces of one storehouse do not hold up the one of another', async () => {
  await aBusyStorehouse(book, 1000);
  const other = await aBusyStorehouse(book, 1);
  const worker = await startWork({ workshop: workshop(), appUrl: book.appUrl, concurrency: 1 });
  await untilMarked(book, 1, other);
  await worker.stop();
  const [place] = await book.admin<{ before: number }[]>`select count(*)::integer as before from tally.mark
    where mark_no < (select mark_no from tally.mark where storehouse_id = ${other})`;
  expect(place?.before).toBeLessThan(5); // one hand, so without the order by what waits it would be 1,000
});

test('what a dead worker held is set free at the next start', async () => {
  await aBusyStorehouse(book, 1);
  await book.admin`update graphile_worker._private_jobs set locked_at = now(), locked_by = 'worker-gone'`;
  await book.admin`update graphile_worker._private_job_queues set locked_at = now(), locked_by = 'worker-gone'`;
  const worker = await startWork({ workshop: workshop(), appUrl: book.appUrl });
  await untilMarked(book, 1);
  await worker.stop();
});

test('what a living worker holds stays its own', async () => {
  await aBusyStorehouse(book, 1);
  await book.admin.reserve().then(async (line) => {
    await line`select pg_advisory_lock(hashtextextended('worker-here', 0))`;
    await line`update graphile_worker._private_jobs set locked_at = now(), locked_by = 'worker-here'`;
    const worker = await startWork({ workshop: workshop(), appUrl: book.appUrl });
    await worker.stop();
    const [job] = await line`select locked_by from graphile_worker._private_jobs`;
    expect(job).toEqual({ locked_by: 'worker-here' });
    await line`select pg_advisory_unlock_all()`;
    line.release();
  });
});
