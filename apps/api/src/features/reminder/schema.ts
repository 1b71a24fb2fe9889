import { isTimeZone } from '@sheafbook/units';
import { z } from 'zod';
import { isDigestInHours } from './due.ts';
import { REMINDER_KINDS, STOPPABLE } from './kinds.ts';

/** `version` 0: nothing was wished so far. */
export const wishesEdit = z
  .strictObject({
    version: z.int().nonnegative(),
    language: z.enum(['en', 'es']),
    timeZone: z
      .string()
      .trim()
      .refine(isTimeZone, 'There is no such time zone; one looks like America/Chicago.'),
    fromHour: z.int().min(0).max(23),
    toHour: z.int().min(1).max(24),
    digestHour: z.int().min(0).max(23).nullable(),
    isEmailOn: z.boolean(),
    stoppedKinds: z.array(z.enum(REMINDER_KINDS)).max(REMINDER_KINDS.length),
  })
  .refine(({ fromHour, toHour }) => fromHour !== toHour, {
    path: ['toHour'],
    message: 'These hours never come: they end when they begin.',
  })
  .refine(isDigestInHours, {
    path: ['digestHour'],
    message: 'The hour of the daily letter must lie in your hours, or it never comes.',
  })
  .refine(({ stoppedKinds }) => stoppedKinds.every((kind) => STOPPABLE.includes(kind)), {
    path: ['stoppedKinds'],
    message: 'What is about safety can’t be stopped, only acknowledged.',
  });
export type WishesEdit = z.infer<typeof wishesEdit>;
