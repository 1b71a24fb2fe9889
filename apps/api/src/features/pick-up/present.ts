import { type Holding, waitingGrams } from './holdings.ts';
import type { PickUpRead, readPickUpsOfBuy, readUncollected, UncollectedTaken } from './use-cases.ts';

export function presentPickUp({ pickUp, seat, name, pieces }: PickUpRead) {
  return {
    id: pickUp.pickUpId,
    buyId: pickUp.buyId,
    householdId: pickUp.householdId,
    seat,
    name,
    startsAt: pickUp.startsAt?.toISOString() ?? null,
    endsAt: pickUp.endsAt?.toISOString() ?? null,
    signedBy: pickUp.signedBy,
    handedOverBy: pickUp.handedOverBy,
    collectedAt: pickUp.collectedAt?.toISOString() ?? null,
    version: pickUp.version,
    pieces: pieces.map(({ bagId, bagCode, bagNo, grams }) => ({ bagId, bagCode, bagNo, grams })),
  };
}

const presentWaiting = (holding: Holding) => ({
  householdId: holding.householdId,
  lineId: holding.buyLineId,
  bagId: holding.bagId,
  bagCode: holding.bagCode,
  bagNo: holding.bagNo,
  grams: waitingGrams(holding),
  isOnHold: holding.isHeld,
});

export const presentPickUps = ({ pickUps, waiting }: Awaited<ReturnType<typeof readPickUpsOfBuy>>) => ({
  pickUps: pickUps.map(presentPickUp),
  waiting: waiting.map(presentWaiting),
});

const WARNING =
  'Taking it moves the food to common stock for good. The household is credited what its grams cost as goods and as ' +
  'freight by weight. Ask it once more before.';

export const presentUncollected = ({
  uncollectedDays,
  holdings,
}: Awaited<ReturnType<typeof readUncollected>>) => ({
  uncollectedDays,
  warning: WARNING,
  waiting: holdings.map((holding) => ({ ...presentWaiting(holding), fetchUntil: holding.fetchUntil })),
});

export const presentTaken = ({
  entryId,
  entryNo,
  householdId,
  taken,
  minorUnits,
  currency,
}: UncollectedTaken) => ({
  entryId,
  entryNo,
  householdId,
  creditedMinorUnits: minorUnits,
  currency,
  pieces: taken.map(({ bagId, bagCode, bagNo, grams }) => ({ bagId, bagCode, bagNo, grams })),
});
