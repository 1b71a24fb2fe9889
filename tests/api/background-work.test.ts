import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { writeLetter } from '../../apps/api/src/features/letter/use-cases.ts';
import { withStorehouseTx } from '../../apps/api/src/platform/with-tx.ts';
import { cancelWork, enqueue, type WorkWish } from '../../apps/api/src/platform/work/enqueue.ts';
import { TryLater, type WorkTasks } from '../../apps/api/src/platform/work/task.ts';
import { openTestApp, type TestApp } from '../support/app.ts';
import { type Catcher, openCatcher } from '../support/catcher.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { doWork } from '../support/work.ts';

const STARTS = '2026-09-01T15:00:00Z';
let app: TestApp;
let storehouse: TestStorehouse;
let birchall: TestHousehold;
let catcher: Catcher;
beforeAll(async () => {
  app = await openTestApp(STARTS);
  storehouse = await aStorehouse(app);
  birchall = await aHousehold(app, storehouse, 'Birchall');
  catcher = await openCatcher();
});
beforeEach(() => {
  app.clock.now = new Date(STARTS);
});
afterEach(() => app.admin`delete from book.work`);
afterAll(async () => {
  await catcher.close();
  await app.close();
});

const inside = <Result>(work: Parameters<typeof withStorehouseTx<Result>>[2]) =>
  withStorehouseTx(app.outside, storehouse.storehouseId, work);
const ask = (wish: WorkWish) => inside((tx) => enqueue(tx, storehouse.storehouseId, wish));
const later = (seconds: number) => {
  app.clock.now = new Date(app.clock.now.getTime() + seconds * 1000);
};
const readWork = async () => (await storehouse.coordinator.get(`${storehouse.path}/background-work`)).body;

/** Notes each payload that was done; the task `fails` throws what it is given. */
function noting(error: Error = new Error('boom')) {
  const done: unknown[] = [];
  const note = async ({ payload }: { payload: unknown }) => void done.push(payload);
  const tasks: WorkTasks = {
    note: { settle: (_, job) => note(job) },
    fails: {
      async settle() {
        throw error;
      },
    },
  };
  return { done, tasks };
}

test('work is asked for with what it follows from, or not at all', async () => {
  const { done, tasks } = noting();
  const failing = inside(async (tx) => {
    await enqueue(tx, storehouse.storehouseId, { task: 'note', payload: { of: 'what never was' } });
    throw new Error('the change failed');
  });
  await expect(failing).rejects.toThrow('the change failed');
  await ask({ task: 'note', payload: { of: 'what was' } });
  expect(await doWork(app, { tasks })).toMatchObject({ done: 1 });
  expect(done).toEqual([{ of: 'what was' }]);
});

test('work belongs to the storehouse of its transaction', async () => {
  const other = '018f0000-0000-7000-8000-000000000000';
  await expect(inside((tx) => enqueue(tx, other, { task: 'note' }))).rejects.toThrow();
});

test('work waits for its time; a wish under the same key moves it, and it can be taken back', async () => {
  const { done, tasks } = noting();
  const at = (time: string, nth: number) =>
    ask({ task: 'note', payload: { nth }, runAt: new Date(`2026-09-01T${time}:00Z`), jobKey: 'closing' });
  await at('16:00', 1);
  await at('18:00', 2);
  await ask({ task: 'note', payload: { nth: 3 }, runAt: new Date('2026-09-01T16:00:00Z'), jobKey: 'other' });
  await inside((tx) => cancelWork(tx, storehouse.storehouseId, 'other'));
  app.clock.now = new Date('2026-09-01T17:00:00Z');
  await doWork(app, { tasks });
  expect(done).toEqual([]);
  app.clock.now = new Date('2026-09-01T18:00:00Z');
  await doWork(app, { tasks });
  expect(done).toEqual([{ nth: 2 }]);
});

test('what fails is tried again after e seconds, then e², ten times, and is dead then', async () => {
  const { tasks } = noting(new TryLater('The mill is shut.'));
  await ask({ task: 'fails' });
  expect(await doWork(app, { tasks })).toMatchObject({ later: 1, dead: 0 });
  later(2);
  expect(await doWork(app, { tasks })).toMatchObject({ later: 0 });
  later(1); // 3 s > e
  expect(await doWork(app, { tasks })).toMatchObject({ later: 1 });
  later(7);
  expect(await doWork(app, { tasks })).toMatchObject({ later: 0 }); // 7 s < e² = 7.39 s
  for (let tries = 3; tries <= 10; tries += 1) {
    later(10_000); // e⁹ s = 8,103 s
    expect(await doWork(app, { tasks })).toMatchObject(tries < 10 ? { later: 1 } : { dead: 1 });
  }
  later(100_000);
  expect(await doWork(app, { tasks })).toEqual({ done: 0, gone: 0, later: 0, dead: 0 });
  expect((await readWork()).works).toMatchObject([{ state: 'dead', tries: 10, words: 'The mill is shut.' }]);
});

test('a fault of our own is told without what was in it', async () => {
  const { tasks } = noting(new Error('ida@example.org owes 12.00'));
  await ask({ task: 'fails' });
  await doWork(app, { tasks });
  const { works } = await readWork();
  expect(works[0]).toMatchObject({ words: 'Something went wrong in the server. Its log says more.' });
});

test('work that ends its process each time is dead after ten tries, whatever it is', async () => {
  const { done, tasks } = noting();
  await ask({ task: 'note' });
  await app.admin`update book.work set tries = 10`; // ten processes took it up, and none came to its end
  expect(await doWork(app, { tasks })).toMatchObject({ dead: 1 });
  expect(done).toEqual([]);
  expect((await readWork()).works[0].words).toBe('The server stopped in the middle of it each time.');
});

test('work that this server does not know waits for one that does', async () => {
  await ask({ task: 'unheard-of' });
  expect(await doWork(app)).toMatchObject({ later: 1 });
});

test('the coordinator sees a dead letter’s person and reason, tries it again, and it is sent', async () => {
  await inside((tx) =>
    writeLetter(tx, storehouse.storehouseId, {
      ...{ personId: birchall.personId, kind: 'balance-due', subject: 'You owe 12.00' },
      ...{ text: 'You owe 12.00', html: '<p>You owe 12.00</p>', stopUrl: null },
    }),
  );
  catcher.mood = { code: 550, words: '5.1.1 no mailbox birchall@example.org here', at: 'rcpt' };
  expect(await doWork(app, catcher)).toMatchObject({ dead: 1 });
  const told = await readWork();
  expect(told).toMatchObject({
    ...{ dead: 1, waiting: 0 },
    mail: { isOn: false },
    works: [{ state: 'dead', personName: 'Birchall Person', task: 'send-letter' }],
  });
  expect(told.works[0].words).toBe(
    'The mail server refused the letter for good: “550 5.1.1 no mailbox … here”.',
  );
  expect(JSON.stringify(told)).not.toMatch(/balance|12\.00|birchall@/);
  const retry = `${storehouse.path}/background-work/${told.works[0].id}/retry`;
  expect((await birchall.caller.post(retry)).body).toMatchObject({ code: 'duty-missing' });
  expect((await storehouse.coordinator.post(retry)).status).toBe(204);
  expect((await storehouse.coordinator.post(retry)).body).toMatchObject({ code: 'thing-not-found' });
  catcher.mood = 'take';
  expect(await doWork(app, catcher)).toMatchObject({ done: 1 });
  expect(catcher.caught.map(({ to }) => to)).toEqual(['birchall@example.org']);
  expect(await readWork()).toMatchObject({ dead: 0, waiting: 0, works: [] });
});
