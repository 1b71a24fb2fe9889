import { dayInZone, sortedJson } from '@sheafbook/units';
import type { Appointment } from './appointment.ts';

/** An appointment as it was told last: how often it changed before, and when that was. */
export type ToldEvent = {
  readonly key: string;
  readonly appointment: Appointment;
  readonly sequence: number;
  readonly modifiedAt: Date;
};

export const keyOf = ({ kind, id }: Pick<Appointment, 'kind' | 'id'>): string => `${kind}.${id}`;

/** From when on things are told: in local days for what is past, and as an instant for what was cancelled. */
export type Since = { readonly on: string; readonly at: Date; readonly timeZone: string };

/**
 * What is to be told otherwise than before: appointments that are new or have changed, and those that the facts know no
 * more, which are cancelled. What lies before the span stays as it was told.
 */
export function listChanges(
  appointments: readonly Appointment[],
  told: readonly ToldEvent[],
  since: Since,
): Appointment[] {
  const toldBefore = new Map(told.map(({ key, appointment }) => [key, appointment]));
  const current = appointments.filter((appointment) => lastDayOf(appointment, since.timeZone) >= since.on);
  const known = new Set(appointments.map(keyOf));
  const gone = told
    .map(({ appointment }) => appointment)
    .filter(
      (appointment) =>
        !known.has(keyOf(appointment)) &&
        appointment.status !== 'cancelled' &&
        lastDayOf(appointment, since.timeZone) >= since.on,
    )
    .map((appointment) => ({ ...appointment, status: 'cancelled' as const }));
  const changed = current.filter((appointment) => {
    const before = toldBefore.get(keyOf(appointment));
    return before === undefined || sortedJson(before) !== sortedJson(appointment);
  });
  return [...changed, ...gone];
}

/** What a calendar shows of all that was told: a year back, and what was cancelled for a year after that. */
export function listShown(told: readonly ToldEvent[], since: Since): ToldEvent[] {
  return told
    .filter(
      ({ appointment, modifiedAt }) =>
        lastDayOf(appointment, since.timeZone) >= since.on &&
        (appointment.status !== 'cancelled' || modifiedAt >= since.at),
    )
    .toSorted((a, b) => startOf(a.appointment) - startOf(b.appointment) || (a.key < b.key ? -1 : 1));
}

function lastDayOf({ when }: Appointment, timeZone: string): string {
  if ('on' in when) return when.on;
  return dayInZone(Date.parse(when.endsAt ?? when.startsAt), timeZone);
}

const startOf = ({ when }: Appointment): number =>
  Date.parse('on' in when ? `${when.on}T00:00:00Z` : when.startsAt);
