import { inflateSync } from 'node:zlib';
import { assert } from '@sheafbook/units';

/** "wOFF" as a number. */
const SIGNATURE = 0x774f4646;
const WOFF_HEADER = 44;
const WOFF_ENTRY = 20;
const SFNT_HEADER = 12;
const SFNT_ENTRY = 16;

/**
 * The plain font inside a WOFF file, each table inflated. Done once a process: pdfkit would inflate every table again for
 * every paper, which took longer than all the drawing.
 * Source: W3C, WOFF File Format 1.0, sections 4 to 6.
 */
export function unpackWoff(woff: Buffer): Buffer {
  assert(woff.readUInt32BE(0) === SIGNATURE, 'a WOFF file begins with wOFF');
  const count = woff.readUInt16BE(12);
  const head = Buffer.alloc(SFNT_HEADER + SFNT_ENTRY * count);
  writeHeader(head, woff.readUInt32BE(4), count);
  const tables: Buffer[] = [];
  let offset = head.length;
  for (let at = 0; at < count; at += 1) {
    const entry = WOFF_HEADER + WOFF_ENTRY * at;
    const table = readTable(woff, entry);
    const to = SFNT_HEADER + SFNT_ENTRY * at;
    woff.copy(head, to, entry, entry + 4); // the tag
    head.writeUInt32BE(woff.readUInt32BE(entry + 16), to + 4); // its checksum
    head.writeUInt32BE(offset, to + 8);
    head.writeUInt32BE(table.length, to + 12);
    const padded = Buffer.alloc(Math.ceil(table.length / 4) * 4);
    table.copy(padded);
    tables.push(padded);
    offset += padded.length;
  }
  return Buffer.concat([head, ...tables]);
}

function writeHeader(head: Buffer, flavour: number, count: number): void {
  const power = Math.floor(Math.log2(count));
  head.writeUInt32BE(flavour, 0);
  head.writeUInt16BE(count, 4);
  head.writeUInt16BE(2 ** power * SFNT_ENTRY, 6);
  head.writeUInt16BE(power, 8);
  head.writeUInt16BE((count - 2 ** power) * SFNT_ENTRY, 10);
}

function readTable(woff: Buffer, entry: number): Buffer {
  const offset = woff.readUInt32BE(entry + 4);
  const packed = woff.subarray(offset, offset + woff.readUInt32BE(entry + 8));
  const length = woff.readUInt32BE(entry + 12);
  const table = packed.length === length ? packed : inflateSync(packed);
  assert(table.length === length, 'a table has the length that its entry says');
  return table;
}
