/** A JPEG that shows its picture and says nothing else: not where or when it was taken, nor with which camera. */
export type BareJpeg = {
  readonly content: Uint8Array;
  readonly widthPixels: number;
  readonly heightPixels: number;
};

const MARK = 0xff;
const START = 0xd8;
const END = 0xd9;
const SCAN = 0xda;
const COMMENT = 0xfe;
/** Application segments: Exif with its place and time, the maker's own notes, thumbnails. APP0 and APP14 tell colours. */
const isTelling = (kind: number): boolean =>
  kind === COMMENT || (kind > 0xe0 && kind <= 0xef && kind !== 0xee);
/** Frame headers, which hold the picture's size; C4, C8 and CC are tables among them. */
const isFrame = (kind: number): boolean =>
  kind >= 0xc0 && kind <= 0xcf && kind !== 0xc4 && kind !== 0xc8 && kind !== 0xcc;
/** Inside a scan, FF 00 is a byte of the picture and FF D0 to D7 are marks of restart. */
const goesOnInScan = (kind: number): boolean => kind === 0 || (kind >= 0xd0 && kind <= 0xd7);

/**
 * Takes a JPEG apart segment by segment and puts together again only what draws the picture; whatever hangs on behind its
 * end is left out too. Undefined when the bytes are not one whole JPEG with a size.
 * Source: ITU-T T.81, annex B (the order of markers and segments).
 */
export function bareJpeg(bytes: Uint8Array): BareJpeg | undefined {
  if (bytes[0] !== MARK || bytes[1] !== START) return undefined;
  const kept: Uint8Array[] = [bytes.subarray(0, 2)];
  let size = { widthPixels: 0, heightPixels: 0 };
  let at = 2;
  while (at + 1 < bytes.length) {
    const kind = bytes[at + 1] ?? 0;
    if (bytes[at] !== MARK) return undefined;
    if (kind === MARK) {
      at += 1; // a byte of padding before the mark
      continue;
    }
    if (kind === END) {
      kept.push(bytes.subarray(at, at + 2));
      return size.widthPixels > 0 && size.heightPixels > 0 ? { content: join(kept), ...size } : undefined;
    }
    const end = at + 2 + lengthAt(bytes, at + 2);
    if (end < at + 4 || end > bytes.length) return undefined;
    if (isFrame(kind)) size = { heightPixels: lengthAt(bytes, at + 5), widthPixels: lengthAt(bytes, at + 7) };
    const next = kind === SCAN ? endOfScan(bytes, end) : end;
    if (!isTelling(kind)) kept.push(bytes.subarray(at, next));
    at = next;
  }
  return undefined;
}

const lengthAt = (bytes: Uint8Array, at: number): number => ((bytes[at] ?? 0) << 8) | (bytes[at + 1] ?? 0);

function endOfScan(bytes: Uint8Array, from: number): number {
  let at = from;
  while (at + 1 < bytes.length && !(bytes[at] === MARK && !goesOnInScan(bytes[at + 1] ?? 0))) at += 1;
  return at;
}

function join(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
