import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aBuy, bodyOf, type TestBuy } from '../support/buy.ts';
import { aFeed, eventsOf, readCalendar } from '../support/calendar.ts';
import { fingerprintOf } from '../support/fingerprint.ts';
import { aFixedBuy, payDeposits } from '../support/fixed-buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let birchall: TestHousehold;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  birchall = await aHousehold(app, storehouse, 'Birchall');
});
afterAll(() => app.close());
// Each test starts a quarter of an hour later, so that none counts another's wrong addresses.
beforeEach(() => {
  app.clock.now = new Date(app.clock.now.getTime() + 16 * 60_000);
});

const of = (events: Awaited<ReturnType<typeof eventsOf>>, kind: string, { buyId }: { buyId: string }) =>
  events.find(({ uid }) => uid === `${kind}.${buyId}@${storehouse.storehouseId}`);

async function editBuy(buy: TestBuy, change: Record<string, unknown>): Promise<void> {
  const { name, gatheringClosesAt, orderOn, landingOn, landingPlace, version } = bodyOf(
    await storehouse.coordinator.get(buy.path),
  );
  const facts = { name, gatheringClosesAt, orderOn, landingOn, landingPlace, version };
  bodyOf(await storehouse.coordinator.put(buy.path, { ...facts, ...change }));
}

describe('a feed', () => {
  test('tells when a buy’s gathering closes, when it is ordered and when it lands', async () => {
    const buy = await aBuy(app, storehouse, { name: 'Autumn grain' });
    await editBuy(buy, { landingOn: '2026-10-03', landingPlace: 'Grange hall' });
    const events = await eventsOf(app, await aFeed(storehouse, birchall.caller));
    expect(of(events, 'gathering-closes', buy)).toMatchObject({
      summary: 'Autumn grain: gathering closes',
      startsAt: Date.parse('2026-09-20T23:00:00Z'),
      status: 'CONFIRMED',
      sequence: 0,
    });
    expect(of(events, 'order-day', buy)).toMatchObject({ day: '2026-09-24' });
    expect(of(events, 'landing', buy)).toMatchObject({ day: '2026-10-03', location: 'Grange hall' });
  });

  test('is told in the language that it was made in', async () => {
    const buy = await aBuy(app, storehouse, { name: 'Frijol' });
    const events = await eventsOf(
      app,
      await aFeed(storehouse, birchall.caller, { scope: 'mine', language: 'es' }),
    );
    expect(of(events, 'order-day', buy)?.summary).toBe('Frijol: día del pedido');
  });

  test('of a buy that is only planned says that its days may move', async () => {
    const buy = await aBuy(app, storehouse, { isOpen: false });
    const events = await eventsOf(app, await aFeed(storehouse, birchall.caller));
    expect(of(events, 'order-day', buy)?.status).toBe('TENTATIVE');
  });

  test('of one buy has that buy’s days alone', async () => {
    const buy = await aBuy(app, storehouse, { name: 'Only this' });
    const item = { kind: 'buy', id: buy.buyId };
    const feed = await aFeed(storehouse, birchall.caller, { scope: 'item', item });
    const events = await eventsOf(app, feed);
    expect(events.map(({ uid }) => uid.split('@')[0]).toSorted()).toEqual([
      `gathering-closes.${buy.buyId}`,
      `order-day.${buy.buyId}`,
    ]);
    const { feeds } = bodyOf(await birchall.caller.get(`${storehouse.path}/calendar-feeds`));
    expect(feeds.find(({ id }: { id: string }) => id === feed.id)).toMatchObject({ itemName: 'Only this' });
  });

  test('is answered once and then only when something changed', async () => {
    const feed = await aFeed(storehouse, birchall.caller);
    const first = await app.as().get(feed.path);
    expect(first.headers.get('Content-Type')).toBe('text/calendar; charset=utf-8');
    expect(first.headers.get('Cache-Control')).toBe('private, no-cache');
    const before = await fingerprintOf(app);
    app.clock.now = new Date(app.clock.now.getTime() + 60_000);
    const known = { 'If-None-Match': first.headers.get('ETag') ?? '' };
    const second = await app.as().get(feed.path, known);
    expect([second.status, second.body]).toEqual([304, '']);
    expect(await fingerprintOf(app)).toEqual(before); // reading writes nothing down that was told already
    await aBuy(app, storehouse);
    expect((await app.as().get(feed.path, known)).status).toBe(200);
  });
});

describe('a change', () => {
  test('raises the sequence of what changed and of nothing else, once', async () => {
    const buy = await aBuy(app, storehouse, { name: 'Moves' });
    const feed = await aFeed(storehouse, birchall.caller);
    const told = await eventsOf(app, feed);
    await editBuy(buy, { orderOn: '2026-09-26' });
    app.clock.now = new Date(app.clock.now.getTime() + 60_000);
    const moved = await eventsOf(app, feed);
    expect(of(moved, 'order-day', buy)).toMatchObject({
      day: '2026-09-26',
      sequence: 1,
      stampedAt: Math.floor(app.clock.now.getTime() / 1000) * 1000,
    });
    expect(of(moved, 'gathering-closes', buy)).toEqual(of(told, 'gathering-closes', buy));
    await editBuy(buy, { name: 'Moves on' });
    const renamed = await eventsOf(app, feed);
    expect(of(renamed, 'order-day', buy)).toMatchObject({ sequence: 2, summary: 'Moves on: order day' });
    expect(await eventsOf(app, feed)).toEqual(renamed);
  });

  test('that many read at once counts once', async () => {
    const buy = await aBuy(app, storehouse);
    const feed = await aFeed(storehouse, birchall.caller);
    await eventsOf(app, feed);
    await editBuy(buy, { orderOn: '2026-09-27' });
    const readings = await Promise.all([1, 2, 3, 4, 5, 6].map(() => eventsOf(app, feed)));
    expect(readings.map((events) => of(events, 'order-day', buy)?.sequence)).toEqual([1, 1, 1, 1, 1, 1]);
  });

  test('that calls a buy off cancels its days, which stay for a year', async () => {
    const buy = await aBuy(app, storehouse, { orderOn: '2027-12-01' });
    const feed = await aFeed(storehouse, birchall.caller);
    await eventsOf(app, feed);
    bodyOf(await storehouse.coordinator.post(`${buy.path}/calling-off`, { reason: 'no wheat' }));
    const calledOffAt = app.clock.now;
    expect(of(await eventsOf(app, feed), 'order-day', buy)).toMatchObject({
      status: 'CANCELLED',
      sequence: 1,
    });
    app.clock.now = new Date(calledOffAt.getTime() + 365 * 86_400_000);
    expect(of(await eventsOf(app, feed), 'order-day', buy)?.status).toBe('CANCELLED');
    app.clock.now = new Date(calledOffAt.getTime() + 365 * 86_400_000 + 1);
    expect(of(await eventsOf(app, feed), 'order-day', buy)).toBeUndefined();
    app.clock.now = calledOffAt;
  });

  test('that takes a day away cancels its event', async () => {
    const buy = await aBuy(app, storehouse);
    await editBuy(buy, { landingOn: '2026-10-03' });
    const feed = await aFeed(storehouse, birchall.caller);
    await eventsOf(app, feed);
    await editBuy(buy, { landingOn: null });
    expect(of(await eventsOf(app, feed), 'landing', buy)).toMatchObject({ status: 'CANCELLED', sequence: 1 });
    await editBuy(buy, { landingOn: '2026-10-04' });
    expect(of(await eventsOf(app, feed), 'landing', buy)).toMatchObject({
      ...{ status: 'CONFIRMED', sequence: 2, day: '2026-10-04' },
    });
  });

  test('of money: a deposit is asked for by its day, without an amount, until it has come in', async () => {
    const own = await openTestApp();
    const hall = await aStorehouse(own);
    const buy = await aFixedBuy(own, hall);
    const feed = await aFeed(hall, buy.households.Dell.caller);
    const due = async () => (await eventsOf(own, feed)).filter(({ uid }) => uid.startsWith('deposit-due.'));
    expect(await due()).toMatchObject([{ status: 'CONFIRMED', day: expect.any(String) }]);
    await payDeposits(buy);
    expect(await due()).toMatchObject([{ status: 'CANCELLED', sequence: 1 }]);
    await own.close();
  });
});

describe('an address', () => {
  test('is shown once, and only the hash of its secret is stored', async () => {
    const answer = await birchall.caller.post(`${storehouse.path}/calendar-feeds`, { scope: 'storehouse' });
    const { address, webcal } = answer.body;
    expect(address).toMatch(/^http:\/\/127\.0\.0\.1:4180\/api\/calendars\/[\w-]{43}\.ics$/);
    expect(webcal).toBe(address.replace('http:', 'webcal:'));
    const secret = address.slice(-47, -4);
    const stored = await app.admin`select f.*, k.body from book.calendar_feed f
      left join book.kept_answer k using (storehouse_id)`;
    expect(JSON.stringify(stored)).not.toContain(secret);
    const list = await birchall.caller.get(`${storehouse.path}/calendar-feeds`);
    expect(JSON.stringify(list.body)).not.toContain(secret);
  });

  test('that was renewed refuses the old one at once, and so does one that has ended', async () => {
    const feed = await aFeed(storehouse, birchall.caller);
    const path = `${storehouse.path}/calendar-feeds/${feed.id}`;
    const renewed = bodyOf(await birchall.caller.post(`${path}/renewal`), 201);
    const newPath = new URL(renewed.address).pathname;
    expect((await app.as().get(feed.path)).body).toMatchObject({ status: 404, code: 'not-found' });
    expect((await app.as().get(newPath)).status).toBe(200);
    expect((await birchall.caller.delete(path)).status).toBe(204);
    expect((await app.as().get(newPath)).status).toBe(404);
    expect((await birchall.caller.delete(path)).status).toBe(404);
  });

  test('is its owner’s alone to see, renew and end', async () => {
    const feed = await aFeed(storehouse, birchall.caller);
    const { feeds } = bodyOf(await storehouse.coordinator.get(`${storehouse.path}/calendar-feeds`));
    expect(feeds).toEqual([]);
    const path = `${storehouse.path}/calendar-feeds/${feed.id}`;
    expect((await storehouse.coordinator.post(`${path}/renewal`)).status).toBe(404);
    expect((await storehouse.coordinator.delete(path)).status).toBe(404);
    expect((await app.as().get(feed.path)).status).toBe(200);
  });

  test.for([
    ['guessed', `${'A'.repeat(43)}.ics`],
    ['without its ending', 'A'.repeat(43)],
    ['empty', '.ics'],
    ['with other characters', `${'%00'.repeat(3)}.ics`],
    ['far too long', `${'A'.repeat(2000)}.ics`],
  ])('%s is not found', async ([, file]) => {
    const answer = await app.as().get(`/api/calendars/${file}`);
    expect([answer.status, answer.body.code]).toEqual([404, 'not-found']);
    app.clock.now = new Date(app.clock.now.getTime() + 16 * 60_000);
  });

  test('is not guessed at for long, which doesn’t shut out those who know theirs', async () => {
    const feed = await aFeed(storehouse, birchall.caller);
    const guess = (number: number) => app.as().get(`/api/calendars/${'B'.repeat(41)}${number}.ics`);
    const statuses = [];
    for (let number = 10; number < 21; number += 1) statuses.push((await guess(number)).status);
    expect(statuses).toEqual([...Array(10).fill(404), 429]);
    expect((await app.as().get(feed.path)).status).toBe(200);
  });

  test('is not asked more than sixty times in a quarter of an hour', async () => {
    const feed = await aFeed(storehouse, birchall.caller);
    const statuses = [];
    for (let look = 0; look < 61; look += 1) statuses.push((await app.as().get(feed.path)).status);
    expect([statuses.filter((status) => status === 200).length, statuses.at(-1)]).toEqual([60, 429]);
  });

  test('ends with the membership', async () => {
    const corran = await aHousehold(app, storehouse, 'Corran');
    const feed = await aFeed(storehouse, corran.caller);
    await eventsOf(app, feed);
    const leaving = `${storehouse.path}/households/${corran.householdId}/leaving`;
    bodyOf(await corran.caller.post(leaving, { version: 1 }));
    expect((await app.as().get(feed.path)).status).toBe(404);
    const left =
      await app.admin`select 1 from book.calendar_event where household_id = ${corran.householdId}`;
    expect(left).toHaveLength(0);
  });

  test('is had twenty times by one person, not more', async () => {
    const dell = await aHousehold(app, storehouse, 'Dell');
    for (let number = 0; number < 20; number += 1) await aFeed(storehouse, dell.caller);
    const more = await dell.caller.post(`${storehouse.path}/calendar-feeds`, { scope: 'mine' });
    expect([more.status, more.body.fields[0].field]).toEqual([400, 'scope']);
  });
});

describe('one appointment', () => {
  test('is taken along as a file that names the same event', async () => {
    const buy = await aBuy(app, storehouse, { name: 'A file' });
    const path = `${storehouse.path}/appointments`;
    const { appointments } = bodyOf(await birchall.caller.get(path));
    const id = `order-day.${buy.buyId}`;
    expect(appointments.find((one: { id: string }) => one.id === id)).toMatchObject({
      ...{ summary: 'A file: order day', on: '2026-09-24', isOwn: false, path: `/buys/${buy.buyId}` },
    });
    const file = await birchall.caller.get(`${path}/${id}/file?language=es`);
    expect(file.headers.get('Content-Disposition')).toBe('attachment; filename="storehouse.ics"');
    expect(readCalendar(file.body).events).toMatchObject([
      { uid: `${id}@${storehouse.storehouseId}`, summary: 'A file: día del pedido' },
    ]);
    expect((await birchall.caller.get(`${path}/pick-up.${buy.buyId}/file`)).body.code).toBe(
      'thing-not-found',
    );
  });
});

test.for([
  [{ scope: 'item' }, 'item'],
  [{ scope: 'mine', item: { kind: 'buy', id: '018f0000-0000-7000-8000-000000000000' } }, 'item'],
  [{ scope: 'item', item: { kind: 'buy', id: 'no-id' } }, 'item.id'],
  [{ scope: 'everything' }, 'scope'],
  [{ scope: 'mine', language: 'fr' }, 'language'],
] as const)('a wish for %j is refused at %s', async ([wish, field]) => {
  const before = await fingerprintOf(app);
  const { status, body } = await birchall.caller.post(`${storehouse.path}/calendar-feeds`, wish);
  expect([status, body.fields[0].field]).toEqual([400, field]);
  expect(await fingerprintOf(app)).toEqual(before);
});
