import { addDays } from '@sheafbook/units';
import ical, {
  type ICalCalendar,
  ICalEventClass,
  ICalEventStatus,
  ICalEventTransparency,
} from 'ical-generator';
import type { Appointment, Language } from './appointment.ts';
import type { ToldEvent } from './events.ts';
import { wordsOfKind } from './sources.ts';

export type CalendarFile = {
  readonly name: string;
  readonly language: Language;
  readonly storehouseId: string;
  /** Where the web pages of the storehouse begin. */
  readonly root: string;
  readonly events: readonly ToldEvent[];
};

/** How often a calendar program is asked to look. */
const LOOK_AGAIN_SECONDS = 3600;

const STATUSES: Readonly<Record<Appointment['status'], ICalEventStatus>> = {
  tentative: ICalEventStatus.TENTATIVE,
  confirmed: ICalEventStatus.CONFIRMED,
  cancelled: ICalEventStatus.CANCELLED,
};

/**
 * Events as RFC 5545 text. Instants are in UTC, so no table of time zones can be out of date. It names no METHOD: then
 * DTSTAMP is when the event was last revised (RFC 5545, 3.8.7.2), and a calendar in which nothing changed is the same to
 * the byte.
 */
export function renderCalendar(file: CalendarFile): string {
  const calendar = ical({
    prodId: { company: 'Sheafbook', product: 'Storehouse calendar', language: file.language.toUpperCase() },
    name: escapeText(plain(file.name)), // the library escapes what is in events, and not this
    ttl: LOOK_AGAIN_SECONDS,
  });
  for (const event of file.events) addEvent(calendar, file, event);
  return `${calendar.toString()}\r\n`;
}

function addEvent(calendar: ICalCalendar, file: CalendarFile, event: ToldEvent): void {
  const { appointment, key, sequence, modifiedAt } = event;
  const words = wordsOfKind(appointment.kind)?.[file.language];
  if (!words) return;
  const { when } = appointment;
  calendar.createEvent({
    id: `${key}@${file.storehouseId}`,
    sequence,
    stamp: modifiedAt,
    lastModified: modifiedAt,
    ...('on' in when
      ? { allDay: true, start: midnight(when.on), end: midnight(addDays(when.on, 1)) }
      : { start: new Date(when.startsAt), end: when.endsAt === null ? null : new Date(when.endsAt) }),
    status: STATUSES[appointment.status],
    summary: plain(words.title(appointment.subject)),
    description: plain(words.about),
    location: appointment.place === '' ? null : plain(appointment.place),
    url: `${file.root}${appointment.path}`,
    class: appointment.householdId === null ? ICalEventClass.PUBLIC : ICalEventClass.PRIVATE,
    transparency: appointment.isBusy ? ICalEventTransparency.OPAQUE : ICalEventTransparency.TRANSPARENT,
  });
}

/** Without a zone of the calendar's own, the library reads the days of all-day events in UTC. */
const midnight = (on: string): Date => new Date(`${on}T00:00:00Z`);

/** Control characters are no part of a text in RFC 5545; what breaks a line is written as such. */
const plain = (text: string): string =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: it is these that are taken out
  text.replaceAll(/[\0-\x08\v\f\x0e-\x1f\x7f]/g, '');

const escapeText = (text: string): string =>
  text.replaceAll(/[\\;,]/g, '\\$&').replaceAll(/\r\n|\r|\n/g, '\\n');
