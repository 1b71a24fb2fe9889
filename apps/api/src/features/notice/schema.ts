import { z } from 'zod';
import { DUTIES } from '../../platform/actor.ts';
import { pageQuery } from '../../platform/paging.ts';

const NOTICE_STATES = ['all', 'unread', 'open'] as const;

/** `open` are those that nobody of the household has acknowledged yet. */
export const noticeQuery = pageQuery.extend({
  after: z.uuid().optional(),
  state: z.enum(NOTICE_STATES).default('all'),
  q: z.string().trim().max(100, 'Search for 100 characters at most.').default(''),
});
export type NoticeQuery = z.infer<typeof noticeQuery>;

export const noticeWish = z.strictObject({
  audience: z.discriminatedUnion('to', [
    z.strictObject({ to: z.literal('everyone') }),
    z.strictObject({ to: z.literal('duty'), duty: z.enum(DUTIES) }),
    z.strictObject({ to: z.literal('household'), householdId: z.uuid() }),
    z.strictObject({ to: z.literal('buy'), buyId: z.uuid() }),
  ]),
  about: z
    .string()
    .trim()
    .min(1, 'Say in a few words what it is about.')
    .max(120, 'A title has 120 characters at most.'),
  says: z
    .string()
    .trim()
    .min(1, 'Say what is to be done.')
    .max(2000, 'A notice has 2,000 characters at most.'),
  dueOn: z.iso.date().nullable().default(null),
  isSafety: z.boolean().default(false),
});
export type NoticeWish = z.infer<typeof noticeWish>;

export const noticeReadingWish = z.strictObject({ isAcknowledged: z.boolean().default(false) });
export type NoticeReadingWish = z.infer<typeof noticeReadingWish>;
