import { z } from 'zod';

/** One thing a table, in the order of the document. */
export const TABLES = [
  'household',
  'contact',
  'persons',
  'duties',
  'eaters',
  'plan',
  'guidelines',
  'pledges',
  'allotments',
  'shares',
  'charges',
  'deposits',
  'withdrawals',
  'pickUps',
  'containerWishes',
  'containers',
  'places',
  'placeWarmth',
  'containerMoves',
  'holdings',
  'statement',
  'massMovements',
  'helpers',
  'privateReads',
  'notices',
] as const;
export type TableName = (typeof TABLES)[number];

export const takeAlongQuery = z
  .strictObject({ format: z.enum(['json', 'csv']).default('json'), table: z.enum(TABLES).optional() })
  .refine((query) => (query.format === 'csv') === (query.table !== undefined), {
    path: ['table'],
    message: 'A CSV file holds one table, so name it; the JSON document holds them all.',
  });
