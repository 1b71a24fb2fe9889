import { isDay, isWallTime } from '@sheafbook/units';
import { z } from 'zod';
import { note } from '../money/schema.ts';

/** A thing is booked by the clock on the storehouse's wall; an hour that comes twice in autumn is the first unless said. */
export const wallTime = z.string().refine(isWallTime, 'Day and hour read like 2026-10-17T09:40.');
const times = {
  from: wallTime,
  until: wallTime,
  isFromSecond: z.boolean().default(false),
  isUntilSecond: z.boolean().default(false),
};
export type Times = {
  readonly from: string;
  readonly until: string;
  readonly isFromSecond: boolean;
  readonly isUntilSecond: boolean;
};

/** What goes through it, of a thing that touches food. */
const foodIds = z
  .array(z.uuid())
  .max(20, 'Name 20 foods at most.')
  .refine((ids) => new Set(ids).size === ids.length, 'Name each food once.')
  .default([]);

export const bookingWish = z.strictObject({
  ...times,
  householdId: z.uuid().optional(),
  /** Take it straight from whoever has it before, who must agree: then no time is kept for bringing it back between. */
  byRelay: z.boolean().default(false),
  foodIds,
  note,
});
export type BookingWish = z.infer<typeof bookingWish>;

export const waitingWish = z.strictObject({ ...times, householdId: z.uuid().optional(), foodIds });
export type WaitingWish = z.infer<typeof waitingWish>;

export const serviceTimeWish = z.strictObject({ ...times, unitId: z.uuid(), note });
export type ServiceTimeWish = z.infer<typeof serviceTimeWish>;

/** What goes through it is asked only where neither the wish nor the booking before has told it. */
export const acceptanceWish = z.strictObject({ foodIds });
export type AcceptanceWish = z.infer<typeof acceptanceWish>;

export const relayAnswer = z.strictObject({ version: z.int().positive(), agrees: z.boolean() });
export type RelayAnswer = z.infer<typeof relayAnswer>;

export const freeTimesQuery = z.strictObject({
  fromDay: z.string().refine(isDay, 'A day reads YYYY-MM-DD and must exist.').optional(),
  days: z.coerce.number().int().min(1).max(100).default(14),
  leastMinutes: z.coerce.number().int().min(15).max(20_160).default(60),
});
export type FreeTimesQuery = z.infer<typeof freeTimesQuery>;
