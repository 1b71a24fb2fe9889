import { compareText } from '@sheafbook/units';
import { findReference, paymentReference } from './payment-reference.ts';

/** A household or a supplier as a bank's words may name it. Units: none. Errors: none. */
export type KnownParty = {
  readonly id: string;
  readonly kind: 'household' | 'supplier';
  readonly name: string;
  /** A household's seat; null for a supplier. */
  readonly seat: number | null;
  /** The names of its people. */
  readonly people: readonly string[];
};

/** Words of a line that was matched before, and whose it was. Units: none. Errors: none. */
export type EarlierLine = { readonly words: string; readonly partyId: string };

/** What a line looks like, and by what it was recognised. Units: none. Errors: none. */
export type LineGuess =
  | {
      readonly what: 'payment' | 'refund' | 'supplier-payment';
      readonly partyId: string;
      readonly by: 'reference' | 'name' | 'earlier';
    }
  | { readonly what: 'bank-charge'; readonly partyId: null; readonly by: 'words' };

const CHARGE =
  /\b(fees?|service charge|monthly charge|account charge|bank charges?|commission|comisi[oó]n|cuota|maintenance)\b/i;

/**
 * Says what a line of the bank looks like. In this order: a household's reference word, a bank's charge by its words, a
 * line like it that was matched before, a name. What two parties would fit is not guessed.
 * Units: minor units; above zero came in. Errors: AssertionError for a seat beyond the references.
 */
export function recogniseLine(
  line: { readonly minorUnits: number; readonly words: string },
  known: { readonly parties: readonly KnownParty[]; readonly earlier: readonly EarlierLine[] },
): LineGuess | undefined {
  const cameIn = line.minorUnits > 0;
  const guess = (
    party: KnownParty | undefined,
    by: 'reference' | 'name' | 'earlier',
  ): LineGuess | undefined => {
    if (!party || (party.kind === 'supplier' && cameIn)) return undefined;
    const what = party.kind === 'supplier' ? 'supplier-payment' : cameIn ? 'payment' : 'refund';
    return { what, partyId: party.id, by };
  };
  const byReference = guess(findByReference(line.words, known.parties), 'reference');
  if (byReference) return byReference;
  if (!cameIn && CHARGE.test(line.words)) return { what: 'bank-charge', partyId: null, by: 'words' };
  return (
    guess(findEarlier(line.words, known), 'earlier') ?? guess(findByName(line.words, known.parties), 'name')
  );
}

/**
 * The part of a bank's words that stays from month to month: letters alone, since dates and running numbers change.
 * Units: none. Errors: none.
 */
export function lastingWords(words: string): string {
  return [
    ...new Set(
      plain(words)
        .split(' ')
        .filter((word) => /^\p{L}{2,}$/u.test(word)),
    ),
  ]
    .toSorted(compareText)
    .join(' ');
}

function findByReference(words: string, parties: readonly KnownParty[]): KnownParty | undefined {
  const byWord = new Map(
    parties.flatMap((party) => (party.seat === null ? [] : [[paymentReference(party.seat), party] as const])),
  );
  const word = findReference(words, [...byWord.keys()]);
  return word === undefined ? undefined : byWord.get(word);
}

function findEarlier(
  words: string,
  { parties, earlier }: { parties: readonly KnownParty[]; earlier: readonly EarlierLine[] },
): KnownParty | undefined {
  const lasting = lastingWords(words);
  if (lasting === '') return undefined;
  const ids = new Set(
    earlier.filter((line) => lastingWords(line.words) === lasting).map(({ partyId }) => partyId),
  );
  const fitting = parties.filter(({ id }) => ids.has(id));
  return ids.size === 1 && fitting.length === 1 ? fitting[0] : undefined;
}

/** A whole name stands in the words; a longer one that holds a shorter one counts for more. */
function findByName(words: string, parties: readonly KnownParty[]): KnownParty | undefined {
  const text = ` ${plain(words)} `;
  const hits = parties.flatMap((party) =>
    [party.name, ...party.people].flatMap((name) => {
      const bare = plain(name);
      return bare.length >= 3 && text.includes(` ${bare} `) ? [{ party, length: bare.length }] : [];
    }),
  );
  const longest = Math.max(0, ...hits.map(({ length }) => length));
  const best = new Set(hits.filter(({ length }) => length === longest).map(({ party }) => party));
  return best.size === 1 ? [...best][0] : undefined;
}

/** Without accents, capitals and marks, as banks print names. */
function plain(text: string): string {
  return text
    .normalize('NFD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}
