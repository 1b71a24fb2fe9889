import { isUnconfirmed, ruleCardOf } from './card.ts';
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

const presentCard = ({ card, openings, writtenBy }: Card) => ({
  version: card.cardVersion,
  ...ruleCardOf(card),
  wantsAllergensApart: card.wantsAllergensApart,
  takesCold: card.takesCold,
  givesReceipt: card.givesReceipt,
  mostGramsPerWeek: card.mostGramsPerWeek,
  openings: openings.map(({ weekday, opensAt, closesAt }) => ({ weekday, opensAt, closesAt })),
  note: card.note,
  confirmedOn: card.confirmedOn,
  confirmedBy: card.confirmedBy,
  writtenBy,
  writtenAt: card.writtenAt.toISOString(),
});
