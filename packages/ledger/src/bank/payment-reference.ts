import { assert } from '@sheafbook/units';

const CONSONANTS = 'bdfgjklmnprstv';
const VOWELS = 'aeiou';
const SYLLABLES = CONSONANTS.length * VOWELS.length;
// It shares no factor with 70², so seats are shuffled and no two of them meet; neighbours sound unlike each other.
const SHUFFLE = 1423;
const LARGEST_SEAT = SYLLABLES ** 2 - 1;

/**
 * The word that a household writes on a transfer, to be said and heard over the telephone: three syllables, the last of
 * which checks the others. Seats are never reused, and neither are their words.
 * Units: none; `seat` whole, 1 to 4899. Errors: AssertionError for another seat.
 */
export function paymentReference(seat: number): string {
  assert(Number.isInteger(seat) && seat >= 1 && seat <= LARGEST_SEAT, `a seat from 1 to ${LARGEST_SEAT}`);
  const shuffled = (seat * SHUFFLE) % SYLLABLES ** 2;
  const [first, second] = [Math.floor(shuffled / SYLLABLES), shuffled % SYLLABLES];
  return [first, second, (3 * first + 11 * second + 5) % SYLLABLES].map(syllable).join('');
}

/**
 * Finds which of some words stands in a text, spaces, hyphens and capitals forgiven, as long as only one of them does.
 * Units: none. Errors: none.
 */
export function findReference(text: string, references: readonly string[]): string | undefined {
  const bare = text.toLowerCase().replaceAll(/[^a-z0-9]+/g, ' ');
  const closed = bare.replaceAll(' ', '');
  const whole = new Set(bare.split(' '));
  const exact = references.filter((reference) => whole.has(reference));
  const found = exact.length > 0 ? exact : references.filter((reference) => closed.includes(reference));
  return found.length === 1 ? found[0] : undefined;
}

function syllable(n: number): string {
  return `${CONSONANTS.charAt(Math.floor(n / VOWELS.length))}${VOWELS.charAt(n % VOWELS.length)}`;
}
