import { z } from 'zod';
import { reason } from '../buy/schema.ts';
import { pledgeWish } from '../pledge/schema.ts';

/** A pledge that might be made, in the words of a pledge; nothing is kept of it. */
export const pledgePreview = pledgeWish;
export type PledgePreview = z.infer<typeof pledgePreview>;

const bags = z.int().min(0).max(100_000);
const units = z.int().min(0).max(10_000_000, 'No line holds so much.');

/** One line set by hand: its bags, and whole line units for each pledge. A pledge that is left out gets nothing. */
const lineOverride = z.strictObject({
  buyLineId: z.uuid(),
  bags: z.array(z.strictObject({ bagOfferId: z.uuid(), bags })).max(50),
  allotments: z.array(z.strictObject({ pledgeId: z.uuid(), units })).max(1000),
});
export type LineOverride = z.infer<typeof lineOverride>;

export const fixing = z
  .strictObject({
    overrideReason: reason.optional(),
    override: z.array(lineOverride).min(1).max(40).optional(),
  })
  .refine((wish) => (wish.override === undefined) === (wish.overrideReason === undefined), {
    path: ['overrideReason'],
    message: 'An override needs its written reason, and a reason needs an override.',
  });
export type Fixing = z.infer<typeof fixing>;
