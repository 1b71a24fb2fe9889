import { hash, verify } from '@node-rs/argon2';

/**
 * argon2id with 19 MiB, two passes and one lane, in the usual encoded form (the least that the OWASP password storage
 * cheat sheet names; figures from memory).
 */
const COST = { memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;

export const hashPassword = (password: string): Promise<string> => hash(password, COST);

export const isPassword = (passwordHash: string, password: string): Promise<boolean> =>
  verify(passwordHash, password);

/** Verified when no login has the address, so that an unknown address takes as long as a wrong password. */
export const NOBODYS_HASH =
  '$argon2id$v=19$m=19456,t=2,p=1$IXloz64Qc1E3h2ykKzgedQ$gzVlJJAWT4uXA+eLaBUTlTrVHjEPor3Gp7fJR83ojx0';
