import { createHash } from 'node:crypto';

/** What somebody saw or asked for, in one short text: whatever is other has another. */
export const digestOf = (what: unknown): string =>
  createHash('sha256').update(JSON.stringify(what)).digest('hex');
