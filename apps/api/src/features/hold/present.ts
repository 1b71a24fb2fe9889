import type { HoldAnswerRow } from '@sheafbook/db/tables';
import type { Actor } from '../../platform/actor.ts';
import { nameOf } from './name.ts';
import { mayHold } from './policy.ts';
import type { SeenHold } from './queries.ts';
import type { SlipBack } from './queries-slip.ts';
import type { readOwnPart, readStanding } from './use-cases-recall.ts';

/**
 * `ended` says how a hold ended: released by two, or with what it was on, which was thrown away or went back. How much it
 * reached may be one household's, so only those who handle holds see that.
 */
export function presentHold(actor: Actor, seen: SeenHold) {
  const { hold, bag, lot, food, supplier, delivery, session, place } = seen;
  const ended = hold.releasedBy === null ? 'nothing-left' : 'released';
  const isSeen = mayHold(actor);
  return {
    id: hold.holdId,
    scope: hold.scope,
    about: nameOf(seen),
    aboutEs: nameOf(seen, 'es'),
    bagId: hold.bagId,
    bagCode: bag?.bagCode ?? null,
    bagNo: bag?.bagNo ?? null,
    buyId: bag?.buyId ?? null,
    lotId: hold.lotId,
    mark: hold.supplierMark ?? (lot?.supplierMark || null),
    food: food && { id: food.foodId, name: food.nameEn, nameEs: food.nameEs },
    supplier: supplier && { id: supplier.supplierId, name: supplier.name },
    deliveredOn: delivery?.arrivedOn ?? null,
    session: session && { id: session.packingSessionId, name: session.name },
    place: place && { id: place.placeId, name: place.name },
    line: hold.line,
    fromSerial: hold.fromSerial,
    toSerial: hold.toSerial,
    fromOn: hold.fromOn,
    toOn: hold.toOn,
    vessels: isSeen ? seen.vessels : null,
    grams: isSeen ? seen.grams : null,
    reason: hold.reason,
    sentence: hold.reason, // the same, said in the reader's language where the book itself gave it
    // Whoever found something at home is not for the others to know; a bag is held by duty alone.
    heldBy: isSeen || hold.scope === 'bag' ? hold.heldBy : null,
    heldAt: hold.heldAt.toISOString(),
    finding: hold.finding,
    releaseAskedBy: hold.releaseAskedBy,
    releasedBy: hold.releasedBy,
    endedAt: hold.releasedAt?.toISOString() ?? null,
    ended: hold.releasedAt === null ? null : ended,
  };
}

/** A row of the spreadsheet. */
export function holdRow(actor: Actor, seen: SeenHold) {
  const { food, supplier, session, place, aboutEs: _, sentence: __, ...flat } = presentHold(actor, seen);
  return {
    ...flat,
    food: food?.name ?? null,
    supplier: supplier?.name ?? null,
    session: session?.name ?? null,
    place: place?.name ?? null,
  };
}

type Said = Pick<HoldAnswerRow, 'hasSome' | 'eatenOn' | 'givenOn' | 'note'> & {
  readonly answeredAt: Date | string;
};

const presentAnswer = (said: Said | null) =>
  said && {
    ...{ hasSome: said.hasSome, eatenOn: said.eatenOn, givenOn: said.givenOn, note: said.note },
    answeredAt: new Date(said.answeredAt).toISOString(),
  };

/** The paper's own day and the time of keying stand side by side. */
export const presentSlip = (slip: SlipBack | undefined) =>
  slip === undefined
    ? null
    : {
        ...{ signedBy: slip.signedBy, writtenOn: slip.writtenOn, note: slip.note, became: slip.became },
        ...{ keyedBy: slip.keyedBy, keyedAt: new Date(slip.keyedAt).toISOString() },
      };

export const presentStanding = ({
  households,
  pantries,
  slips,
  parts,
}: Awaited<ReturnType<typeof readStanding>>) => ({
  households: households.map(({ householdId, name, vessels, grams, isTold, acknowledgedAt, answer }) => ({
    ...{ householdId, name, vessels, grams, isTold },
    acknowledgedAt: acknowledgedAt === null ? null : new Date(acknowledgedAt).toISOString(),
    answer: presentAnswer(answer),
    codes: parts.flatMap((part) => (part.householdId === householdId ? [part.code] : [])),
    slip: presentSlip(slips.find((slip) => slip.householdId === householdId)),
  })),
  pantries: pantries.map(({ pantryId, pantry, contactDuty, contact, manifestNo, onDay, codes, grams }) => ({
    ...{ pantryId, pantry, contactDuty, contact, manifestNo, onDay, codes, grams },
    slip: presentSlip(slips.find((slip) => slip.pantryId === pantryId)),
  })),
});

type OwnPart = Awaited<ReturnType<typeof readOwnPart>>;

export const presentOwnPart = ({
  isConcerned,
  held,
  answer,
  slip,
}: Pick<OwnPart, 'isConcerned' | 'held' | 'slip'> & { answer: Said | null }) => ({
  isConcerned,
  held: held.map(({ vesselId, vesselKind, code, grams }) => ({
    id: vesselId,
    kind: vesselKind,
    code,
    grams,
  })),
  answer: presentAnswer(answer),
  slip: presentSlip(slip),
});
