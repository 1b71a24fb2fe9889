import { z } from 'zod';
import { day, grams, gramsOrNone, minorUnits, minorUnitsOrNone, note, version } from '../buy/schema.ts';

const bags = z.int().min(1).max(100_000);

const priceBreaks = z
  .array(z.strictObject({ fromBags: bags, bagPriceMinorUnits: minorUnits }))
  .min(1, 'A price is needed.')
  .max(50)
  .superRefine((breaks, refinement) => {
    if (breaks[0] && breaks[0].fromBags !== 1)
      refinement.addIssue({
        code: 'custom',
        path: [0, 'fromBags'],
        message: 'The first price must hold from 1 bag on.',
      });
    const wrong = breaks.findIndex(
      ({ fromBags }, at) => at > 0 && fromBags <= (breaks[at - 1]?.fromBags ?? 0),
    );
    if (wrong > 0)
      refinement.addIssue({
        code: 'custom',
        path: [wrong, 'fromBags'],
        message: 'Price breaks must ascend, each number of bags once.',
      });
  });

const freightSteps = z
  .array(z.strictObject({ fromGrams: gramsOrNone, minorUnits: minorUnitsOrNone }))
  .max(50)
  .superRefine((steps, refinement) => {
    if (steps[0] && steps[0].fromGrams !== 0)
      refinement.addIssue({
        code: 'custom',
        path: [0, 'fromGrams'],
        message: 'The first freight step must begin at 0 grams.',
      });
    const wrong = steps.findIndex(
      ({ fromGrams }, at) => at > 0 && fromGrams <= (steps[at - 1]?.fromGrams ?? 0),
    );
    if (wrong > 0)
      refinement.addIssue({
        code: 'custom',
        path: [wrong, 'fromGrams'],
        message: 'Freight steps must ascend by weight, each weight once.',
      });
  });

const offer = z.strictObject({
  buyLineId: z.uuid(),
  /** Whole units of the line, such as 50 for a 50 lb bag. */
  bagSize: z.int().min(1).max(5000),
  breakKind: z.enum(['all-units', 'incremental']).default('all-units'),
  mostBags: bags.nullable().default(null),
  breaks: priceBreaks,
});
export type OfferWish = z.infer<typeof offer>;

const offers = z
  .array(offer)
  .min(1, 'A quote offers at least one bag of one food.')
  .max(100)
  .superRefine((list, refinement) => {
    const seen = new Set<string>();
    for (const [at, { buyLineId, bagSize }] of list.entries()) {
      const key = `${buyLineId} ${bagSize}`;
      if (seen.has(key))
        refinement.addIssue({
          code: 'custom',
          path: [at, 'bagSize'],
          message: 'A bag size stands once for each food.',
        });
      seen.add(key);
    }
  });

const terms = {
  reference: z.string().trim().max(120, 'A reference has 120 characters at most.').default(''),
  /** May be left out. A price in another currency belongs in the note, paid or not. */
  currency: z.string().max(20).optional(),
  /** The last day the quote stands. */
  validUntil: day,
  minimumGoodsMinorUnits: minorUnitsOrNone.default(0),
  minimumGrams: gramsOrNone.default(0),
  /** None: delivery is free. One from 0 grams: a flat price. */
  freightSteps: freightSteps.default([]),
  freightFreeFromMinorUnits: minorUnitsOrNone.nullable().default(null),
  leadDays: z.int().min(0).max(365).default(0),
  cropYear: z.int().min(1990).max(2200).nullable().default(null),
  moistureNote: note.default(''),
  foreignPriceNote: note.default(''),
  offers,
};

export const quoteWish = z.strictObject({ ...terms, supplierId: z.uuid() });
export type QuoteWish = z.infer<typeof quoteWish>;

/** A quote is replaced whole; its supplier stays, since another supplier's is another quote. */
export const quoteReplacement = z.strictObject({ ...terms, version });
export type QuoteReplacement = z.infer<typeof quoteReplacement>;
export type QuoteTerms = Omit<QuoteReplacement, 'version'>;

export const quoteWithdrawal = z.strictObject({ version });

/** `version` is that of the line. Null takes the choice back. */
export const quoteChoice = z.strictObject({ version, quoteId: z.uuid().nullable() });
export type QuoteChoice = z.infer<typeof quoteChoice>;

/** Compares at these grams of every line instead of at what is pledged. */
export const comparisonQuery = z.strictObject({ grams: z.coerce.number().pipe(grams).optional() });

/** All quotes of a buy are few, so they are not paged. */
export const quoteQuery = z.strictObject({ format: z.enum(['json', 'csv']).default('json') });
