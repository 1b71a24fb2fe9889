import {
  type CardRefusal,
  type GiftLot,
  inspectionLetsGive,
  lastGiftDay,
  listCardRefusals,
  type Matching,
  matchGifts,
  nearestDoorFirst,
  type RuleCard,
  type Visit,
} from '@sheafbook/giving';
import type { Solver } from '@sheafbook/solve';
import { type Candidate, giveableOf } from './candidates.ts';

/** What forbids giving something on a trip: a rule of the card, or what was seen of the container. */
export type GiftRefusal = CardRefusal | 'mouldy' | 'found-unfit' | 'life-unknown' | 'already-out' | 'offered';

/** A trip with the card that it meets and the room that is left at that door. */
export type Trip = {
  readonly pantryId: string;
  readonly pantry: string;
  readonly cardVersion: number;
  readonly card: RuleCard;
  readonly openWeekdays: readonly number[];
  readonly onDay: string;
  readonly roomGrams: number;
  readonly distanceMetres: number;
};

/** Containers that are alike: one lot, kind, mass, date, and the same answer of each card. */
export type MatchedLot = {
  readonly containers: readonly { readonly id: string; readonly code: string }[];
  readonly containerGrams: number;
  readonly foodEn: string;
  readonly foodEs: string;
  readonly kindEn: string;
  readonly kindEs: string;
  readonly eatFirstOn: string | null;
  /** For each trip every rule that forbids it; an empty list is a yes. */
  readonly refusals: readonly (readonly GiftRefusal[])[];
  /** For each trip the last day on which its pantry takes it. */
  readonly closesOn: readonly (string | null)[];
};

/** A matching is run again from this and gives the same, to the byte. */
export type MatchingInputs = {
  readonly todayOn: string;
  readonly trips: readonly Trip[];
  readonly lots: readonly MatchedLot[];
};
export type MatchingAnswer = { readonly best: Matching; readonly nearest: Matching };

export function refusalsOf(
  candidate: Candidate,
  { card, onDay }: Pick<Trip, 'card' | 'onDay'>,
): GiftRefusal[] {
  const { isMouldy, look, outOn, isOffered } = candidate;
  const gift = giveableOf(candidate);
  return [
    ...(outOn === null ? [] : (['already-out'] as const)),
    ...(isOffered ? (['offered'] as const) : []),
    ...(isMouldy ? (['mouldy'] as const) : []),
    ...(inspectionLetsGive(look?.outcome ?? null) ? [] : (['found-unfit'] as const)),
    ...(gift === null ? (['life-unknown'] as const) : listCardRefusals(card, gift, onDay)),
  ];
}

/** Groups what is alike, in the order of the queue, so that the solver has few things to weigh. */
export function lotsOf(candidates: readonly Candidate[], trips: readonly Trip[]): MatchedLot[] {
  const groups = new Map<string, MatchedLot>();
  for (const candidate of candidates) {
    const { container, kind, food, grams, keeping } = candidate.kept;
    const eatFirstOn = keeping?.dates.eatFirstOn ?? null;
    const refusals = trips.map((trip) => refusalsOf(candidate, trip));
    const key = JSON.stringify([container.lotId, kind.containerKindId, grams, eatFirstOn, refusals]);
    const one = { id: container.containerId, code: container.containerCode };
    const group = groups.get(key);
    groups.set(key, {
      containers: [...(group?.containers ?? []), one],
      ...{ containerGrams: grams, eatFirstOn, refusals },
      ...{ foodEn: food.nameEn, foodEs: food.nameEs, kindEn: kind.nameEn, kindEs: kind.nameEs },
      closesOn: trips.map(({ card, openWeekdays }) =>
        eatFirstOn === null
          ? null
          : lastGiftDay(card, { eatFirstOn, keepingClass: food.keepingClass }, openWeekdays),
      ),
    });
  }
  return [...groups.values()];
}

export function answerOf(solver: Solver, { trips, lots }: MatchingInputs): MatchingAnswer {
  const visits: Visit[] = trips.map(({ roomGrams, distanceMetres }, at) => ({
    ...{ visitId: String(at), capacityGrams: roomGrams, distance: distanceMetres },
  }));
  const giftLots: GiftLot[] = lots.map(({ containers, containerGrams, refusals }, at) => ({
    ...{ lotId: String(at), containers: containers.length, containerGrams },
    visits: refusals.flatMap((list, trip) => (list.length === 0 ? [trip] : [])),
  }));
  return {
    best: matchGifts(solver, giftLots, visits),
    nearest: nearestDoorFirst(giftLots, visits),
  };
}

/** The very containers of each trip: of a lot that goes to several, the first codes to the first trip. */
export function loadsOf({ trips, lots }: MatchingInputs, { best }: Pick<MatchingAnswer, 'best'>) {
  const used = new Map<string, number>();
  const loads = trips.map((): { lot: MatchedLot; at: number; containers: MatchedLot['containers'] }[] => []);
  for (const piece of best.pieces) {
    const lot = lots[Number(piece.lotId)];
    const from = used.get(piece.lotId) ?? 0;
    used.set(piece.lotId, from + piece.containers);
    if (!lot) continue;
    const containers = lot.containers.slice(from, from + piece.containers);
    loads[Number(piece.visitId)]?.push({ lot, at: Number(piece.lotId), containers });
  }
  return loads;
}
