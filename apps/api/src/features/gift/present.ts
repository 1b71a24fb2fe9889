import { GIFT_FACTORS, loadingOrder } from '@sheafbook/giving';
import { sumOf } from '@sheafbook/units';
import type { Candidate } from './candidates.ts';
import { loadsOf, type MatchedLot, type MatchingAnswer, type MatchingInputs } from './match.ts';
import type { GiftOfYear, LineWithMet, ListedLine, ListedManifest } from './queries.ts';

export const presentQueue = (rows: readonly Candidate[]) => ({ containers: rows.map(presentCandidate) });

export function presentCandidate({
  kept,
  facts,
  closesOn,
  outOn,
  isDue,
  cameBack,
  steps,
  afterLook,
}: Candidate) {
  const { container, food, kind, grams, isHeld, keeping, place } = kept;
  return {
    id: container.containerId,
    code: container.containerCode,
    foodEn: food.nameEn,
    foodEs: food.nameEs,
    kindEn: kind.nameEn,
    kindEs: kind.nameEs,
    packedOn: container.packedOn,
    place: place?.name ?? null,
    grams,
    isHeld,
    isOpened: container.openedOn !== null,
    eatFirstOn: keeping?.dates.eatFirstOn ?? null,
    giftClosesOn: closesOn,
    offerOn: keeping?.dates.offerOn ?? null,
    isDue,
    outOn,
    cameBack,
    facts,
    steps,
    afterLook,
  };
}

export const presentStep = (step: {
  readonly entry: { readonly entryId: string };
  readonly containerCode: string;
  readonly grams: number;
  readonly to: string;
}) => ({ entryId: step.entry.entryId, code: step.containerCode, grams: step.grams, to: step.to });

type Matched = { readonly id: string; readonly inputs: MatchingInputs; readonly answer: MatchingAnswer };

export function presentMatching({ id, inputs, answer }: Matched) {
  const loads = loadsOf(inputs, answer);
  const { best, nearest } = answer;
  return {
    id,
    matchedOn: inputs.todayOn,
    trips: inputs.trips.map((trip, at) => ({
      pantryId: trip.pantryId,
      pantry: trip.pantry,
      cardVersion: trip.cardVersion,
      onDay: trip.onDay,
      roomGrams: trip.roomGrams,
      distanceMetres: trip.distanceMetres,
      grams: sumOf((loads[at] ?? []).map(({ lot, containers }) => lot.containerGrams * containers.length)),
      loads: (loads[at] ?? []).map(({ lot, at: lotAt, containers }) => ({
        lot: lotAt,
        ...presentLot(lot),
        containers,
        giftClosesOn: lot.closesOn[at] ?? null,
      })),
    })),
    lots: inputs.lots.map((lot, at) => ({
      ...presentLot(lot),
      containers: lot.containers,
      left: best.leftContainers.find(({ lotId }) => lotId === String(at))?.containers ?? 0,
      refusals: lot.refusals,
    })),
    givenGrams: best.givenGrams,
    distanceMetres: best.distance,
    pieces: best.pieces.length,
    nearest: { givenGrams: nearest.givenGrams, distanceMetres: nearest.distance },
    loading: presentLoading(inputs, loads),
  };
}

const presentLot = (lot: MatchedLot) => ({
  foodEn: lot.foodEn,
  foodEs: lot.foodEs,
  kindEn: lot.kindEn,
  kindEs: lot.kindEs,
  containerGrams: lot.containerGrams,
  eatFirstOn: lot.eatFirstOn,
});

/** Day by day what goes into the van, first in first. */
function presentLoading({ trips }: MatchingInputs, loads: ReturnType<typeof loadsOf>) {
  const days = [...new Set(trips.map(({ onDay }) => onDay))].toSorted();
  return days.map((onDay) => ({
    onDay,
    loads: loadingOrder(
      trips.flatMap((trip, at) => {
        if (trip.onDay !== onDay) return [];
        const stop = (loads[at] ?? []).map(({ lot, at: lotAt, containers }) => ({
          ...{ lot: lotAt, ...presentLot(lot), pantry: trip.pantry, containers },
          code: containers[0]?.code ?? '',
          giftClosesOn: lot.closesOn[at] ?? onDay,
        }));
        return [{ distance: trip.distanceMetres, loads: stop }];
      }),
    ),
  }));
}

type Manifest = ListedManifest & { readonly lines: readonly LineWithMet[] };

export const presentManifests = (rows: readonly Manifest[]) => ({ manifests: rows.map(presentManifest) });

/** No household stands on it, and what cost what neither. */
export function presentManifest({ manifest, pantry, signedOutBy, lines }: Manifest) {
  const gramsOf = (isWanted: (row: ListedLine) => boolean) =>
    sumOf(lines.filter(isWanted).map(({ line }) => line.grams));
  return {
    id: manifest.giftManifestId,
    number: manifest.manifestNo,
    matchingId: manifest.giftMatchingId,
    stage: manifest.stage,
    version: manifest.version,
    pantryId: pantry.pantryId,
    pantry: pantry.name,
    address: pantry.address,
    cardVersion: manifest.cardVersion,
    onDay: manifest.onDay,
    driver: manifest.driver,
    signedOutBy,
    signedOutAt: manifest.signedOutAt.toISOString(),
    receivedOn: manifest.receivedOn,
    receiverDuty: manifest.receiverDuty,
    receiptNote: manifest.receiptNote,
    calledOffBecause: manifest.calledOffBecause,
    entryId: manifest.entryId,
    grams: gramsOf(() => true),
    acceptedGrams: gramsOf(({ line }) => line.isAccepted === true),
    refusedGrams: gramsOf(({ line }) => line.isAccepted === false),
    lines: lines.map(({ line, container, kind, food, lot, metOnLine }) => ({
      containerId: line.containerId,
      code: container.containerCode,
      foodEn: food.nameEn,
      foodEs: food.nameEs,
      kindEn: kind.nameEn,
      kindEs: kind.nameEs,
      packedOn: container.packedOn,
      sealedBy: line.sealedBy,
      treatment: container.treatment,
      warmth: line.warmth,
      supplierMark: lot.supplierMark,
      grams: line.grams,
      eatFirstOn: line.eatFirstOn,
      giftClosesOn: line.giftClosesOn,
      allergens: food.allergens,
      /** Beyond its own: what its line ran before it. */
      metOnLine: metOnLine.filter((allergen) => !food.allergens.includes(allergen)),
      isAccepted: line.isAccepted,
      refusedBecause: line.refusedBecause,
    })),
  };
}

type Year = {
  readonly year: number;
  readonly rows: readonly GiftOfYear[];
  readonly ownRows: readonly GiftOfYear[];
  readonly all: { grams: number; meals: number; valueMinorUnits: number | null };
  readonly own: { grams: number; meals: number; valueMinorUnits: number | null };
};

const presentGift = ({ pantry, foodEn, foodEs, grams }: GiftOfYear) => ({ pantry, foodEn, foodEs, grams });

export const presentYear = ({ year, rows, ownRows, all, own }: Year) => ({
  year,
  all,
  own,
  factors: { gramsPerMeal: GIFT_FACTORS.gramsPerMeal, minorUnitsPerPound: GIFT_FACTORS.minorUnitsPerPound },
  gifts: rows.map(presentGift),
  ownGifts: ownRows.map(presentGift),
});
