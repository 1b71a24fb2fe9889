import ICAL from 'ical.js';
import type { Caller, TestApp } from './app.ts';
import { bodyOf } from './buy.ts';
import type { TestStorehouse } from './storehouse.ts';

export type TestFeed = { id: string; path: string };

/** A feed and the path of its address. */
export async function aFeed(
  storehouse: TestStorehouse,
  caller: Caller,
  wish: Record<string, unknown> = { scope: 'mine' },
): Promise<TestFeed> {
  const { id, address } = bodyOf(await caller.post(`${storehouse.path}/calendar-feeds`, wish), 201);
  return { id, path: new URL(address).pathname };
}

/** An event as an independent reader of RFC 5545 understands it; instants in milliseconds, days as ISO days. */
export type ReadEvent = {
  uid: string;
  sequence: number;
  status: string;
  summary: string;
  location: string | null;
  day: string | null;
  startsAt: number | null;
  endsAt: number | null;
  stampedAt: number;
};

export function readCalendar(text: string): { calendar: ICAL.Component; events: ReadEvent[] } {
  const calendar = new ICAL.Component(ICAL.parse(text));
  const events = calendar.getAllSubcomponents('vevent').map((component): ReadEvent => {
    const value = (name: string) => component.getFirstPropertyValue(name);
    const start = value('dtstart') as ICAL.Time;
    const end = value('dtend') as ICAL.Time | null;
    return {
      uid: String(value('uid')),
      sequence: Number(value('sequence')),
      status: String(value('status')),
      summary: String(value('summary')),
      location: value('location') === null ? null : String(value('location')),
      day: start.isDate ? start.toString() : null,
      startsAt: start.isDate ? null : start.toJSDate().getTime(),
      endsAt: start.isDate || !end ? null : end.toJSDate().getTime(),
      stampedAt: (value('dtstamp') as ICAL.Time).toJSDate().getTime(),
    };
  });
  return { calendar, events };
}

/** Reads a feed as a calendar program does: with its address alone. */
export async function eventsOf(app: TestApp, feed: Pick<TestFeed, 'path'>): Promise<ReadEvent[]> {
  return readCalendar(bodyOf(await app.as().get(feed.path), 200)).events;
}

/** A feed's lines put together again, as far as they were folded. */
export const unfolded = (text: string): string => text.replaceAll('\r\n ', '');
