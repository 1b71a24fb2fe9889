import { parseMass } from '@sheafbook/units';
import { wholeTyped } from '../equipment/typed.ts';
import type { CardFacts, Pantry } from './queries.ts';

export const ASKED = [
  'acceptsMakerSealed',
  'acceptsHomePacked',
  'acceptsReducedOxygen',
  'acceptsLicensedKitchen',
  'wantsAllergensApart',
  'takesCold',
  'givesReceipt',
] as const;
export type Asked = (typeof ASKED)[number];

/** A card as it is typed: answers are '', 'yes' or 'no', and each weekday has its hours or none. */
export type CardDraft = {
  readonly answers: Readonly<Record<Asked, string>>;
  readonly leastLife: string;
  readonly pastBest: string;
  readonly isAnyPast: boolean;
  readonly pastClasses: readonly string[];
  readonly perVisit: string;
  readonly perWeek: string;
  readonly isAnyKind: boolean;
  readonly kinds: readonly string[];
  readonly isAnyFood: boolean;
  readonly foods: readonly string[];
  readonly foodsNot: readonly string[];
  readonly allergensNot: readonly string[];
  readonly labelFacts: readonly string[];
  readonly hours: readonly { readonly opensAt: string; readonly closesAt: string }[];
  readonly note: string;
  readonly confirmedOn: string;
  readonly confirmedBy: string;
};

const said = (value: boolean | null | undefined) => (value ? 'yes' : value === false ? 'no' : '');
const read = (value: string) => (value === '' ? null : value === 'yes');
const NONE = { opensAt: '', closesAt: '' };

export function draftOf(
  card: Pantry['card'] | null,
  today: string,
  massOf: (grams: number) => string,
): CardDraft {
  const massTyped = (grams: number | null | undefined) => (grams ? massOf(grams) : '');
  return {
    answers: Object.fromEntries(ASKED.map((key) => [key, said(card?.[key])])) as Record<Asked, string>,
    leastLife: String(card?.leastLifeDays ?? 90),
    pastBest: String(card?.mostDaysPastBest ?? ''),
    isAnyPast: (card?.pastBestClasses ?? null) === null,
    pastClasses: card?.pastBestClasses ?? [],
    perVisit: massTyped(card?.mostGramsPerVisit),
    perWeek: massTyped(card?.mostGramsPerWeek),
    isAnyKind: (card?.containerKindCodes ?? null) === null,
    kinds: card?.containerKindCodes ?? [],
    isAnyFood: (card?.foodCodesWanted ?? null) === null,
    foods: card?.foodCodesWanted ?? [],
    foodsNot: card?.foodCodesNotWanted ?? [],
    allergensNot: card?.allergensNotTaken ?? [],
    labelFacts: card?.labelFacts ?? ['product', 'net-mass', 'pack-date', 'allergens'],
    hours: [0, 1, 2, 3, 4, 5, 6].map(
      (weekday) => card?.openings.find((opening) => opening.weekday === weekday) ?? NONE,
    ),
    note: card?.note ?? '',
    confirmedOn: today,
    confirmedBy: card?.confirmedBy ?? '',
  };
}

/** The card that was typed, or `undefined` while a figure in it is none. */
export function cardOf(
  draft: CardDraft,
  { massUnit, massOf }: { massUnit: 'lb' | 'kg'; massOf: (grams: number) => string },
  before: Pantry['card'] | null,
): CardFacts | undefined {
  const [leastLifeDays, mostDaysPastBest] = [wholeTyped(draft.leastLife), wholeTyped(draft.pastBest)];
  // Shown rounded; what nobody typed over stays to the gram.
  const most = (text: string, was: number | null | undefined) =>
    was && text === massOf(was) ? was : massTyped(text, massUnit);
  const visit = most(draft.perVisit, before?.mostGramsPerVisit);
  const week = most(draft.perWeek, before?.mostGramsPerWeek);
  if (typeof leastLifeDays !== 'number' || mostDaysPastBest === undefined) return undefined;
  if (visit === undefined || week === undefined) return undefined;
  const answers = Object.fromEntries(ASKED.map((key) => [key, read(draft.answers[key])])) as Record<
    Asked,
    boolean | null
  >;
  return {
    ...answers,
    ...{ leastLifeDays, mostDaysPastBest, pastBestClasses: draft.isAnyPast ? null : [...draft.pastClasses] },
    ...{ mostGramsPerVisit: visit, mostGramsPerWeek: week, note: draft.note },
    containerKindCodes: draft.isAnyKind ? null : [...draft.kinds],
    foodCodesWanted: draft.isAnyFood ? null : [...draft.foods],
    foodCodesNotWanted: [...draft.foodsNot],
    allergensNotTaken: [...draft.allergensNot] as CardFacts['allergensNotTaken'],
    labelFacts: [...draft.labelFacts] as CardFacts['labelFacts'],
    openings: draft.hours.flatMap(({ opensAt, closesAt }, weekday) =>
      opensAt === '' && closesAt === ''
        ? []
        : [{ weekday, opensAt, closesAt }, ...furtherOf(before, weekday)],
    ),
    ...{ confirmedOn: draft.confirmedOn, confirmedBy: draft.confirmedBy },
  } as CardFacts;
}

/** A door that opens twice a day has its first hours in the form; the others go along while it opens at all. */
const furtherOf = (card: Pantry['card'] | null, weekday: number) =>
  (card?.openings ?? []).filter((opening) => opening.weekday === weekday).slice(1);

/** Nothing typed is no most, and `undefined` is no mass. */
export function massTyped(text: string, defaultUnit: 'lb' | 'kg'): number | null | undefined {
  if (text.trim() === '') return null;
  const mass = parseMass(text, { defaultUnit });
  return 'grams' in mass && mass.grams > 0 ? mass.grams : undefined;
}
