import { z } from 'zod';

/** One spelling for one address: trimmed and in small letters. */
export const email = z
  .string()
  .trim()
  .toLowerCase()
  .max(254)
  .regex(/^[^\s@]+@[^\s@]+$/, 'This is not an e-mail address.');

/** Length is what protects; nothing is asked of the characters (NIST SP 800-63B, from memory). */
export const newPassword = z
  .string()
  .min(10, 'Choose a password of 10 characters or more.')
  .max(200, 'A password has 200 characters at most.');

export const personName = z
  .string()
  .trim()
  .min(1, 'A name is needed.')
  .max(120, 'A name has 120 characters at most.');

export const signIn = z.strictObject({ email, password: z.string().min(1).max(200) });
export type SignIn = z.infer<typeof signIn>;

export const passwordChange = z.strictObject({
  currentPassword: z.string().min(1).max(200),
  newPassword,
});
export type PasswordChange = z.infer<typeof passwordChange>;
