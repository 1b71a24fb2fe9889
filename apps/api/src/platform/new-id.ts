import type { Outside } from './context.ts';

/** Twelve bits count within a millisecond; a count begins in their lower half, so that there is room above it. */
const LAST_COUNT = 0xfff;
const FIRST_COUNTS = 0x7ff;

type LastId = { readonly milliseconds: number; readonly count: number };

/** The last id made for each database. Keyed by it, so that two apps in one process know nothing of each other. */
const lastIds = new WeakMap<object, LastId>();

/**
 * A version 7 UUID: the milliseconds, a count within them, then 62 random bits. Ids made for one database by one
 * process sort in the order of their making, within a millisecond and when the clock steps back too, so that a list
 * by id stands as it was written. A count that is used up borrows the next millisecond.
 * Source: RFC 9562, section 6.2, method 1 (counter of fixed length) and its rules for rollover and clocks set back.
 */
export function newId(outside: Pick<Outside, 'db' | 'now' | 'randomBytes'>): string {
  const bytes = Buffer.concat([Buffer.alloc(6), outside.randomBytes(10)]);
  const next = nextAfter(lastIds.get(outside.db), {
    milliseconds: outside.now().getTime(),
    count: bytes.readUInt16BE(6) & FIRST_COUNTS,
  });
  lastIds.set(outside.db, next);
  bytes.writeUIntBE(next.milliseconds, 0, 6);
  bytes.writeUInt16BE(0x7000 | next.count, 6);
  bytes.writeUInt8((bytes.readUInt8(8) & 0x3f) | 0x80, 8);
  const hex = bytes.toString('hex');
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
}

function nextAfter(last: LastId | undefined, fresh: LastId): LastId {
  if (!last || fresh.milliseconds > last.milliseconds) return fresh;
  if (last.count < LAST_COUNT) return { milliseconds: last.milliseconds, count: last.count + 1 };
  return { milliseconds: last.milliseconds + 1, count: fresh.count };
}
