import { instantOfWallTime } from '@sheafbook/units';
import * as fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Appointment } from '../../apps/api/src/features/calendar/appointment.ts';
import { renderCalendar } from '../../apps/api/src/features/calendar/render.ts';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aBuy, bodyOf } from '../support/buy.ts';
import { aFeed, eventsOf, readCalendar } from '../support/calendar.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app, 'Alder, Row; \\ Storehouse');
});
afterAll(() => app.close());

const anAppointment = (facts: Partial<Appointment> = {}): Appointment => ({
  kind: 'landing',
  id: '018f0000-0000-7000-8000-000000000001',
  status: 'confirmed',
  subject: 'Autumn grain',
  place: '',
  when: { on: '2026-11-01' },
  isBusy: false,
  item: null,
  householdId: null,
  path: '/buys/018f0000-0000-7000-8000-000000000001',
  ...facts,
});
const render = (appointments: readonly Appointment[], name = 'Alder Row') =>
  renderCalendar({
    name,
    language: 'en',
    storehouseId: '018f0000-0000-7000-8000-000000000002',
    root: 'https://alder.example.org/s/018f0000-0000-7000-8000-000000000002',
    events: appointments.map((appointment) => ({
      key: `${appointment.kind}.${appointment.id}`,
      appointment,
      sequence: 3,
      modifiedAt: new Date('2026-09-01T15:00:00Z'),
    })),
  });
/** The name of a calendar. The reader leaves what it has no type for as it stands, so its escapes are undone here (3.3.11). */
const nameOf = (calendar: { getFirstPropertyValue(name: string): unknown }) =>
  String(calendar.getFirstPropertyValue('x-wr-calname') ?? '').replaceAll(
    /\\([\\;,nN])/g,
    (_, escaped: string) => (/n/i.test(escaped) ? '\n' : escaped),
  );
const octetsOf = (line: string) => Buffer.byteLength(line, 'utf8');

describe('a calendar as text (RFC 5545)', () => {
  test('has what is required, and ends every line with CRLF', () => {
    const text = render([anAppointment()]);
    expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    const { calendar } = readCalendar(text);
    expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
    expect(calendar.getFirstPropertyValue('prodid')).toBe('-//Sheafbook//Storehouse calendar//EN');
    expect(calendar.getFirstPropertyValue('method')).toBeNull(); // so DTSTAMP is the last revision (3.8.7.2)
    expect(String(calendar.getFirstPropertyValue('refresh-interval'))).toBe('PT1H');
    expect(String(calendar.getFirstPropertyValue('x-published-ttl'))).toBe('PT1H');
    const [event] = calendar.getAllSubcomponents('vevent');
    const names = event?.getAllProperties().map(({ name }) => name);
    expect(names).toEqual(
      expect.arrayContaining(['uid', 'dtstamp', 'dtstart', 'sequence', 'status', 'summary']),
    );
    for (const once of ['uid', 'dtstamp', 'dtstart', 'sequence'])
      expect(names?.filter((name) => name === once)).toHaveLength(1);
  });

  test('keeps a day a day, and ends it before the next (VALUE=DATE, 3.6.1)', () => {
    const text = render([anAppointment()]);
    expect(text).toContain('\r\nDTSTART;VALUE=DATE:20261101\r\nDTEND;VALUE=DATE:20261102\r\n');
    expect(readCalendar(text).events[0]?.day).toBe('2026-11-01');
  });

  test('is the same to the byte whatever zone the machine is in', () => {
    const zoneBefore = process.env.TZ;
    const texts = ['UTC', 'America/Chicago', 'Pacific/Kiritimati', 'Europe/Berlin'].map((zone) => {
      process.env.TZ = zone;
      return render([
        anAppointment(),
        anAppointment({
          kind: 'pick-up',
          when: { startsAt: '2026-11-01T06:30:00Z', endsAt: '2026-11-01T08:00:00Z' },
        }),
      ]);
    });
    if (zoneBefore === undefined) delete process.env.TZ;
    else process.env.TZ = zoneBefore;
    expect(new Set(texts).size).toBe(1);
  });

  const anyText = fc.oneof(
    fc.string({ unit: 'grapheme', maxLength: 200 }),
    fc.string({
      unit: fc.constantFrom(
        ',',
        ';',
        '\\',
        '\n',
        '\r\n',
        ':',
        '"',
        'ñ',
        '麦',
        '🌾',
        'END:VEVENT',
        ' ',
        '\t',
        '\u0007',
      ),
      maxLength: 80,
    }),
  );
  const asRead = (text: string) =>
    // What a text may hold (3.3.11): control characters are no part of it, and a line break is one line break.
    // biome-ignore lint/suspicious/noControlCharactersInRegex: it is these that are taken out
    text.replaceAll(/\r\n|\r/g, '\n').replaceAll(/[\0-\x08\v\f\x0e-\x1f\x7f]/g, '');

  test('folds at 75 octets between whole characters, and reads back whatever was written', () => {
    fc.assert(
      fc.property(anyText, anyText, anyText, (subject, place, name) => {
        const text = render([anAppointment({ subject, place }), anAppointment({ kind: 'order-day' })], name);
        const lines = text.split('\r\n');
        expect(lines.filter((line) => octetsOf(line) > 75)).toEqual([]);
        expect(Buffer.from(text, 'utf8').toString('utf8')).toBe(text); // no character is cut in two
        const { calendar, events } = readCalendar(text);
        expect(events).toHaveLength(2);
        expect(events[0]).toMatchObject({ summary: asRead(`${subject}: landing day`) });
        expect(events[0]?.location ?? '').toBe(asRead(place));
        expect(nameOf(calendar)).toBe(asRead(name));
      }),
    );
  });
});

describe('what people call things', () => {
  test.for([
    'Grain; beans, and "oats"',
    'A \\ backslash and a \\n that is none',
    'Semillas y maíz — año 2026: trigo, frijol, avena, arroz, lentejas, garbanzos, quinua y amaranto',
    `${'🌾麦'.repeat(30)}`,
    'X\u202eEND:VEVENT',
  ])('%s is read back as it was typed', async (name) => {
    const buy = await aBuy(app, storehouse, { name });
    const feed = await aFeed(storehouse, storehouse.coordinator, { scope: 'storehouse' });
    const text: string = bodyOf(await app.as().get(feed.path));
    expect(text.split('\r\n').filter((line) => octetsOf(line) > 75)).toEqual([]);
    const { calendar, events } = readCalendar(text);
    expect(nameOf(calendar)).toBe('Alder, Row; \\ Storehouse');
    expect(events.find(({ uid }) => uid.startsWith(`order-day.${buy.buyId}@`))?.summary).toBe(
      `${name}: order day`,
    );
  });

  test('with a line break in them can’t write a line of their own', async () => {
    const buy = await aBuy(app, storehouse, { name: 'plain' });
    // Past every form: straight into the table, as an old import might have.
    await app.admin`update book.buy set name = ${'Wheat\r\nEND:VEVENT\nATTACH:http://example.org'}
      where buy_id = ${buy.buyId}`;
    const feed = await aFeed(storehouse, storehouse.coordinator, { scope: 'storehouse' });
    const text: string = bodyOf(await app.as().get(feed.path));
    expect(text).not.toMatch(/^ATTACH/m);
    expect(
      readCalendar(text).events.find(({ uid }) => uid.startsWith(`order-day.${buy.buyId}@`))?.summary,
    ).toBe('Wheat\nEND:VEVENT\nATTACH:http://example.org: order day');
    await app.admin`update book.buy set name = 'plain' where buy_id = ${buy.buyId}`;
  });
});

/** What a clock on the wall of a place shows at an instant. */
const wallAt = (instant: number | null | undefined, timeZone: string) =>
  new Intl.DateTimeFormat('sv-SE', { timeZone, dateStyle: 'short', timeStyle: 'short' })
    .format(new Date(instant ?? Number.NaN))
    .replace(' ', 'T');

// Chicago leaves UTC−5 for UTC−6 on 2026-11-01 at 2:00 and comes back on 2027-03-14 at 2:00; Berlin leaves UTC+2 for
// UTC+1 on 2026-10-25 at 3:00 and comes back on 2027-03-28 at 2:00 (IANA time zone database).
describe('a time on the wall is the same in the feed on both sides of a change of clocks', () => {
  test.for([
    ['America/Chicago', '2026-11-01T00:59', '2026-11-01T05:59:00Z'],
    ['America/Chicago', '2026-11-01T02:00', '2026-11-01T08:00:00Z'],
    ['America/Chicago', '2027-03-14T01:59', '2027-03-14T07:59:00Z'],
    ['America/Chicago', '2027-03-14T03:00', '2027-03-14T08:00:00Z'],
    ['Europe/Berlin', '2026-10-25T01:59', '2026-10-24T23:59:00Z'],
    ['Europe/Berlin', '2026-10-25T03:00', '2026-10-25T02:00:00Z'],
    ['Europe/Berlin', '2027-03-28T01:59', '2027-03-28T00:59:00Z'],
    ['Europe/Berlin', '2027-03-28T03:00', '2027-03-28T01:00:00Z'],
  ] as const)('%s, %s', async ([timeZone, wall, utc]) => {
    const { version, name } = bodyOf(await storehouse.coordinator.get(storehouse.path));
    const facts = { version, name, timeZone, massDisplay: 'lb', language: 'en' };
    bodyOf(await storehouse.coordinator.put(storehouse.path, facts));
    const closesAt = new Date(instantOfWallTime(wall, timeZone)).toISOString();
    const on = wall.slice(0, 10);
    const buy = await aBuy(app, storehouse, {
      ...{ name: `${timeZone} ${wall}`, quote: null, gatheringClosesAt: closesAt, orderOn: on },
    });
    const item = { kind: 'buy', id: buy.buyId };
    const events = await eventsOf(
      app,
      await aFeed(storehouse, storehouse.coordinator, { scope: 'item', item }),
    );
    const closing = events.find(({ uid }) => uid.startsWith('gathering-closes.'));
    expect(closing?.startsAt).toBe(Date.parse(utc));
    expect(wallAt(closing?.startsAt, timeZone)).toBe(wall);
    expect(events.find(({ uid }) => uid.startsWith('order-day.'))?.day).toBe(on);
    await app.admin`update book.calendar_feed set ended_at = now()`; // one person has twenty at most
  });

  test('an hour that comes twice is two instants, an hour apart', () => {
    const text = render(
      ['2026-11-01T06:30:00Z', '2026-11-01T07:30:00Z'].map((startsAt, at) =>
        anAppointment({ kind: 'pick-up', id: `${at}`, when: { startsAt, endsAt: null } }),
      ),
    );
    const { events } = readCalendar(text);
    expect(events.map(({ startsAt }) => wallAt(startsAt, 'America/Chicago'))).toEqual([
      '2026-11-01T01:30',
      '2026-11-01T01:30',
    ]);
    expect((events[1]?.startsAt ?? 0) - (events[0]?.startsAt ?? 0)).toBe(3_600_000);
  });
});
