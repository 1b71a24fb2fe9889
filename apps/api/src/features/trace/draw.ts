import { createHash } from 'node:crypto';

/**
 * Draws from codes by a seed: each code gets the SHA-256 of `seed`, a line feed and the code, and those with the smallest
 * hashes are drawn, in that order. Nothing else goes in, so whoever knows the seed and the codes draws the same by hand,
 * for example with `printf 'seed\nCODE' | sha256sum`.
 */
export function drawCodes(seed: string, codes: readonly string[], count: number): string[] {
  const hashed = codes.map((code) => ({
    code,
    hash: createHash('sha256').update(`${seed}\n${code}`, 'utf8').digest('hex'),
  }));
  hashed.sort((a, b) => (a.hash < b.hash ? -1 : a.hash > b.hash ? 1 : a.code < b.code ? -1 : 1));
  return hashed.slice(0, count).map(({ code }) => code);
}
