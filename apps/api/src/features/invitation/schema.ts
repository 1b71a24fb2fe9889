import { z } from 'zod';
import { email, newPassword, personName } from '../session/schema.ts';
import { thingName } from '../storehouse/schema.ts';

/** Into a household that is there already, or for a new one whose name may be suggested. */
export const invitationWish = z
  .strictObject({
    householdId: z.uuid().optional(),
    householdName: thingName.optional(),
    /** Asks for the e-mail address that the household is kept with; it sees that, as any look at its contact. */
    withEmail: z.boolean().default(false),
    days: z.int().min(1).max(90).default(14),
  })
  .refine((wish) => wish.householdId === undefined || wish.householdName === undefined, {
    path: ['householdName'],
    message: 'A household that is there already has its name.',
  });
export type InvitationWish = z.infer<typeof invitationWish>;

/** With `login` a new login is made; without it, the login that is signed in joins. */
export const acceptance = z.strictObject({
  personName,
  householdName: thingName.optional(),
  login: z.strictObject({ email, password: newPassword }).optional(),
});
export type Acceptance = z.infer<typeof acceptance>;
