import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let birchall: TestHousehold;
let corran: TestHousehold;
beforeAll(async () => {
  app = await openTestApp(); // 1 September 2026
  storehouse = await aStorehouse(app);
  birchall = await aHousehold(app, storehouse, 'Birchall');
  corran = await aHousehold(app, storehouse, 'Corran');
});
afterAll(() => app.close());

const at = (path: string) => `${storehouse.path}${path}`;
let made = 0;
const placeBody = (facts: Record<string, unknown> = {}) => ({
  ...{
    of: 'household',
    name: `Place ${++made}`,
    kind: 'cellar',
    isLit: false,
    isDamp: null,
    isRodentProof: true,
  },
  ...facts,
});
const aPlace = async ({ caller }: Pick<TestHousehold, 'caller'>, facts: Record<string, unknown> = {}) =>
  bodyOf(await caller.post(at('/places'), placeBody(facts)), 201);
type How = { unit?: string; dayOrder?: string };
/** A logger's file is the body itself; how it is to be read stands in the address. */
const taking = ({ caller }: Pick<TestHousehold, 'caller'>, id: string, text: string, how: How = {}) => {
  const query = new URLSearchParams({ unit: 'C', dayOrder: 'ymd', fileName: 'a logger’s file.csv', ...how });
  return caller.post(at(`/places/${id}/logs?${query}`), text, { 'Content-Type': 'text/csv' });
};
const trying = ({ caller }: Pick<TestHousehold, 'caller'>, id: string, text: string, how: How = {}) => {
  const query = new URLSearchParams({ unit: 'C', dayOrder: 'ymd', ...how });
  return caller.post(at(`/places/${id}/log-previews?${query}`), text, { 'Content-Type': 'text/csv' });
};

test('a place that nobody measured is taken as warm, and says that it is not known', async () => {
  const place = await aPlace(birchall, { name: 'Cellar' });
  expect(place).toEqual({
    ...{ id: expect.any(String), isStores: false, name: 'Cellar', kind: 'cellar', version: 1 },
    ...{ isLit: false, isDamp: null, isRodentProof: true, mostGrams: null },
    warmth: { agesLikeTenths: 250, isWarm: true, readDays: 0, gapDays: 0, unknownDays: 365 },
  });
});

test('a year typed by the month is kept, mended and taken out again', async () => {
  const { id } = await aPlace(birchall);
  const months = Array.from({ length: 12 }, (_, at) => ({
    month: at < 4 ? `2025-${String(at + 9).padStart(2, '0')}` : `2026-${String(at - 3).padStart(2, '0')}`,
    tenthsCelsius: 120,
  }));
  const said = bodyOf(await birchall.caller.put(at(`/places/${id}/months`), { months }));
  expect(said.warmth).toEqual({
    ...{ agesLikeTenths: 120, isWarm: false, readDays: 365, gapDays: 0, unknownDays: 0 },
  });
  const mended = [
    { month: '2026-08', tenthsCelsius: 190 },
    { month: '2026-07', tenthsCelsius: null },
  ];
  const record = bodyOf(await birchall.caller.put(at(`/places/${id}/months`), { months: mended }));
  expect(record.months).toHaveLength(11);
  expect(record.months.at(-1)).toEqual({
    ...{ month: '2026-08', isTyped: true, readDays: 1, readings: 0, agesLikeTenths: 190, meanTenths: 190 },
    ...{ coldestTenths: 190, warmestTenths: 190 },
  });
  expect(record.warmth.gapDays).toBe(31 - 1); // June holds for 31 days of its own 30 and July's first
});

describe('a logger’s file', () => {
  const text = 'time,°F\n2026-08-01 00:00,50\n2026-08-01 12:00,68\nbad line\n2026-08-02 00:00,59\n';

  test('is tried first, then taken in by the day, and can be taken back', async () => {
    const { id } = await aPlace(birchall);
    const tried = bodyOf(await trying(birchall, id, text, { unit: 'F' }));
    expect(tried).toEqual({
      ...{ readings: 3, days: 2, firstOn: '2026-08-01', lastOn: '2026-08-02', badCount: 1, next: 4 },
      ...{ coldestTenths: 100, warmestTenths: 200, takenDays: [] },
      badLines: [{ line: 4, fault: 'no-time', text: 'bad line' }],
    });
    const taken = bodyOf(await taking(birchall, id, text, { unit: 'F' }), 201);
    expect(taken.logs).toMatchObject([
      { firstOn: '2026-08-01', lastOn: '2026-08-02', readings: 3, badLines: 1 },
    ]);
    // 10 °C and 20 °C are 1.8 doublings apart: (1 + 3.48) / 2 = 2.24 is 1.164 doublings, or 6.5 degrees above 10; the month is
    // that day and one of 15 °C.
    expect(taken.months).toMatchObject([{ month: '2026-08', isTyped: false, readings: 3, meanTenths: 150 }]);
    const [days] =
      await app.admin`select array_agg(age_tenths order by from_on) as tenths from book.place_warmth
      where place_id = ${id}`;
    expect(days?.tenths).toEqual([165, 150]);
    const again = at(`/places/${id}/logs/${taken.logs[0].id}`);
    expect(bodyOf(await birchall.caller.delete(again)).months).toEqual([]);
    expect((await birchall.caller.delete(again)).body.code).toBe('thing-not-found');
  });

  test('that overlaps what is there is refused whole, whichever came first', async () => {
    const { id } = await aPlace(birchall);
    const post = () => taking(birchall, id, text, { unit: 'F' });
    bodyOf(await post(), 201);
    const overlap = (field: string) => refused(409, 'readings-overlap', field);
    expect(await refusalOf(app, post)).toEqual(overlap('file'));
    const months = { months: [{ month: '2026-08', tenthsCelsius: 150 }] };
    expect(await refusalOf(app, () => birchall.caller.put(at(`/places/${id}/months`), months))).toEqual(
      overlap('months'),
    );
    expect((await post()).body.fields[0].message).toBe(
      'From 2026-08-01 to 2026-08-02 this place has a record already. Take that out first.',
    );
    const tried = await trying(birchall, id, text, { unit: 'F' });
    expect(tried.body.takenDays).toEqual(['2026-08-01', '2026-08-02']);
  });

  test('taken in twice at once counts once', async () => {
    const { id } = await aPlace(birchall);
    const answers = await Promise.all([1, 2, 3].map(() => taking(birchall, id, text, { unit: 'F' })));
    expect(answers.map(({ status }) => status).toSorted()).toEqual([201, 409, 409]);
  });

  test.for([
    { because: 'in °F by its own heading', text: text, field: 'unit' },
    {
      because: 'far too warm for °C',
      text: '2026-08-01 00:00,72\n2026-08-01 01:00,68\n',
      field: 'unit',
    },
    { because: 'no table', text: 'Dear diary', field: 'file' },
    {
      because: 'of impossible readings only',
      text: '2026-08-01 00:00,-300\n2026-08-01 01:00,400\n',
      field: 'file',
    },
    { because: 'of days to come', text: '2027-08-01 00:00,12\n', field: 'file' },
    { because: 'empty', text: '', field: 'file' },
    { because: 'in kelvin', text, how: { unit: 'K' }, field: 'unit' },
  ])('$because is refused and changes nothing', async ({ text: body, how, field }) => {
    const { id } = await aPlace(birchall);
    const post = () => taking(birchall, id, body, how);
    expect(await refusalOf(app, post)).toEqual(refused(400, 'invalid-input', field));
  });

  test('that is told an hour twice, as clocks do in autumn, has both of them, and a retry counts once', async () => {
    const { id } = await aPlace(birchall);
    // The storehouse stands in Chicago: on 2 November 2025 its clocks showed 01:00 to 01:59 twice.
    const hours = [
      '00',
      '01',
      '01',
      ...Array.from({ length: 22 }, (_, at) => String(at + 2).padStart(2, '0')),
    ];
    const autumn = hours.map((hour) => `2025-11-02 ${hour}:00,12\n`).join('');
    const tried = bodyOf(await trying(birchall, id, autumn));
    expect(tried).toMatchObject({ readings: 25, badCount: 0 });
    const query = 'unit=C&dayOrder=ymd&fileName=autumn.csv';
    const key = { 'Idempotency-Key': `autumn ${id}`, 'Content-Type': 'text/csv' };
    const send = (text: string) => birchall.caller.post(at(`/places/${id}/logs?${query}`), text, key);
    const [first, again] = [await send(autumn), await send(autumn)];
    expect([first.status, again.status, again.headers.get('Idempotent-Replay')]).toEqual([201, 201, 'true']);
    expect(first.body.logs).toMatchObject([{ readings: 25, badLines: 0 }]);
    expect((await send(`${autumn}2025-11-03 00:00,12\n`)).body.code).toBe('idempotency-key-reused');
  });
});

describe('a month is refused', () => {
  test.for([
    { because: 'that is none', month: '2026-13', tenths: 100, field: 'months.0.month' },
    { because: 'that is to come', month: '2026-10', tenths: 100, field: 'months.0.month' },
    { because: 'colder than can be', month: '2026-08', tenths: -3000, field: 'months.0.tenthsCelsius' },
    { because: 'warmer than can be', month: '2026-08', tenths: 4000, field: 'months.0.tenthsCelsius' },
    { because: 'with part of a tenth', month: '2026-08', tenths: 10.5, field: 'months.0.tenthsCelsius' },
  ])('$because', async ({ month, tenths, field }) => {
    const { id } = await aPlace(birchall);
    const put = () =>
      birchall.caller.put(at(`/places/${id}/months`), { months: [{ month, tenthsCelsius: tenths }] });
    expect(await refusalOf(app, put)).toEqual(refused(400, 'invalid-input', field));
  });

  test('named twice', async () => {
    const { id } = await aPlace(birchall);
    const month = { month: '2026-08', tenthsCelsius: 100 };
    const answer = await birchall.caller.put(at(`/places/${id}/months`), { months: [month, month] });
    expect(answer.body.fields).toEqual([{ field: 'months', message: 'Name each month once.' }]);
  });
});

describe('whose a place is', () => {
  test('a neighbour’s is not there, whatever the duty, and no name of it is taken', async () => {
    const place = await aPlace(corran, { name: 'Under the stairs' });
    const months = { months: [{ month: '2026-08', tenthsCelsius: 100 }] };
    const { of: _, ...facts } = placeBody({ version: 1 });
    for (const caller of [birchall.caller, storehouse.coordinator]) {
      const answers = [
        await caller.get(at(`/places/${place.id}`)),
        await caller.put(at(`/places/${place.id}`), facts),
        await caller.put(at(`/places/${place.id}/months`), months),
        await taking({ caller }, place.id, '2026-08-01 00:00,12\n'),
      ];
      expect(answers.map(({ body }) => body.code)).toEqual(Array(4).fill('thing-not-found'));
      const { places } = bodyOf(await caller.get(at('/places')));
      expect(places.map(({ name }: { name: string }) => name)).not.toContain('Under the stairs');
    }
    await aPlace(birchall, { name: 'Under the stairs' });
    const twice = await corran.caller.post(at('/places'), placeBody({ name: 'Under the stairs' }));
    expect([twice.status, twice.body.code]).toEqual([409, 'already-there']);
  });

  test('the store’s is everybody’s to see and its keepers’ to change', async () => {
    const room = await aPlace({ caller: storehouse.coordinator }, { of: 'store', name: 'Back room' });
    const seen = bodyOf(await corran.caller.get(at(`/places/${room.id}`)));
    expect(seen).toMatchObject({ isStores: true, name: 'Back room', months: [] });
    const months = { months: [{ month: '2026-08', tenthsCelsius: 100 }] };
    const refusal = refused(403, 'duty-missing');
    const put = () => corran.caller.put(at(`/places/${room.id}/months`), months);
    expect(await refusalOf(app, put)).toEqual(refusal);
    const post = () => corran.caller.post(at('/places'), placeBody({ of: 'store' }));
    expect(await refusalOf(app, post)).toEqual(refusal);
    bodyOf(await storehouse.coordinator.put(at(`/places/${room.id}/months`), months));
  });

  test('a household that leaves takes its places along, and nothing of them stays', async () => {
    const dell = await aHousehold(app, storehouse, 'Dell');
    const place = await aPlace(dell, { name: 'Garage' });
    bodyOf(await taking(dell, place.id, '2026-08-01 00:00,12\n'), 201);
    const home = at(`/households/${dell.householdId}`);
    const { tables } = bodyOf(await dell.caller.get(`${home}/take-along`));
    expect([tables.places, tables.placeWarmth]).toMatchObject([
      [{ name: 'Garage', kind: 'cellar' }],
      [{ place: 'Garage', fromOn: '2026-08-01', ageTenths: 120, readings: 1 }],
    ]);
    const { version } = bodyOf(await dell.caller.get(home));
    const left = await dell.caller.post(`${home}/leaving`, { version });
    expect(left.status).toBeLessThan(300);
    const [rest] = await app.admin`select
      (select count(*)::int from book.place where household_id = ${dell.householdId}) as places,
      (select count(*)::int from book.place_warmth where place_id = ${place.id}) as spans,
      (select count(*)::int from book.place_log where place_id = ${place.id}) as logs`;
    expect(rest).toEqual({ places: 0, spans: 0, logs: 0 });
  });
});

test('an edit is made from the version that was read', async () => {
  const { id } = await aPlace(birchall);
  const { of: _, ...facts } = placeBody({ kind: 'garage', isDamp: true });
  const second = bodyOf(await birchall.caller.put(at(`/places/${id}`), { ...facts, version: 1 }));
  expect(second).toMatchObject({ kind: 'garage', isDamp: true, version: 2 });
  const stale = await birchall.caller.put(at(`/places/${id}`), { ...facts, version: 1 });
  expect(stale.body).toMatchObject({ code: 'stale-version', newer: { version: 2 } });
});

test('the database itself refuses two spans of a place that overlap', async () => {
  const { id } = await aPlace(birchall);
  const insert = (fromOn: string, toOn: string) => app.admin`
    insert into book.place_warmth (storehouse_id, place_id, from_on, to_on, age_tenths, mean_tenths, coldest_tenths,
      warmest_tenths, readings) values (${storehouse.storehouseId}, ${id}, ${fromOn}, ${toOn}, 100, 100, 100, 100, 0)`;
  await insert('2026-01-01', '2026-02-01');
  await expect(insert('2026-01-31', '2026-02-02')).rejects.toMatchObject({
    constraint_name: 'place_warmth_once',
  });
  await insert('2026-02-01', '2026-03-01');
});
