import type { Outside } from './context.ts';

/** A version 7 UUID (RFC 9562): the milliseconds first, so that new rows stand together, then 74 random bits. */
export function newId({ now, randomBytes }: Pick<Outside, 'now' | 'randomBytes'>): string {
  const bytes = Buffer.concat([Buffer.alloc(6), randomBytes(10)]);
  bytes.writeUIntBE(now().getTime(), 0, 6);
  bytes.writeUInt8((bytes.readUInt8(6) & 0x0f) | 0x70, 6);
  bytes.writeUInt8((bytes.readUInt8(8) & 0x3f) | 0x80, 8);
  const hex = bytes.toString('hex');
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
}
