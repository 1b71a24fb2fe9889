import type { PantryCardRow, PantryOpeningRow } from '@sheafbook/db/tables';
import type { LabelFact, RuleCard } from '@sheafbook/giving';
import { daysBetween } from '@sheafbook/units';

/** A card that nobody has asked after for longer may be wrong by now. Source: job map 2.16 (starter). */
const CONFIRMED_FOR_DAYS = 180;

/** The card as the matching reads it. What the database holds of label facts is one of the known ones, by the schema. */
export function ruleCardOf(card: PantryCardRow): RuleCard {
  return {
    acceptsMakerSealed: card.acceptsMakerSealed,
    acceptsHomePacked: card.acceptsHomePacked,
    acceptsLicensedKitchen: card.acceptsLicensedKitchen,
    acceptsReducedOxygen: card.acceptsReducedOxygen,
    mostDaysPastBest: card.mostDaysPastBest,
    pastBestClasses: card.pastBestClasses,
    leastLifeDays: card.leastLifeDays,
    containerKindCodes: card.containerKindCodes,
    labelFacts: card.labelFacts as LabelFact[],
    foodCodesWanted: card.foodCodesWanted,
    foodCodesNotWanted: card.foodCodesNotWanted,
    allergensNotTaken: card.allergensNotTaken,
    mostGramsPerVisit: card.mostGramsPerVisit,
  };
}

export const isUnconfirmed = ({ confirmedOn }: PantryCardRow, todayOn: string): boolean =>
  daysBetween(confirmedOn, todayOn) > CONFIRMED_FOR_DAYS;

/** The days of the week on which a door is open. */
export const weekdaysOf = (openings: readonly PantryOpeningRow[]): number[] => [
  ...new Set(openings.map(({ weekday }) => weekday)),
];
