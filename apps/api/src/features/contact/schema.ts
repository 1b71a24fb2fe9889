import { z } from 'zod';
import { email } from '../session/schema.ts';

const line = z.string().trim().max(300, 'This has 300 characters at most.');

/** Version 0 stands for a household that never entered any. */
export const contactEdit = z.strictObject({
  version: z.int().nonnegative(),
  phone: line,
  address: line,
  /** Empty takes it away; left out, it stays as it is. */
  email: z.union([z.literal(''), email]).optional(),
  shownToMembers: z.boolean(),
});
export type ContactEdit = z.infer<typeof contactEdit>;

export const contactQuery = z.strictObject({
  purpose: z
    .string()
    .trim()
    .min(3, 'Say what you need it for.')
    .max(200, 'A purpose has 200 characters at most.')
    .optional(),
});
