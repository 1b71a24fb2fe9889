import { extract } from 'letterparser';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { enqueueEverywhere } from '../../apps/api/src/worker/run-work-once.ts';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aBuy, bodyOf } from '../support/buy.ts';
import { aFeed, eventsOf } from '../support/calendar.ts';
import { type Catcher, openCatcher } from '../support/catcher.ts';
import { aFixedBuy, anOrderedBuy, type TestGrainBuy } from '../support/fixed-buy.ts';
import { refusalOf, refused } from '../support/landing-books.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { doWork } from '../support/work.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestGrainBuy;
let catcher: Catcher;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  buy = await anOrderedBuy(app, storehouse, { name: 'Autumn grain' });
  catcher = await openCatcher();
});
beforeEach(() => {
  app.clock.now = new Date('2026-09-28T15:00:00Z');
});
afterAll(async () => {
  await catcher.close();
  await app.close();
});

const DELL = 'dell@example.org';
const versionOf = async (path: string): Promise<number> =>
  bodyOf(await storehouse.coordinator.get(path)).version;
const move = async (landingOn: string | null, { path } = buy) =>
  storehouse.coordinator.put(`${path}/landing-day`, { landingOn, version: await versionOf(path) });

/** What Dell is written, once everything that is due in the background is done. */
async function subjectsAt(instant: string): Promise<string[]> {
  app.clock.now = new Date(instant);
  catcher.caught.length = 0;
  await enqueueEverywhere(app.outside, 'remind');
  await doWork(app, catcher);
  return catcher.caught
    .filter(({ to }) => to === DELL)
    .map(({ source }) => (extract(source).subject ?? '').replace('Alder Row Storehouse: ', ''));
}

describe('the landing day of an ordered buy', () => {
  test('that is moved is told to those who pledged, reminded of anew, and moves in their calendars', async () => {
    const feed = await aFeed(storehouse, buy.households.Dell.caller, { scope: 'mine' });
    const landing = async () =>
      (await eventsOf(app, feed)).find(({ uid }) => uid.startsWith(`landing.${buy.buyId}@`));
    expect(bodyOf(await move('2026-10-10'))).toMatchObject({ landingOn: '2026-10-10', stage: 'ordered' });
    expect(await landing()).toMatchObject({ day: '2026-10-10', sequence: 0, status: 'CONFIRMED' });
    const of = 'Autumn grain lands Saturday, 10 October 2026';
    expect(await subjectsAt('2026-10-07T15:00:00Z')).toContain(of);
    expect(await subjectsAt('2026-10-08T15:00:00Z')).toEqual([]);

    expect(bodyOf(await move('2026-10-17')).landingOn).toBe('2026-10-17');
    expect(await landing()).toMatchObject({ day: '2026-10-17', sequence: 1 });
    const { notices } = bodyOf(await buy.households.Dell.caller.get(`${storehouse.path}/notices`));
    expect(notices[0]).toMatchObject({
      ...{ kind: 'landing-moved', dueOn: '2026-10-17', path: buy.path },
      words: 'Autumn grain now lands on 2026-10-17.',
    });
    expect(await subjectsAt('2026-10-08T15:15:00Z')).toEqual(['Autumn grain']); // the notice
    expect(await subjectsAt('2026-10-10T15:00:00Z')).toEqual([]); // the day that it was
    expect(await subjectsAt('2026-10-14T15:00:00Z')).toEqual([
      'Autumn grain lands Saturday, 17 October 2026',
    ]);
    expect(await subjectsAt('2026-10-17T15:00:00Z')).toHaveLength(1);

    expect(bodyOf(await move(null)).landingOn).toBeNull();
    expect(await landing()).toMatchObject({ status: 'CANCELLED', sequence: 2 });
  });

  test('stays when the new one is over, is no day, or was read by somebody who saw an older state', async () => {
    expect(await refusalOf(app, () => move('2026-09-27'))).toEqual(
      refused(400, 'invalid-input', 'landingOn'),
    );
    expect(await refusalOf(app, () => move('2026-02-30'))).toEqual(
      refused(400, 'invalid-input', 'landingOn'),
    );
    const stale = { landingOn: '2026-11-01', version: 1 };
    expect(
      await refusalOf(app, () => storehouse.coordinator.put(`${buy.path}/landing-day`, stale)),
    ).toMatchObject({ status: 409, code: 'stale-version', isUnchanged: true });
    bodyOf(await move('2026-09-28')); // today is a day on which it can still land
  });

  test('may come before the planned day of the order, but not before that day while nothing is ordered', async () => {
    app.clock.now = new Date('2026-09-01T15:00:00Z');
    const { households } = buy;
    const fixed = await aFixedBuy(app, storehouse, { households, name: 'Winter grain' });
    const { orderOn } = bodyOf(await storehouse.coordinator.get(fixed.path));
    expect(orderOn).toBe('2026-09-24');
    expect(await refusalOf(app, () => move('2026-09-23', fixed))).toEqual(
      refused(400, 'invalid-input', 'landingOn'),
    );
    expect(bodyOf(await move('2026-09-24', fixed)).landingOn).toBe('2026-09-24');
    expect(bodyOf(await move('2026-09-23')).landingOn).toBe('2026-09-23');
  });

  test('is moved while a buy is fixed or ordered: before, with its plan; after, it has come', async () => {
    app.clock.now = new Date('2026-09-01T15:00:00Z');
    const gathering = await aBuy(app, storehouse, { name: 'Rye' });
    const wrongStage = { status: 409, code: 'buy-stage-wrong', isUnchanged: true };
    expect(await refusalOf(app, () => move('2026-10-20', gathering as TestGrainBuy))).toMatchObject(
      wrongStage,
    );
    await app.admin`update book.buy set stage = 'landed' where buy_id = ${buy.buyId}`;
    expect(await refusalOf(app, () => move('2026-10-20'))).toMatchObject(wrongStage);
  });

  test('is the coordinator’s to move', async () => {
    const wish = { landingOn: '2026-10-20', version: await versionOf(buy.path) };
    const call = () => buy.households.Dell.caller.put(`${buy.path}/landing-day`, wish);
    expect(await refusalOf(app, call)).toEqual(refused(403, 'duty-missing'));
  });
});
