import { isUnconfirmed } from './card.ts';
import type { Card, PantryWithCard } from './queries.ts';

type OnDay = { readonly todayOn: string };

export function presentPantry({ pantry, current, todayOn }: PantryWithCard & OnDay) {
  return {
    id: pantry.pantryId,
    name: pantry.name,
    address: pantry.address,
    timeZone: pantry.timeZone,
    contactDuty: pantry.contactDuty,
    contact: pantry.contact,
    distanceMetres: pantry.distanceMetres,
    isRetired: pantry.isRetired,
    version: pantry.version,
    card: presentCard(current),
    /** Nobody there has said so for half a year: ask again before going. */
    isUnconfirmed: isUnconfirmed(current.card, todayOn),
  };
}

export const presentPantries = ({ rows, todayOn }: { rows: readonly PantryWithCard[] } & OnDay) => ({
  pantries: rows.map((row) => presentPantry({ ...row, todayOn })),
});

export const presentPantryWithCards = ({
  cards,
  ...row
}: PantryWithCard & OnDay & { cards: readonly Card[] }) => ({
  ...presentPantry(row),
  cards: cards.map(presentCard),
});

export const presentCard = ({ card, openings, writtenBy }: Card) => ({
  version: card.cardVersion,
  acceptsMakerSealed: card.acceptsMakerSealed,
  acceptsHomePacked: card.acceptsHomePacked,
  acceptsLicensedKitchen: card.acceptsLicensedKitchen,
  acceptsReducedOxygen: card.acceptsReducedOxygen,
  mostDaysPastBest: card.mostDaysPastBest,
  pastBestClasses: card.pastBestClasses,
  leastLifeDays: card.leastLifeDays,
  containerKindCodes: card.containerKindCodes,
  labelFacts: card.labelFacts,
  foodCodesWanted: card.foodCodesWanted,
  foodCodesNotWanted: card.foodCodesNotWanted,
  allergensNotTaken: card.allergensNotTaken,
  wantsAllergensApart: card.wantsAllergensApart,
  takesCold: card.takesCold,
  givesReceipt: card.givesReceipt,
  mostGramsPerVisit: card.mostGramsPerVisit,
  mostGramsPerWeek: card.mostGramsPerWeek,
  openings: openings.map(({ weekday, opensAt, closesAt }) => ({ weekday, opensAt, closesAt })),
  note: card.note,
  confirmedOn: card.confirmedOn,
  confirmedBy: card.confirmedBy,
  writtenBy,
  writtenAt: card.writtenAt.toISOString(),
});
