import type { en } from '../../text/en/said.ts';
import type { Condition } from './queue.ts';
import type { ScaleUnit } from './scale.ts';

type Text = Pick<
  typeof en,
  | 'bagWords'
  | 'keepWords'
  | 'pointWords'
  | 'andWords'
  | 'conditionWords'
  | 'unitWords'
  | 'hundreds'
  | 'numbers'
>;

/** Words by which a spoken bag is understood, each with what it means. */
export type SaidWords = {
  readonly bags: ReadonlySet<string>;
  readonly keeps: ReadonlySet<string>;
  readonly points: ReadonlySet<string>;
  readonly ands: ReadonlySet<string>;
  /** They multiply what was said before them; every other number is added. */
  readonly hundreds: ReadonlySet<string>;
  readonly conditions: ReadonlyMap<string, Condition>;
  readonly units: ReadonlyMap<string, ScaleUnit>;
  readonly numbers: ReadonlyMap<string, number>;
};

/** The words of one language, as its text lists them: parted by spaces, and a number as `7=seven`. */
export function saidWordsOf(text: Text): SaidWords {
  const setOf = (listed: string) => new Set(listed.split(' '));
  const meanings = <Meaning extends string>(listed: Readonly<Record<Meaning, string>>) =>
    new Map(
      (Object.keys(listed) as Meaning[]).flatMap((meaning) =>
        listed[meaning].split(' ').map((word): [string, Meaning] => [word, meaning]),
      ),
    );
  const numbers = text.numbers.split(' ').flatMap((one) => {
    const [value = '', names = ''] = one.split('=');
    return names.split(',').map((name): [string, number] => [name, Number(value)]);
  });
  return {
    bags: setOf(text.bagWords),
    keeps: setOf(text.keepWords),
    points: setOf(text.pointWords),
    ands: setOf(text.andWords),
    hundreds: setOf(text.hundreds),
    conditions: meanings(text.conditionWords),
    units: meanings(text.unitWords),
    numbers: new Map(numbers),
  };
}

/** What was understood of one bag. What was not said is null; `strange` is the first word that nobody knows here. */
export type SaidBag = {
  readonly bagNo: number | null;
  readonly condition: Condition | null;
  /** As the pad writes it, with a point: "22.7". */
  readonly reading: string | null;
  readonly unit: ScaleUnit | null;
  readonly isKept: boolean;
  readonly strange: string | null;
};

/**
 * Understands what a keyboard's dictation wrote of a bag, in words or digits and in any order: "bag seven, dry, twenty-two
 * point seven, keep" as well as "Bag 7 dry 22.7 kg". The number after the word for a bag is its number, any other is what
 * the scale shows; of what is said twice the later counts, since that is how people put themselves right.
 */
export function readSaid(text: string, words: SaidWords): SaidBag {
  let said: SaidBag = {
    ...{ bagNo: null, condition: null, reading: null, unit: null },
    ...{ isKept: false, strange: null },
  };
  const tokens = tokensOf(text);
  let isBagNext = false;
  for (let at = 0; at < tokens.length; ) {
    const token = tokens[at] ?? '';
    const number = numberAt(tokens, at, words);
    if (number) {
      said = isBagNext ? { ...said, bagNo: Number(number.text) } : { ...said, reading: number.text };
      isBagNext = false;
      at = number.next;
      continue;
    }
    at += 1;
    if (words.bags.has(token)) isBagNext = true;
    else said = withWord(said, token, words);
  }
  return said;
}

function withWord(said: SaidBag, token: string, words: SaidWords): SaidBag {
  const condition = words.conditions.get(token);
  if (condition !== undefined) return { ...said, condition };
  const unit = words.units.get(token);
  if (unit !== undefined) return { ...said, unit };
  if (words.keeps.has(token)) return { ...said, isKept: true };
  if (words.ands.has(token)) return said;
  return { ...said, strange: said.strange ?? token };
}

/** Small letters; marks fall away, but for the point or comma inside a number; "22.7kg" is two words. */
const tokensOf = (text: string): string[] =>
  text
    .toLowerCase()
    .replace(/(\d)([a-z])/g, '$1 $2')
    .replace(/[.,](?!\d)/g, ' ')
    .split(/[^\p{L}\d.,]+/u)
    .filter((token) => token !== '');

type SaidNumber = { readonly text: string; readonly next: number };

/** A number in digits or words that begins here, with a fraction where one is said after it. */
function numberAt(tokens: readonly string[], at: number, words: SaidWords): SaidNumber | null {
  const digits = /^\d+(?:[.,]\d+)?$/.exec(tokens[at] ?? '');
  const whole = digits ? { text: digits[0].replace(',', '.'), next: at + 1 } : wholeAt(tokens, at, words);
  if (!whole || !words.points.has(tokens[whole.next] ?? '') || whole.text.includes('.')) return whole;
  let fraction = '';
  let next = whole.next + 1;
  for (let part = partAt(tokens, next, words); part; part = partAt(tokens, next, words)) {
    if (fraction !== '' && part.text.length > 1) break; // digits follow each other; "twenty" begins another number
    fraction += part.text;
    next = part.next;
  }
  return fraction === '' ? whole : { text: `${whole.text}.${fraction}`, next };
}

const partAt = (tokens: readonly string[], at: number, words: SaidWords): SaidNumber | null =>
  /^\d+$/.test(tokens[at] ?? '') ? { text: tokens[at] ?? '', next: at + 1 } : wholeAt(tokens, at, words);

/** Adds up the words of one whole number and stops where the next word can't belong to it: "seven twenty" are two. */
function wholeAt(tokens: readonly string[], at: number, words: SaidWords): SaidNumber | null {
  let total: number | null = null;
  let next = at;
  for (; next < tokens.length; next += 1) {
    const token = tokens[next] ?? '';
    const value = words.numbers.get(token);
    if (total !== null && words.hundreds.has(token) && total < 10) total *= 100;
    else if (value !== undefined && (total === null || mayFollow(total, value))) total = (total ?? 0) + value;
    else if (!isAndInside(tokens, next, { total, words })) break;
  }
  return total === null ? null : { text: String(total), next };
}

/** Ones come after tens, and tens or ones after hundreds. */
const mayFollow = (total: number, value: number): boolean =>
  value > 0 &&
  ((total % 100 === 0 && total > 0 && value < 100) || (total % 10 === 0 && total % 100 >= 20 && value < 10));

/** "Thirty and two", "a hundred and five": the and belongs to the number when a part of it follows. */
function isAndInside(
  tokens: readonly string[],
  at: number,
  { total, words }: { total: number | null; words: SaidWords },
): boolean {
  const value = words.numbers.get(tokens[at + 1] ?? '');
  return total !== null && words.ands.has(tokens[at] ?? '') && value !== undefined && mayFollow(total, value);
}
