import type { Context } from '../../platform/context.ts';
import type { OffersRead, OfferView } from './read.ts';

type Part = OfferView['parts'][number];

/** Who took a container is told to giver and taker; to them alone the reading shows a claim. */
const presentPart = ({ part, container, kind, lot, claim, takerName }: Part) => ({
  id: container.containerId,
  code: container.containerCode,
  kind: { code: kind.kindCode, nameEn: kind.nameEn, nameEs: kind.nameEs },
  grams: part.grams,
  priceMinorUnits: part.priceMinorUnits,
  packedOn: container.packedOn,
  treatment: container.treatment,
  originNote: lot.originNote,
  state: part.endedHow ?? 'offered',
  takenAt: claim?.claimedAt.toISOString() ?? null,
  /** What was taken together, and has one slip. */
  takenInEntry: claim?.entryId ?? null,
  takenBy: claim === null ? null : takerName,
});

export function presentOffer({ offer, food, isMine, standing, turn, parts, mayNotEat }: OfferView) {
  const mayBeNamed = isMine || parts.some(({ claim }) => claim !== null);
  return {
    id: offer.offerId,
    isMine,
    isOfStore: offer.householdId === null,
    giver: mayBeNamed ? (parts[0]?.giverName ?? null) : null,
    food: {
      ...{ id: food.foodId, code: food.foodCode, nameEn: food.nameEn, nameEs: food.nameEs },
      allergens: food.allergens,
    },
    priceKind: offer.priceKind,
    note: offer.note,
    offeredAt: offer.offeredAt.toISOString(),
    closesAt: offer.closesAt.toISOString(),
    standing,
    /** Until when the reader may take something as it stands now. */
    untilAt: (standing === 'your-turn' && turn ? turn.untilAt : offer.closesAt).toISOString(),
    openAt: offer.openAt.toISOString(),
    hasPassed: turn !== null && turn.passedAt !== null,
    goesToPantry: offer.goesToPantry,
    mayNotEat: isMine ? [] : [...mayNotEat],
    containers: parts.map(presentPart),
  };
}

/** What one household took of an offer, without what others did. */
const presentTaken = (householdId: string | null) => (view: OfferView) =>
  presentOffer({ ...view, parts: view.parts.filter(({ claim }) => claim?.householdId === householdId) });

export function presentOffers({ toMe, mine, ofStore, taken }: OffersRead, { actor }: Context) {
  return {
    currency: actor.currency,
    toMe: toMe.map(presentOffer),
    mine: mine.map(presentOffer),
    ofStore: ofStore?.map(presentOffer) ?? null,
    taken: taken.map(presentTaken(actor.householdId)),
  };
}
