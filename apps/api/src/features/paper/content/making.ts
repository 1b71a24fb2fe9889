import { readTreatment, treatmentOf } from '@sheafbook/keeping';
import type { Context } from '../../../platform/context.ts';
import { inSpanish } from '../../../platform/spoken/spanish.ts';
import type { PaperContent } from '../content.ts';
import type { Formats } from '../formats.ts';

type PaperKind =
  | 'buy-sheet'
  | 'pledge-slip'
  | 'quote-comparison'
  | 'order'
  | 'landing-sheet'
  | 'claim-letter'
  | 'split-sheet'
  | 'statement'
  | 'who-owes'
  | 'month'
  | 'run-sheet'
  | 'seam-log'
  | 'loan-slip'
  | 'quarantine-tag'
  | 'recall-notice'
  | 'shelf-list'
  | 'eat-first-list'
  | 'gift-manifest'
  | 'offer-notice'
  | 'transfer-slip'
  | 'gift-year'
  | 'handover'
  | 'year-review'
  | 'inspection-sheet';

/** What a paper is about; its code leads back to this. */
type PaperSubject = {
  readonly kind: PaperKind;
  readonly buyId: string | null;
  readonly householdId: string | null;
  /** The order, the split, the claim, the packing day, the loan, the hold or check that a tag is about, the manifest, or the offer. */
  readonly subjectId: string | null;
  /** What else tells two such papers apart: the period, the year, the pantry. Empty where nothing does. */
  readonly detail: string;
};

/** A paper whose facts are read; a statement names its own code, so the content waits for it. */
export type MadePaper = {
  readonly subject: PaperSubject;
  readonly contentWith: (code: string) => PaperContent;
  /** Sheets with many columns lie across, some of them in the large version only. */
  readonly isLandscape?: boolean | 'when-large';
};

/** Where a paper is put together: whoever asks, and how figures and words read on it. */
export type Desk = { readonly context: Context; readonly formats: Formats };

export const subject = (kind: PaperKind, of: Partial<Omit<PaperSubject, 'kind'>>): PaperSubject => ({
  kind,
  buyId: null,
  householdId: null,
  subjectId: null,
  detail: '',
  ...of,
});

/** Whoever asks, seen as a member without a duty: a sheet that hangs on a wall is read by everyone. */
export const asAnyMember = (context: Context): Context => ({
  ...context,
  actor: { ...context.actor, duties: new Set() },
});

/** A food's name in the language of the paper. */
export const nameOf = (
  food: { readonly nameEn: string; readonly nameEs: string },
  { language }: Formats,
): string => (language === 'es' ? food.nameEs : food.nameEn);

/** The same of a row that was read with its food's two names. */
export const foodOf = (
  { foodEn, foodEs }: { readonly foodEn: string; readonly foodEs: string },
  formats: Formats,
): string => nameOf({ nameEn: foodEn, nameEs: foodEs }, formats);

/** "Contains wheat, soy.", or that nothing was declared. */
export function saysAllergens(
  { allergens }: { readonly allergens: readonly string[] },
  { words }: Formats,
): string {
  const names = allergens.map((allergen) => words.allergens[allergen] ?? allergen);
  return names.length === 0 ? words.label.noAllergens : words.label.contains(names.join(', '));
}

/** Whom to call, each with the telephone, or with a line to write it on: a name alone can't be called. */
export const callable = (
  people: readonly { readonly name: string; readonly phone: string | null }[],
  { words }: Formats,
): string => people.map(({ name, phone }) => `${name}, ${phone || words.phoneByPen}`).join('\n');

/** An allergen's name, and gluten's, which is none of them and yet asked for. */
export const allergenOf = (code: string, words: Formats['words']): string =>
  code === 'gluten' ? words.label.gluten : (words.allergens[code] ?? code);

/** What may have got into it from its line, beyond its own allergens; nothing where nothing may have. */
export function saysMet(
  { metOnLine }: { readonly metOnLine: readonly string[] },
  { words }: Formats,
): string {
  const names = metOnLine.map((code) => allergenOf(code, words));
  return names.length === 0 ? '' : words.label.packedWith(names.join(', '));
}

/** A sentence that the book may have said itself, in the language of the paper; what somebody wrote stays as it is. */
export const saidOn = (sentence: string, { language }: Formats): string =>
  language === 'es' ? inSpanish(sentence) : sentence;

/** How a container was treated, in the middle of a line. */
export function treatmentName(
  { treatment }: { readonly treatment: string | null },
  { words, language }: Formats,
): string {
  const known = readTreatment(treatment);
  return known === null ? words.label.untold : treatmentOf(known).names[language].toLowerCase();
}
