import { z } from 'zod';
import { pen } from '../keying/schema.ts';
import { note } from '../money/schema.ts';

export { wholeList } from '../split/schema.ts';

const instant = z.iso.datetime({ offset: true, error: 'An instant reads 2026-10-03T15:00:00Z.' });

const window = { startsAt: instant, endsAt: instant };
const isInOrder = (wish: { startsAt: string; endsAt: string }): boolean =>
  Date.parse(wish.startsAt) < Date.parse(wish.endsAt);
const outOfOrder = { path: ['endsAt'], message: 'The window ends after it starts.' };

/** Without a household it is one's own. */
export const pickUpWish = z
  .strictObject({ householdId: z.uuid().optional(), ...window })
  .refine(isInOrder, outOfOrder);
export type PickUpWish = z.infer<typeof pickUpWish>;

export const pickUpEdit = z
  .strictObject({ version: z.int().positive(), ...window })
  .refine(isInOrder, outOfOrder);
export type PickUpEdit = z.infer<typeof pickUpEdit>;

/** Without pieces it is everything of the household that may leave and hasn't been fetched. */
export const collection = z.strictObject({
  ...pen,
  signedBy: z.string().trim().min(1, 'Whoever takes it signs with a name.').max(120),
  pieces: z
    .array(z.strictObject({ bagId: z.uuid(), grams: z.int().positive() }))
    .min(1)
    .max(1000)
    .refine((pieces) => new Set(pieces.map((piece) => piece.bagId)).size === pieces.length, {
      message: 'Name each bag once.',
    })
    .optional(),
});
export type Collection = z.infer<typeof collection>;

/** Without a household it is one's own. */
export const cameWish = collection.extend({ householdId: z.uuid().optional() });
export type CameWish = z.infer<typeof cameWish>;

export const uncollectedWish = z.strictObject({ note });
export type UncollectedWish = z.infer<typeof uncollectedWish>;
