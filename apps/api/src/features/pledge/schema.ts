import { z } from 'zod';
import { pageQuery } from '../../platform/paging.ts';
import { grams, gramsOrNone, minorUnits, version } from '../buy/schema.ts';
import { pen } from '../keying/schema.ts';

const wish = {
  /** All three in whole steps of the line, or whole bags; 0 as least means "rather nothing than a little". */
  leastGrams: gramsOrNone,
  wantedGrams: grams,
  mostGrams: grams,
  wholeBags: z.boolean(),
  /** The highest landed price, as an amount for some grams; both or neither. */
  ceilingMinorUnits: minorUnits.optional(),
  ceilingPerGrams: grams.optional(),
  substituteLineId: z.uuid().nullable().default(null),
  /** What the person typed, such as "two bags": grams alone would not say it back. */
  ...pen,
  asTyped: z.string().trim().max(200, 'What was typed has 200 characters at most.').default(''),
};

const hasWholeCeiling = (body: { ceilingMinorUnits?: unknown; ceilingPerGrams?: unknown }) =>
  (body.ceilingMinorUnits === undefined) === (body.ceilingPerGrams === undefined);
const halfACeiling = {
  path: ['ceilingPerGrams'],
  message: 'A ceiling is an amount for some grams: give both, or neither.',
};

export const pledgeWish = z
  .strictObject({ buyLineId: z.uuid(), ...wish })
  .refine(hasWholeCeiling, halfACeiling);
export type PledgeWish = z.infer<typeof pledgeWish>;

export const pledgeEdit = z.strictObject({ version, ...wish }).refine(hasWholeCeiling, halfACeiling);
export type PledgeEdit = z.infer<typeof pledgeEdit>;

/** What a new pledge and a changed one have in common. */
export type PledgeTerms = Omit<PledgeWish, 'buyLineId'>;

export const pledgeWithdrawal = z.strictObject({ version });

export const householdPledgeQuery = pageQuery.extend({ after: z.uuid().optional() });
export type HouseholdPledgeQuery = z.infer<typeof householdPledgeQuery>;
