import type { CalendarFeedRow } from '@sheafbook/db/tables';
import type { Language } from './appointment.ts';
import type { ToldEvent } from './events.ts';
import { wordsOfKind } from './sources.ts';

export type ShownFeed = { readonly feed: CalendarFeedRow; readonly subject: string | null };

export function presentFeed({ feed, subject }: ShownFeed) {
  return {
    id: feed.calendarFeedId,
    scope: feed.scope,
    itemKind: feed.itemKind,
    itemId: feed.itemId,
    itemName: subject,
    language: feed.language,
    madeAt: feed.madeAt.toISOString(),
    renewedAt: feed.renewedAt?.toISOString() ?? null,
  };
}

/** The only time that the address is seen: the book keeps the hash of its secret alone. */
export function presentNewFeed(shown: ShownFeed & { readonly secret: string }, publicUrl: string) {
  const address = new URL(`/api/calendars/${shown.secret}.ics`, publicUrl).href;
  return { ...presentFeed(shown), address, webcal: address.replace(/^https?:/, 'webcal:') };
}

export function presentAppointments(events: readonly ToldEvent[], language: Language) {
  return {
    appointments: events.flatMap(({ key, appointment }) => {
      const words = wordsOfKind(appointment.kind)?.[language];
      if (!words) return [];
      const { kind, status, place, when, item, householdId, path } = appointment;
      const times =
        'on' in when
          ? { on: when.on, startsAt: null, endsAt: null }
          : { on: null, startsAt: when.startsAt, endsAt: when.endsAt };
      return [
        {
          ...{ id: key, kind, status, summary: words.title(appointment.subject), about: words.about },
          ...{ ...times, place, itemKind: item?.kind ?? null, itemId: item?.id ?? null },
          itemName: item === null ? null : appointment.subject,
          ...{ isOwn: householdId !== null, path },
        },
      ];
    }),
  };
}
