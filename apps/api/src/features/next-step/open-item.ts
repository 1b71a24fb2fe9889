import type { BuyRow } from '@sheafbook/db/tables';
import { compareText } from '@sheafbook/units';
import type { Due } from './steps.ts';

/** In the order in which two items stand that are due together with the same money at stake. */
const KINDS = [
  'unreached',
  'pick-up',
  'packing-time',
  'packing-help',
  'loan-due',
  'equipment-late',
  'equipment-offered',
  'equipment-asked',
  'late-return',
  'relay-asked',
  'service-due',
  'unfit-equipment',
  'offer-open',
  'hand-over',
  'claim-window',
  'hold-open',
  'own-doubts',
  'seam-check',
  'lid-check',
  'lid-loose',
  'suspects-open',
  'quote-lapses',
  'bill-due',
  'deposit-due',
  'pledge-closing',
  'move-buy',
  'food-waiting',
  'duty-ends',
  'dates-near',
  'looks-due',
  'balance-due',
] as const;

/** Something that needs the actor: what and by when, how much money hangs on it, and where to see to it. */
export type OpenItem = Due & {
  readonly kind: (typeof KINDS)[number];
  readonly words: string;
  /** The same in Spanish, where the words name something that has a name in each language. */
  readonly wordsEs?: string;
  readonly buy: BuyRow | null;
  /** What it is about, where that is no buy. */
  readonly about?: string;
  /** The same by its Spanish name, where it has one. */
  readonly aboutEs?: string;
  /** Which of several things at one address; a part that changes is told anew. */
  readonly part?: string;
  /** What its letter says besides, such as the number of a line. */
  readonly detail?: string;
  /** Since when it waits, where it has no day by which. */
  readonly sinceOn?: string;
  /** Whose private matter the words tell. */
  readonly householdIds?: readonly string[];
  /** When a window that begins at `dueAt` ends: until then nothing is late. */
  readonly endsAt?: Date | null;
  readonly minorUnits: number | null;
  readonly path: string;
  /** Of common stock, which a duty keeps, and of no household’s own. */
  readonly isOfStore?: boolean;
  /** What letters say of its parts, each once, where the item itself is one sentence about many. */
  readonly parts?: readonly ItemPart[];
};

/** A part of an item with a rule of telling of its own, by its name in both languages. */
export type ItemPart = {
  readonly kind: 'offer-near' | 'gift-closes-near' | 'eat-first-near';
  readonly thing: string;
  readonly about: { readonly en: string; readonly es: string };
  readonly says: 'own' | 'common';
};

/**
 * By deadline, then by the money at stake (job map 3.1, question 1); what has no deadline comes last. Whoever nobody could warn
 * yet of food that may hurt them stands before all else.
 */
export function byUrgency(a: OpenItem, b: OpenItem): number {
  return (
    Number(b.kind === 'unreached') - Number(a.kind === 'unreached') ||
    compareText(a.dueOn ?? 'never', b.dueOn ?? 'never') ||
    compareText(a.dueAt?.toISOString() ?? 'never', b.dueAt?.toISOString() ?? 'never') || // a day lasts to its end
    (b.minorUnits ?? 0) - (a.minorUnits ?? 0) ||
    KINDS.indexOf(a.kind) - KINDS.indexOf(b.kind) ||
    compareText(a.path + a.words, b.path + b.words)
  );
}
