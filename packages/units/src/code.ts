import { assert, assertWhole } from './assert.ts';

/**
 * The characters of our own codes on cans, bags and papers: no I, L, O, 0 or 1, which people confuse on a label.
 * Units: none; 31 characters, a prime number, which the check needs. Errors: none.
 */
export const CODE_ALPHABET = 'ABCDEFGHJKMNPQRSTUVWXYZ23456789';

// A power of three shares no factor with 31, so multiplying by it shuffles numbers and never makes two of them meet.
// Without it the first thousand cans would all begin AAAA and differ in a character or two.
const SHUFFLE = 3n ** 33n;

/**
 * The check character of a code: alphabet[Σ i·index(cᵢ) mod alphabet.length], positions counted from 1. With a prime
 * alphabet it catches every single wrong character and every swap of neighbours. A character outside the alphabet,
 * such as a "/", counts nothing but holds its position.
 * Units: characters; `body` from 1 to alphabet.length − 2 of them, past which swaps go unseen.
 * Errors: AssertionError when the body is empty or longer.
 * Source: the position-weighted check of the NOID identifier scheme, whose alphabet has 29 characters (from memory).
 */
export function checkCharacter(body: string, alphabet: string = CODE_ALPHABET): string {
  assert(body.length > 0, 'a code needs at least one character');
  assert(body.length <= alphabet.length - 2, `a code has at most ${alphabet.length - 2} characters`);
  const sum = [...body].reduce((total, character, position) => {
    return total + (position + 1) * Math.max(0, alphabet.indexOf(character));
  }, 0);
  return alphabet.charAt(sum % alphabet.length);
}

/**
 * Whether a text is one of our codes: a body of 1 to 29 characters of the alphabet and its check character.
 * Units: characters, capitals only; see `readCode` for what people type. Errors: none.
 */
export function isCode(code: string): boolean {
  if (code.length < 2 || code.length > CODE_ALPHABET.length - 1) return false;
  if ([...code].some((character) => !CODE_ALPHABET.includes(character))) return false;
  return checkCharacter(code.slice(0, -1)) === code.slice(-1);
}

/**
 * The code that a person typed or read aloud, spaces, hyphens and small letters forgiven; undefined when the check
 * character does not fit.
 * Units: characters. Errors: none.
 */
export function readCode(text: string): string | undefined {
  const code = text.replaceAll(/[\s-]/g, '').toUpperCase();
  return isCode(code) ? code : undefined;
}

/**
 * A code in groups of three for paper and for reading aloud, a lone last character joining the group before it:
 * "BK7M2Q5" is "BK7 M2Q5". `readCode` takes the groups back.
 * Units: characters. Errors: AssertionError when the text is no code.
 */
export function spellCode(code: string): string {
  assert(isCode(code), `${code} is no code`);
  return code.replaceAll(/.{3}(?=.{2})/g, '$& ');
}

/**
 * The code of a running number: `length` characters of body and the check character. The same number always gives the
 * same code, two numbers never share one, and neighbours look unlike each other.
 * Units: `n` whole and below 31^length; characters. Errors: AssertionError when `n` does not fit or `length` is not 1 to 29.
 */
export function codeFromNumber(n: number, length: number): string {
  assertWhole(n, 'n');
  assert(Number.isInteger(length) && length >= 1 && length <= 29, `1 to 29 characters, got ${length}`);
  const base = BigInt(CODE_ALPHABET.length);
  const count = base ** BigInt(length);
  assert(BigInt(n) < count, `${n} does not fit ${length} characters`);
  let rest = (BigInt(n) * SHUFFLE + SHUFFLE) % count;
  let body = '';
  for (let position = 0; position < length; position += 1) {
    body = CODE_ALPHABET.charAt(Number(rest % base)) + body;
    rest /= base;
  }
  return body + checkCharacter(body);
}
