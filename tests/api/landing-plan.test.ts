import { extract } from 'letterparser';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { enqueueEverywhere } from '../../apps/api/src/worker/run-work-once.ts';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aBuy, aPledge, bodyOf } from '../support/buy.ts';
import { aFeed, eventsOf } from '../support/calendar.ts';
import { type Catcher, openCatcher } from '../support/catcher.ts';
import { aFixedBuy, anOrderedBuy, type TestGrainBuy } from '../support/fixed-buy.ts';
import { aHousehold } from '../support/household.ts';
import { aPackingLead } from '../support/landed-buy.ts';
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
type Plan = { readonly landingOn: string | null; readonly landingPlace: string; readonly version: number };
async function planOf(path: string): Promise<Plan> {
  const { landingOn, landingPlace, version } = bodyOf(await storehouse.coordinator.get(path));
  return { landingOn, landingPlace, version };
}
const edit = async (change: Partial<Plan>, { path } = buy) =>
  storehouse.coordinator.put(`${path}/landing-plan`, { ...(await planOf(path)), ...change });
const move = (landingOn: string | null, of = buy) => edit({ landingOn }, of);

/** What Dell is written, once everything that is due in the background is done. */
async function lettersAt(instant: string): Promise<{ subject: string; text: string }[]> {
  app.clock.now = new Date(instant);
  catcher.caught.length = 0;
  await enqueueEverywhere(app.outside, 'remind');
  await doWork(app, catcher);
  return catcher.caught
    .filter(({ to }) => to === DELL)
    .map(({ source }) => extract(source))
    .map(({ subject = '', text = '' }) => ({ subject: subject.replace('Alder Row Storehouse: ', ''), text }));
}
const landsWrittenTo = (who: string): string[] =>
  catcher.caught
    .filter(({ to }) => to === `${who}@example.org`)
    .map(({ source }) => (extract(source).subject ?? '').replace('Alder Row Storehouse: ', ''))
    .filter((subject) => subject.includes(' lands '));
const subjectsAt = async (instant: string) => (await lettersAt(instant)).map(({ subject }) => subject);

describe('the landing of an ordered buy', () => {
  test('is on another day: told to those who pledged, reminded of anew, and moves in their calendars', async () => {
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

  test('is told to a packing lead who pledged nothing, since somebody takes it in', async () => {
    const fenwick = await aHousehold(app, storehouse, 'Fenwick');
    const lead = await aPackingLead(app, storehouse, fenwick, 'Pat Fenwick');
    expect(bodyOf(await move('2026-10-09')).landingOn).toBe('2026-10-09');
    const { notices } = bodyOf(await lead.caller.get(`${storehouse.path}/notices`));
    expect(notices[0]).toMatchObject({ kind: 'landing-moved', dueOn: '2026-10-09' });
    expect(bodyOf(await fenwick.caller.get(`${storehouse.path}/notices`)).notices).toEqual([]);
    await lettersAt('2026-10-06T15:00:00Z');
    expect(landsWrittenTo('pat-fenwick')).toEqual(['Autumn grain lands Friday, 9 October 2026']);
    expect(landsWrittenTo('fenwick')).toEqual([]);
    expect(bodyOf(await move(null)).landingOn).toBeNull();
  });

  test('is at another place: told in both languages, read in later letters, and told anew by the calendars', async () => {
    const { caller } = buy.households.Dell;
    const feed = await aFeed(storehouse, caller, { scope: 'mine' });
    const landing = async () =>
      (await eventsOf(app, feed)).find(({ uid }) => uid.startsWith(`landing.${buy.buyId}@`));
    const lastTold = async (language: string): Promise<string> =>
      bodyOf(await caller.get(`${storehouse.path}/notices`, { 'Accept-Language': language })).notices[0]
        .words;
    const both = { landingOn: '2026-10-24', landingPlace: 'Grange hall. Side door' };
    expect(bodyOf(await edit(both))).toMatchObject(both);
    expect(await lastTold('en')).toBe(
      'Autumn grain now lands on 2026-10-24; the place is now: Grange hall. Side door.',
    );
    const before = await landing();
    expect(before).toMatchObject({ day: '2026-10-24', location: 'Grange hall. Side door' });

    expect(bodyOf(await edit({ landingPlace: 'Mill yard' }))).toMatchObject({ landingPlace: 'Mill yard' });
    expect(await landing()).toMatchObject({
      ...{ day: '2026-10-24', location: 'Mill yard', status: 'CONFIRMED' },
      sequence: Number(before?.sequence) + 1,
    });
    expect(await lastTold('en')).toBe('Autumn grain now lands here: Mill yard.');
    expect(await lastTold('es')).toBe('Autumn grain llega ahora aquí: Mill yard.');
    await lettersAt('2026-10-01T15:00:00Z');
    const [reminder] = await lettersAt('2026-10-21T15:00:00Z');
    expect(reminder?.subject).toBe('Autumn grain lands Saturday, 24 October 2026');
    expect(reminder?.text).toContain('Where: Mill yard. Hands are wanted');

    expect(bodyOf(await edit({ landingPlace: '  ' })).landingPlace).toBe('');
    expect(await lastTold('en')).toBe('The place where Autumn grain lands is open again.');
    expect(await lastTold('es')).toBe('El lugar de llegada de Autumn grain vuelve a estar abierto.');
    const { notices } = bodyOf(await caller.get(`${storehouse.path}/notices`));
    bodyOf(await edit({})); // nothing moved, so nobody is told
    expect(bodyOf(await caller.get(`${storehouse.path}/notices`)).notices).toEqual(notices);
  });

  test('is told where it is while pledges are gathered, too, and on the order that went out stays as it was sent', async () => {
    app.clock.now = new Date('2026-09-01T15:00:00Z');
    const { Dell } = buy.households;
    const gathering = await aBuy(app, storehouse, { name: 'Oats' });
    await aPledge(Dell.caller, gathering, { wanted: 50 });
    const { name, gatheringClosesAt, orderOn, ...plan } = bodyOf(
      await storehouse.coordinator.get(gathering.path),
    );
    const { landingOn, version } = plan;
    const facts = { name, gatheringClosesAt, orderOn, landingOn, version, landingPlace: 'Grange hall' };
    bodyOf(await storehouse.coordinator.put(gathering.path, facts));
    const { notices } = bodyOf(await Dell.caller.get(`${storehouse.path}/notices`));
    expect(notices[0]).toMatchObject({
      kind: 'landing-moved',
      words: 'Oats now lands here: Grange hall.',
      path: gathering.path,
    });

    const deliverTo = () =>
      app.admin`select distinct deliver_to from book.supplier_order where buy_id = ${buy.buyId}`;
    const sent = await deliverTo();
    bodyOf(await edit({ landingPlace: 'Chapel barn' }));
    expect(await deliverTo()).toEqual(sent);
    expect(sent).not.toEqual([{ deliver_to: 'Chapel barn' }]);
  });

  test('stays when the new one is over, is no day, or was read by somebody who saw an older state', async () => {
    expect(await refusalOf(app, () => move('2026-09-27'))).toEqual(
      refused(400, 'invalid-input', 'landingOn'),
    );
    expect(await refusalOf(app, () => move('2026-02-30'))).toEqual(
      refused(400, 'invalid-input', 'landingOn'),
    );
    expect(await refusalOf(app, () => edit({ landingPlace: 'x'.repeat(201) }))).toEqual(
      refused(400, 'invalid-input', 'landingPlace'),
    );
    const stale = { landingOn: '2026-11-01', landingPlace: '', version: 1 };
    expect(
      await refusalOf(app, () => storehouse.coordinator.put(`${buy.path}/landing-plan`, stale)),
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
    const wish = { ...(await planOf(buy.path)), landingOn: '2026-10-20' };
    const call = () => buy.households.Dell.caller.put(`${buy.path}/landing-plan`, wish);
    expect(await refusalOf(app, call)).toEqual(refused(403, 'duty-missing'));
  });
});
