import { giftClosesOn } from '@sheafbook/keeping';
import { addDays, assert, daysBetween } from '@sheafbook/units';

/** Facts that a label can carry. Units: none. Errors: none. */
export const LABEL_FACTS = [
  'product',
  'ingredients',
  'net-mass',
  'pack-date',
  'packer',
  'allergens',
] as const;

/** One of `LABEL_FACTS`. Units: none. Errors: none. */
export type LabelFact = (typeof LABEL_FACTS)[number];

/** How something was sealed. Units: none. Errors: none. */
export type SealedBy = 'maker' | 'home' | 'licensed-kitchen' | 'unsealed';

/**
 * What one pantry takes, as it was told. What the card does not say is not accepted: a null is a no.
 * Units: whole days, whole grams. Shape: `foodCodesWanted`, `containerKindCodes` and `pastBestClasses` null where any is.
 * Errors: none by itself.
 */
export type RuleCard = {
  readonly acceptsMakerSealed: boolean | null;
  readonly acceptsHomePacked: boolean | null;
  readonly acceptsLicensedKitchen: boolean | null;
  /** Home-packed dry food without oxygen: not unless the card says so (job map 11.2). */
  readonly acceptsReducedOxygen: boolean | null;
  /** How long past its eat-first it may be; null is not at all. */
  readonly mostDaysPastBest: number | null;
  readonly pastBestClasses: readonly string[] | null;
  readonly leastLifeDays: number;
  readonly containerKindCodes: readonly string[] | null;
  readonly labelFacts: readonly LabelFact[];
  readonly foodCodesWanted: readonly string[] | null;
  readonly foodCodesNotWanted: readonly string[];
  readonly allergensNotTaken: readonly string[];
  readonly mostGramsPerVisit: number | null;
};

/**
 * Something that might be given.
 * Units: whole grams. Shape: `eatFirstOn` an ISO day. Errors: none by itself.
 */
export type Giveable = {
  readonly code: string;
  readonly foodCode: string;
  readonly keepingClass: string | null;
  readonly kindCode: string;
  readonly grams: number;
  readonly sealedBy: SealedBy;
  /** Packed with an absorber, under vacuum or under another gas than air; null where nobody said how it was packed. */
  readonly isReducedOxygen: boolean | null;
  readonly eatFirstOn: string;
  readonly allergens: readonly string[];
  readonly labelFacts: readonly LabelFact[];
  readonly isOnHold: boolean;
  readonly isTreatedSeed: boolean;
  readonly isOpened: boolean;
};

/** Which rule of a card forbids something. Units: none. Errors: none. */
export type CardRefusal =
  | 'on-hold'
  | 'treated-seed'
  | 'opened'
  | 'maker-sealed-not-taken'
  | 'home-packed-not-taken'
  | 'licensed-kitchen-not-taken'
  | 'reduced-oxygen-not-taken'
  | 'oxygen-unknown'
  | 'not-sealed'
  | 'container-kind'
  | 'label-lacks'
  | 'food-not-wanted'
  | 'allergen'
  | 'too-little-life'
  | 'past-its-date'
  | 'heavier-than-a-visit';

/**
 * Every rule of a card that forbids giving something on a day; an empty list is a yes.
 * Units: an ISO day. Errors: AssertionError when a day is none.
 */
export function listCardRefusals(card: RuleCard, gift: Giveable, givenOn: string): CardRefusal[] {
  return [...listLastingRefusals(card, gift), ...listLifeRefusals(card, gift, givenOn)];
}

/** What of a gift no day changes. Units: as `Giveable`. Errors: none. */
export type LastingGift = Omit<Giveable, 'code' | 'keepingClass' | 'eatFirstOn'>;

/**
 * The rules of a card that forbid giving something on any day, whatever life it has left; an empty list is a yes on some day.
 * Units: none. Errors: none.
 */
export function listLastingRefusals(card: RuleCard, gift: LastingGift): CardRefusal[] {
  return [...listSafetyRefusals(gift), ...listSealRefusals(card, gift), ...listFoodRefusals(card, gift)];
}

/**
 * The last day on which a card takes something and its door is open: before its date with the life that the card wants, or so
 * many days past it where the card takes its kind of food past its date.
 * Units: ISO days; weekdays 0 (Sunday) to 6. Shape: null when the door is never open. Errors: AssertionError when a day is none.
 */
export function lastGiftDay(
  card: RuleCard,
  { eatFirstOn, keepingClass }: Pick<Giveable, 'eatFirstOn' | 'keepingClass'>,
  openWeekdays: readonly number[],
): string | null {
  const late = daysPastTaken(card, keepingClass);
  const terms = { leastLifeDays: late === null ? card.leastLifeDays : 0, transportDays: 0, openWeekdays };
  return giftClosesOn(late === null ? eatFirstOn : addDays(eatFirstOn, late), terms);
}

/** How many days past its date a card takes a kind of food; null where none. What may be past its date needs no life left. */
function daysPastTaken(
  { mostDaysPastBest, pastBestClasses }: RuleCard,
  keepingClass: string | null,
): number | null {
  const isOfClass = pastBestClasses === null || pastBestClasses.includes(keepingClass ?? '');
  return isOfClass ? mostDaysPastBest : null;
}

function listSafetyRefusals({ isOnHold, isTreatedSeed, isOpened }: LastingGift): CardRefusal[] {
  const refusals: CardRefusal[] = [];
  if (isOnHold) refusals.push('on-hold');
  if (isTreatedSeed) refusals.push('treated-seed');
  if (isOpened) refusals.push('opened');
  return refusals;
}

function listSealRefusals(card: RuleCard, { sealedBy, isReducedOxygen }: LastingGift): CardRefusal[] {
  if (sealedBy === 'unsealed') return ['not-sealed'];
  if (sealedBy === 'maker') return card.acceptsMakerSealed ? [] : ['maker-sealed-not-taken'];
  if (sealedBy === 'home')
    return [
      ...(card.acceptsHomePacked ? [] : (['home-packed-not-taken'] as const)),
      ...(card.acceptsReducedOxygen ? [] : listOxygenRefusals(isReducedOxygen)),
    ];
  return card.acceptsLicensedKitchen ? [] : ['licensed-kitchen-not-taken'];
}

/** What nobody knows of it counts as what a card forbids, and is told apart from it. */
function listOxygenRefusals(isReducedOxygen: boolean | null): CardRefusal[] {
  if (isReducedOxygen === null) return ['oxygen-unknown'];
  return isReducedOxygen ? ['reduced-oxygen-not-taken'] : [];
}

function listFoodRefusals(card: RuleCard, gift: LastingGift): CardRefusal[] {
  const refusals: CardRefusal[] = [];
  const { containerKindCodes, foodCodesWanted } = card;
  if (containerKindCodes !== null && !containerKindCodes.includes(gift.kindCode))
    refusals.push('container-kind');
  if (card.labelFacts.some((fact) => !gift.labelFacts.includes(fact))) refusals.push('label-lacks');
  const isWanted = foodCodesWanted === null || foodCodesWanted.includes(gift.foodCode);
  if (!isWanted || card.foodCodesNotWanted.includes(gift.foodCode)) refusals.push('food-not-wanted');
  if (gift.allergens.some((allergen) => card.allergensNotTaken.includes(allergen))) refusals.push('allergen');
  if (card.mostGramsPerVisit !== null && gift.grams > card.mostGramsPerVisit)
    refusals.push('heavier-than-a-visit');
  return refusals;
}

function listLifeRefusals(card: RuleCard, gift: Giveable, givenOn: string): CardRefusal[] {
  const daysLeft = daysBetween(givenOn, gift.eatFirstOn);
  const late = daysPastTaken(card, gift.keepingClass);
  if (late !== null) return daysLeft < -late ? ['past-its-date'] : [];
  if (daysLeft < 0) return ['past-its-date'];
  return daysLeft < card.leastLifeDays ? ['too-little-life'] : [];
}

/**
 * Whether a card accepts anything at all. One that does not is refused when it is written down.
 * Units: none. Errors: AssertionError when the least life is below zero.
 */
export function acceptsAnything(card: RuleCard): boolean {
  assert(card.leastLifeDays >= 0, 'a least life is not below zero');
  const isSealTaken = card.acceptsMakerSealed || card.acceptsHomePacked || card.acceptsLicensedKitchen;
  const wanted = card.foodCodesWanted?.filter((code) => !card.foodCodesNotWanted.includes(code));
  const isFoodTaken = wanted === undefined || wanted.length > 0;
  return (
    Boolean(isSealTaken) &&
    isFoodTaken &&
    card.containerKindCodes?.length !== 0 &&
    card.mostGramsPerVisit !== 0
  );
}
