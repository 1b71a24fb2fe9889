import { MOST_MOISTURE_TENTHS } from '@sheafbook/packing';
import { z } from 'zod';
import { pageQuery } from '../../platform/paging.ts';
import { pen } from '../keying/schema.ts';

const line = (most: number) => z.string().trim().max(most, `At most ${most} characters.`);
/** Ten tonnes: no scale in a hall reads more, and a slipped digit is caught here. */
const MOST_GRAMS = 10_000_000;
const grams = z
  .int('Grams are whole numbers.')
  .max(MOST_GRAMS, 'That is more than a scale in a hall can read.');
const grossGrams = grams.min(1, 'A full bag weighs something.');
const tareGrams = grams.min(0, 'An empty bag weighs 0 g or more.');
const condition = z.enum(['dry', 'torn', 'wet', 'infested', 'odour', 'wrong']);
const decision = z.enum(['accepted', 'accepted-with-note', 'refused']);
const moisture = z
  .int('Moisture is given in whole tenths of a percent.')
  .min(0, 'Moisture is 0 or more.')
  .max(1000, 'Moisture is 100 % at most.');

const NOTE_NEEDED = { path: ['note'], message: 'Write the note that goes with this.' };
const isNoted = (bag: { decision: string; condition: string; note: string }): boolean =>
  bag.note !== '' ||
  (bag.decision !== 'accepted-with-note' && (bag.decision !== 'refused' || bag.condition !== 'dry'));

const newBag = z
  .strictObject({
    bagOfferId: z.uuid(),
    /** The supplier's own mark for the lot, as printed on the bag; empty when there is none. */
    supplierMark: line(80).default(''),
    harvestYear: z.int().min(1950).max(2200).optional(),
    grossGrams: grossGrams.optional(),
    tareGrams: tareGrams.optional(),
    condition: condition.default('dry'),
    moistureTenthsPercent: moisture.optional(),
    decision: decision.default('accepted'),
    note: line(1000).default(''),
    isExemptFromWeighing: z.boolean().default(false),
  })
  .refine((bag) => bag.tareGrams === undefined || bag.grossGrams !== undefined, {
    path: ['grossGrams'],
    message: 'A tare goes with a gross weight.',
  })
  .refine((bag) => bag.grossGrams === undefined || !bag.isExemptFromWeighing, {
    path: ['isExemptFromWeighing'],
    message: 'A bag that was weighed needs no exemption.',
  })
  .refine(isNoted, NOTE_NEEDED);
export type NewBag = z.infer<typeof newBag>;

export const newBags = z.strictObject({
  ...pen,
  bags: z.array(newBag).min(1, 'Name at least one bag.').max(100, 'Number 100 bags at a time.'),
});

export type NewBags = z.infer<typeof newBags>;

export const bagEdit = z
  .strictObject({
    version: z.int().positive(),
    condition,
    decision,
    note: line(1000),
    moistureTenthsPercent: moisture.nullable(),
    isExemptFromWeighing: z.boolean(),
  })
  .refine(isNoted, NOTE_NEEDED);
export type BagEdit = z.infer<typeof bagEdit>;

const reading = moisture.max(MOST_MOISTURE_TENTHS, 'Grain is 50 % moist at most.');
/** How moist the food was when the book's weight was true, and how moist it is now. */
export const moistureReadings = z.strictObject({ wasTenths: reading, isTenths: reading });

export const bagWeight = z.strictObject({
  ...pen,
  version: z.int().positive(),
  grossGrams,
  tareGrams: tareGrams.optional(),
  /** The buy that is being landed: with two in one hall, a bag of the other is refused instead of weighed. */
  buyId: z.uuid().optional(),
  /** What they explain of the difference is booked as moisture. */
  moisture: moistureReadings.optional(),
  /** Needed to weigh a bag again. */
  reason: line(1000).default(''),
});
export type BagWeight = z.infer<typeof bagWeight>;

export const bagLoss = z.strictObject({
  grams: grams.min(1, 'A loss is at least 1 g.'),
  to: z.enum(['spilled', 'sampled', 'discarded', 'composted', 'animals']),
  because: line(1000).min(1, 'Say how it was lost.'),
});
export type BagLoss = z.infer<typeof bagLoss>;

export const bagDiscard = z.strictObject({
  finding: line(1000).min(1, 'Write down what was found.'),
});
export type BagDiscard = z.infer<typeof bagDiscard>;

export const bagQuery = pageQuery.extend({ after: z.uuid().optional() });
export type BagQuery = z.infer<typeof bagQuery>;
