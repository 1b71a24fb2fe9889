/** Past this many codes whoever reads looks at the shelf anyway. */
export const MOST_CODES = 12;

/** Codes in a sentence: the first of them, and how many more there are. */
export function listCodes(codes: readonly string[]): string {
  const more = codes.length - MOST_CODES;
  return `${codes.slice(0, MOST_CODES).join(', ')}${more > 0 ? ` +${more}` : ''}`;
}
