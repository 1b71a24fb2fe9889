import { date, timestamp } from 'drizzle-orm/pg-core';

/** A moment, read as a Date. */
export const instant = (name: string) => timestamp(name, { withTimezone: true, mode: 'date' });

/** A day of the calendar, read as `YYYY-MM-DD`. */
export const day = (name: string) => date(name, { mode: 'string' });
