import { z } from 'zod';
import { Problem } from '../../platform/problem.ts';
import { bookDay } from '../money/schema.ts';

export const periodEnd = z.strictObject({ throughOn: bookDay });
export type PeriodEnd = z.infer<typeof periodEnd>;

/** The duties that sign a close. */
export const SIGNERS = ['reviewer', 'treasurer', 'coordinator'] as const;

export const signatureWish = z.strictObject({
  duty: z.enum(SIGNERS),
  /** The digest that the signer saw, so that nobody signs what they have not looked at. */
  digestSha256: z.string().regex(/^[0-9a-f]{64}$/, 'A digest is 64 digits and small letters from a to f.'),
  remarks: z.string().trim().max(2000, 'Remarks have 2000 characters at most.').default(''),
});
export type SignatureWish = z.infer<typeof signatureWish>;

export const digestQuery = z.strictObject({ format: z.enum(['json', 'text', 'accounts']).default('json') });

/** The day of a close in the path. What is no day names no close. */
export function closeDay(text: string): string {
  const day = bookDay.safeParse(text);
  if (!day.success) throw new Problem('thing-not-found', { thing: 'close' });
  return day.data;
}
