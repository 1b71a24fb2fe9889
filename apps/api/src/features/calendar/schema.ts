import { z } from 'zod';
import { LANGUAGES } from './appointment.ts';

const language = z.enum(LANGUAGES).default('en');

/** One's own appointments, the whole storehouse's without anybody's own, or those of one thing. */
export const feedWish = z
  .strictObject({
    scope: z.enum(['mine', 'storehouse', 'item']),
    item: z.strictObject({ kind: z.string().regex(/^[a-z][a-z-]{0,39}$/), id: z.uuid() }).optional(),
    language,
  })
  .refine(({ scope, item }) => (scope === 'item') === (item !== undefined), {
    path: ['item'],
    message: 'A calendar of one thing names the thing; any other names none.',
  });
export type FeedWish = z.infer<typeof feedWish>;

export const fileQuery = z.strictObject({ language });
