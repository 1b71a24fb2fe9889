export const ENCODINGS = ['utf-8', 'windows-1252'] as const;
/** How the bytes of a file stand for letters. What a spreadsheet saves as “Unicode text” says so itself, at its start. */
export type Encoding = (typeof ENCODINGS)[number] | 'utf-16le' | 'utf-16be';
export type Decoded = { readonly text: string; readonly encoding: Encoding };

/** A byte that stands for no letter is kept as a character of the last private plane, which no sheet of a group uses. */
const MARK = 0x10f700;
const mark = (byte: number): string => String.fromCodePoint(MARK + byte);
const MARKED = /[\u{10F780}-\u{10F7FF}]/gu;

/** A letter of several bytes as UTF-8 writes it (the grammar of RFC 3629, section 4), or any byte beyond ASCII. */
const BEYOND_ASCII =
  /[\xC2-\xDF][\x80-\xBF]|\xE0[\xA0-\xBF][\x80-\xBF]|[\xE1-\xEC\xEE\xEF][\x80-\xBF]{2}|\xED[\x80-\x9F][\x80-\xBF]|\xF0[\x90-\xBF][\x80-\xBF]{2}|[\xF1-\xF3][\x80-\xBF]{3}|\xF4[\x80-\x8F][\x80-\xBF]{2}|[\x80-\xFF]/g;

/**
 * The text of a file's bytes. A byte-order mark decides; else what is chosen; else the file is UTF-8 where it can be read
 * as such, and Windows-1252, which older spreadsheets save, where it can't. Undefined for what is no text at all.
 */
export function decode(bytes: Uint8Array, chosen?: Encoding): Decoded | undefined {
  const decoded = decodeBy(bytes, encodingAtStart(bytes) ?? chosen);
  return decoded.text.includes('\0') ? undefined : decoded;
}

/** The bytes in a cell that stand for no letter, such as 0x81, and the letters that were lost before it was saved. */
export const listUnreadable = (cell: string): string[] => [
  ...(cell.match(MARKED) ?? []).map(
    (marked) => `0x${((marked.codePointAt(0) ?? 0) - MARK).toString(16).toUpperCase().padStart(2, '0')}`,
  ),
  ...(cell.match(/\uFFFD/g) ?? []),
];

/** The cell as it can be shown: a mark at each place where something can't be read. */
export const showUnreadable = (cell: string): string => cell.replaceAll(MARKED, '\uFFFD');

function encodingAtStart([first, second, third]: Uint8Array): Encoding | undefined {
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  return first === 0xef && second === 0xbb && third === 0xbf ? 'utf-8' : undefined;
}

function decodeBy(bytes: Uint8Array, encoding: Encoding | undefined): Decoded {
  if (encoding === 'windows-1252') return { encoding, text: decodeWindows(bytes) };
  if (encoding !== undefined && encoding !== 'utf-8')
    return { encoding, text: new TextDecoder(encoding).decode(bytes) };
  const { text, letters, strays } = decodeUtf8(bytes);
  // A letter of several bytes comes about by chance so seldom that a file with more of those than strays is damaged UTF-8.
  const isUtf8 = encoding === 'utf-8' || strays === 0 || letters > strays;
  return isUtf8 ? { encoding: 'utf-8', text } : { encoding: 'windows-1252', text: decodeWindows(bytes) };
}

function decodeUtf8(bytes: Uint8Array): { text: string; letters: number; strays: number } {
  let letters = 0;
  let strays = 0;
  const text = latin(bytes).replace(BEYOND_ASCII, (found) => {
    if (found.length === 1) {
      strays += 1;
      return mark(found.charCodeAt(0));
    }
    letters += 1;
    return Buffer.from(found, 'latin1').toString('utf8');
  });
  return { text: text.replace(/^\uFEFF/, ''), letters, strays };
}

/**
 * What 0x80 to 0x9F stand for in Windows-1252; 0 for the five that stand for nothing. Source: the Encoding Standard,
 * index-windows-1252. `TextDecoder` of some versions of Node takes these bytes for the control characters of Latin-1.
 */
const WINDOWS_FROM_80 = [
  0x20ac, 0, 0x201a, 0x0192, 0x201e, 0x2026, 0x2020, 0x2021, 0x02c6, 0x2030, 0x0160, 0x2039, 0x0152, 0,
  0x017d, 0, 0, 0x2018, 0x2019, 0x201c, 0x201d, 0x2022, 0x2013, 0x2014, 0x02dc, 0x2122, 0x0161, 0x203a,
  0x0153, 0, 0x017e, 0x0178,
] as const;

const decodeWindows = (bytes: Uint8Array): string =>
  latin(bytes).replace(/[\x80-\x9F]/g, (control) => {
    const byte = control.charCodeAt(0);
    return String.fromCodePoint(WINDOWS_FROM_80[byte - 0x80] || MARK + byte);
  });

const latin = (bytes: Uint8Array): string =>
  Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1');
