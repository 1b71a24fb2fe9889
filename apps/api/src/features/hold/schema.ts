import { isDay } from '@sheafbook/units';
import { z } from 'zod';
import { pageQuery } from '../../platform/paging.ts';
import { BECAME } from './queries-slip.ts';

const words = (message: string) => z.string().trim().min(1, message).max(1000, 'At most 1000 characters.');

export const holdReason = z.strictObject({ reason: words('Say why the bag is put on hold.') });
export type HoldReason = z.infer<typeof holdReason>;

const day = z.string().refine(isDay, 'There is no such day; one looks like 2026-10-24.');
const serial = z.int().min(1).max(1_000_000);

/** What to hold: a lot, some containers, what a line closed, a delivery, a supplier's mark, a food of some days, or a place. */
const holdOf = z.discriminatedUnion('scope', [
  z.strictObject({ scope: z.literal('lot'), lotId: z.uuid() }),
  z.strictObject({
    scope: z.literal('containers'),
    containerIds: z.array(z.uuid()).min(1, 'Name at least one container.').max(500),
  }),
  z
    .strictObject({
      scope: z.literal('session'),
      sessionId: z.uuid(),
      line: z.int().min(1).max(20).optional(),
      fromSerial: serial.optional(),
      toSerial: serial.optional(),
    })
    .refine(({ fromSerial, toSerial }) => (fromSerial === undefined) === (toSerial === undefined), {
      path: ['toSerial'],
      message: 'Give both numbers, or neither.',
    })
    .refine(({ line, fromSerial }) => fromSerial === undefined || line !== undefined, {
      path: ['line'],
      message: 'Each line counts for itself: say which one.',
    })
    .refine(({ fromSerial, toSerial }) => (fromSerial ?? 0) <= (toSerial ?? fromSerial ?? 0), {
      path: ['toSerial'],
      message: 'The last number comes after the first.',
    }),
  z.strictObject({ scope: z.literal('delivery'), deliveryId: z.uuid() }),
  z.strictObject({
    scope: z.literal('mark'),
    supplierId: z.uuid(),
    mark: z.string().trim().min(1, 'Write the mark as it stands on the bag.').max(120),
  }),
  z
    .strictObject({ scope: z.literal('food'), foodId: z.uuid(), fromOn: day, toOn: day })
    .refine(({ fromOn, toOn }) => fromOn <= toOn, {
      path: ['toOn'],
      message: 'The last day comes after the first.',
    }),
  z.strictObject({ scope: z.literal('place'), placeId: z.uuid() }),
]);
export type HoldOf = z.infer<typeof holdOf>;

export const newHold = z.strictObject({ of: holdOf, reason: words('Say why it is put on hold.') });
export type NewHold = z.infer<typeof newHold>;

export const holdFinding = z.strictObject({
  finding: words('Write down what was found, so that a second person can agree to it.'),
});
export type HoldFinding = z.infer<typeof holdFinding>;

/** What a household says of held food. All left out says that it has none and knows of none. */
export const holdAnswer = z.strictObject({
  hasSome: z.boolean(),
  eatenOn: day.nullable(),
  givenOn: day.nullable(),
  note: z.string().trim().max(1000, 'At most 1000 characters.').default(''),
});
export type HoldAnswer = z.infer<typeof holdAnswer>;

/** What the slip of a recall notice says, of a household's or of a pantry's. */
export const recallSlip = z
  .strictObject({
    householdId: z.uuid().nullable().default(null),
    pantryId: z.uuid().nullable().default(null),
    signedBy: z.string().trim().min(1, 'Say who signed the slip.').max(120),
    writtenOn: day,
    became: z.array(z.strictObject({ code: z.string().trim().max(20), became: z.enum(BECAME) })).max(500),
    note: z.string().trim().max(1000, 'At most 1000 characters.').default(''),
  })
  .refine(({ householdId, pantryId }) => (householdId === null) !== (pantryId === null), {
    path: ['householdId'],
    message: 'Say whose slip it is: a household’s or a pantry’s.',
  });
export type RecallSlip = z.infer<typeof recallSlip>;

export const destruction = z.strictObject({
  of: z.enum(['household', 'common']),
  reason: words('Say why it is thrown away.'),
});
export type Destruction = z.infer<typeof destruction>;

export const holdQuery = pageQuery.extend({
  after: z.uuid().optional(),
  open: z.stringbool().default(false),
  buyId: z.uuid().optional(),
});
export type HoldQuery = z.infer<typeof holdQuery>;
