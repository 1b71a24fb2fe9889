import { assert } from './assert.ts';
import { asFraction } from './decimal.ts';
import {
  addFractions,
  compareFractions,
  divideFractions,
  type Fraction,
  fraction,
  multiplyFractions,
  roundFraction,
} from './fraction.ts';
import { exactGrams, GRAMS_PER_UNIT, type MassUnit } from './mass.ts';
import { readDecimal } from './number-text.ts';

/** Why a typed mass is refused. Units: none. Errors: none. */
export type MassProblem = 'empty' | 'not-a-number' | 'negative' | 'zero' | 'too-large' | 'unknown-unit';

/**
 * How a typed mass is read: the unit that a bare number means, and the trade weight of a bushel of the food if it has
 * one. Units: `bushelPoundsOf` in pounds per bushel. Errors: none by itself.
 */
export type MassReading = { readonly defaultUnit: MassUnit; readonly bushelPoundsOf?: number };

/**
 * A typed mass that was understood: what the books keep and what the person meant.
 * Units: `grams` whole; `count` exact, in `unit` (bushels in pounds, two parts in the first part's unit). Errors: none.
 */
export type TypedMass = { readonly grams: number; readonly count: Fraction; readonly unit: MassUnit };

/** A thousand tonnes: past any storehouse, so a larger figure is a slip of the hand. Units: grams. Errors: none. */
export const LARGEST_TYPED_GRAMS = 1_000_000_000;

// Nobody types a mass this long, and a bound keeps hostile text cheap.
const LONGEST_TEXT = 100;

type Counted = { readonly count: Fraction; readonly unit: MassUnit };
type Part = { readonly amount: Fraction; readonly word: string };

// A mixed number comes before a plain one, or "1 1/2" would read as 1 of something called nothing.
const PART = /\s*(\d+[\s-]+\d+\/\d+|\d+\/\d+|[.,]?\d[\d.,\u00a0\u202f]*)\s*([^\d.,]*)[.,]?/g;

const UNIT_WORDS: Readonly<Record<MassUnit | 'bu', string>> = {
  g: 'g gr gm gram grams gramme grammes gramo gramos',
  kg: 'kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes kilogramo kilogramos',
  oz: 'oz ozs ounce ounces onza onzas',
  lb: 'lb lbs # pound pounds libra libras', // "50#" is how mills write pounds (common practice, no source)
  bu: 'bu bushel bushels',
};

const UNIT_OF_WORD = new Map(
  (['g', 'kg', 'oz', 'lb', 'bu'] as const).flatMap((unit) =>
    UNIT_WORDS[unit].split(' ').map((word) => [word, unit] as const),
  ),
);

const SMALLER_PARTNER: Readonly<Partial<Record<MassUnit, MassUnit>>> = { lb: 'oz', kg: 'g' };

const VULGAR_FRACTIONS: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/**
 * Reads a mass as people type it: "25 lb", "1/2 bu", "12,5 kg", "1 1/2 lb", "2 lb 3 oz", "50#", "1,000 lb"; commas
 * and points by the rule of `readDecimal`. Tonnes and tons are unknown on purpose: the word means three masses.
 * Units: grams, a half going up, rounded once for the whole text as for one physical unit.
 * Errors: none thrown for any text; a `problem` says why a text is refused. AssertionError when a bushel is ≤ 0 lb.
 */
export function parseMass(text: string, options: MassReading): TypedMass | { readonly problem: MassProblem } {
  const spelled = spellFractions(text);
  if (spelled === '') return { problem: 'empty' };
  // A hyphen after a digit joins, as in "1-1/2"; anywhere else it is a minus.
  if (/(^|[^\d\s−–-]\s*)[-−–]\s*[\d.,]/.test(spelled)) return { problem: 'negative' };
  const parts = readParts(spelled);
  if (!parts) return { problem: 'not-a-number' };
  const typed = addParts(parts, options);
  if ('problem' in typed) return typed;
  const grams = roundFraction(exactGrams(typed.count, typed.unit));
  if (grams > BigInt(LARGEST_TYPED_GRAMS)) return { problem: 'too-large' };
  return grams === 0n ? { problem: 'zero' } : { grams: Number(grams), ...typed };
}

function spellFractions(text: string): string {
  const spelled = text.replaceAll(/[¼½¾⅓⅔⅛⅜⅝⅞]/g, (mark) => ` ${VULGAR_FRACTIONS[mark] ?? mark}`);
  return spelled.replaceAll('\u2044', '/').trim();
}

function readParts(text: string): readonly Part[] | undefined {
  if (text.length > LONGEST_TEXT) return undefined;
  const parts: Part[] = [];
  for (const [, digits = '', unitWord = ''] of text.matchAll(PART)) {
    const amount = readAmount(digits);
    const word = unitWord.trim().toLowerCase();
    if (!amount || !/^[\p{L}\s#]*$/u.test(word)) return undefined;
    parts.push({ amount, word });
  }
  // What the parts left over, at the front or between them, is not part of a mass.
  const isWhole = text.replaceAll(PART, '').trim() === '';
  return isWhole && (parts.length === 1 || parts.length === 2) ? parts : undefined;
}

function readAmount(text: string): Fraction | undefined {
  const match = /^(?:(\d+)[\s-]+)?(\d+)\/(\d+)$/.exec(text);
  if (!match) return readDecimal(text.replace(/[.,\s]+$/, ''));
  const [, whole = '0', top = '0', bottom = '0'] = match;
  if (BigInt(bottom) === 0n) return undefined;
  return addFractions(fraction(BigInt(whole)), fraction(BigInt(top), BigInt(bottom)));
}

function addParts(parts: readonly Part[], options: MassReading): Counted | { readonly problem: MassProblem } {
  const [first, second] = parts.map((part) => withUnit(part, options));
  if (!first || (parts.length === 2 && !second)) return { problem: 'unknown-unit' };
  if (!second) return first;
  if (parts[1]?.word === '' || SMALLER_PARTNER[first.unit] !== second.unit) {
    return { problem: 'not-a-number' };
  }
  const ratio = divideFractions(GRAMS_PER_UNIT[second.unit], GRAMS_PER_UNIT[first.unit]);
  return { count: addFractions(first.count, multiplyFractions(second.count, ratio)), unit: first.unit };
}

function withUnit({ amount, word }: Part, { defaultUnit, bushelPoundsOf }: MassReading): Counted | undefined {
  const unit = word === '' ? defaultUnit : UNIT_OF_WORD.get(word);
  if (unit !== 'bu') return unit && { count: amount, unit };
  if (bushelPoundsOf === undefined) return undefined;
  const poundsPerBushel = asFraction(bushelPoundsOf);
  assert(compareFractions(poundsPerBushel, fraction(0)) > 0, 'a bushel weighs more than nothing');
  return { count: multiplyFractions(amount, poundsPerBushel), unit: 'lb' };
}
