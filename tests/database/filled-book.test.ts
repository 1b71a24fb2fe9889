import { administer, migrate } from '@sheafbook/db';
import type { Sql } from 'postgres';
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { anOlderBook } from '../support/older-book.ts';
import { aPackingSession, aPourBody, bringWheat, openHall, type TestHall } from '../support/packing.ts';
import { aSeamer, THICK } from '../support/seam.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

const MINUTE = 60_000;

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
});
afterAll(() => app.close());

const wait = (minutes: number) => {
  app.clock.now = new Date(app.clock.now.getTime() + minutes * MINUTE);
};
const ahead = (minutes: number) => new Date(app.clock.now.getTime() + minutes * MINUTE).toISOString();

/** A packing day whose checks are made where they are written down, as all were before; one loss is written down late. */
async function aDayAtTheLine(): Promise<void> {
  const { caller } = hall.lead;
  const seamer = await aSeamer(storehouse, hall);
  const day = await aPackingSession(storehouse, hall);
  bodyOf(await caller.post(`${day}/start`));
  await bringWheat(hall, day, 'Ashdown');
  const pour = async (grams: number[], pouredAt?: string) => {
    const body = aPourBody(hall, { name: 'Ashdown', grams, targetGrams: 10, ...(pouredAt && { pouredAt }) });
    return bodyOf(await caller.post(`${day}/pours`, body), 201);
  };
  const lose = async (grams: number, to: string, lostAt?: string) => {
    const { bagId, householdId } = aPourBody(hall, { name: 'Ashdown', grams: [] });
    bodyOf(
      await caller.post(`${day}/losses`, { bagId, householdId, grams, to, ...(lostAt && { lostAt }) }),
      201,
    );
  };
  const check = async (wish: Record<string, unknown>) => bodyOf(await seamer.check(day, wish), 201);
  await check({ occasion: 'first' }); // before anything was closed
  wait(1);
  await pour([11, 12]);
  wait(1);
  await check({}); // a trial can after two
  wait(1);
  await pour([13, 14, 15]);
  wait(1);
  await check({ serial: 4 }); // names one that is not the last
  wait(1);
  const { entryId } = await pour([16]);
  bodyOf(await caller.post(`${day}/pours/${entryId}/undoing`, { reason: 'that was no can' }), 201);
  await check({ serial: 6 }); // names one that was taken back
  await pour([17], ahead(4));
  await check({ serial: 7 }); // names one that a phone with a fast clock wrote
  wait(10);
  await pour([18]);
  wait(1);
  await check({ serial: 8, measures: THICK }); // fails
  for (const _ of [1, 2, 3]) {
    wait(1);
    await check({ occasion: 'clearing' });
  }
  await lose(31, 'spilled');
  await lose(25, 'sampled', ahead(-9));
  const { windows } = bodyOf(await caller.get(`${day}/seals`));
  const [{ suspects }] = windows;
  const containerIds = suspects.map(({ containerId }: { containerId: string }) => containerId);
  const answer = { containerIds, disposition: 're-can', note: 'too thick' };
  bodyOf(await caller.post(`${storehouse.path}/seal-holds/settling`, answer));
  wait(1);
  const kind = { containerKindId: hall.shelves.kinds['can-no-10'], treatment: 'oxygen-absorber' };
  const containers = containerIds.map((containerId: string) => ({ containerId }));
  bodyOf(await caller.post(`${storehouse.path}/re-cannings`, { containers, ...kind }), 201);
  wait(1);
  const { checks } = bodyOf(await caller.get(`${day}/seals`));
  await check({ serial: 9 }); // names a new can, into which an old one went
  expect(checks.length).toBe(9);
}

const checksIn = (sql: Sql) =>
  sql<
    Record<string, unknown>[]
  >`select serial, closed_through, passed, checked_at, recorded_at, good_until, good_serial
    from book.seal_check order by seal_check_id`;

test('checks of a filled book stand for what they stood for when they were made, as those do that are written today', async () => {
  await aDayAtTheLine();
  const old = await anOlderBook('0077_thermometer_check.sql', app.admin);
  onTestFinished(old.drop);
  expect(old.rows).toBeGreaterThan(500);
  await administer(old.url, async (sql) => {
    // A trial of the first days, from before anybody wrote down how far the line was: it stands for nothing of its moment.
    const [first] = await sql`update book.seal_check set closed_through = 0 where seal_check_id =
      (select seal_check_id from book.seal_check where serial is null and closed_through = 2 limit 1) returning serial`;
    expect(first).toEqual({ serial: null });
  });
  expect((await migrate(old.url))[0]).toBe('0078_check_at_its_hour.sql');

  const today = await checksIn(app.admin);
  const mended = await administer(old.url, checksIn);
  expect(mended.map((check) => check.recorded_at)).toEqual(mended.map((check) => check.checked_at));
  expect(mended).toEqual(
    today.map((check) =>
      check.serial === null && check.closed_through === 2
        ? { ...check, closed_through: 0, good_serial: 0 }
        : check,
    ),
  );
  // A named can that was closed before: itself. A trial: as far as the line was. One of a fast clock: what was before the check.
  expect(mended.map((check) => [check.serial, check.good_serial])).toEqual([
    ...[
      [null, 0],
      [null, 0],
      [4, 4],
      [6, 6],
      [7, 0],
      [8, 8],
      [null, 8],
      [null, 8],
      [null, 8],
      [9, 9],
    ],
  ]);
  const untilSeconds = mended.map(
    ({ checked_at, good_until }) => (Number(checked_at as Date) - Number(good_until as Date)) / 1000,
  );
  expect(untilSeconds).toEqual([0, 0, 60, 0, 0, 60, 0, 0, 0, 60]);
}, 120_000);

test('losses of a filled book keep the only hour that it knew, when they reached it', async () => {
  const old = await anOlderBook('0080_container_tare.sql', app.admin);
  onTestFinished(old.drop);
  await migrate(old.url);
  const today = await lossesIn(app.admin);
  expect(today.map(({ lost_at, recorded_at }) => Number(recorded_at) - Number(lost_at))).toEqual([
    0,
    9 * MINUTE,
  ]);
  const mended = await administer(old.url, lossesIn);
  expect(mended).toEqual(today.map((loss) => ({ ...loss, lost_at: loss.recorded_at })));
}, 120_000);

const lossesIn = (sql: Sql) =>
  sql<Record<string, unknown>[]>`select * from book.packing_loss order by entry_id`;
