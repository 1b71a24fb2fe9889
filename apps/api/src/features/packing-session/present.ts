import type { PackingSessionRow } from '@sheafbook/db/tables';
import { bulkOf, readKeepingClass } from '@sheafbook/foods';
import { cautionOf } from '@sheafbook/keeping';
import { airInPack, carriedBy, chooseAbsorbers, cycleWithOneMoreAt, unitsPerHour } from '@sheafbook/packing';
import { assert, fractionToNumber } from '@sheafbook/units';
import type { DayMix } from './mixing.ts';
import { capacityOf, iceOf, standLines } from './plan.ts';
import { presentSession } from './present-session.ts';
import type { SlotOf, WishedPacking } from './queries.ts';
import type { HandOf } from './queries-hands.ts';
import { linesNeeded, slotToMove } from './slots.ts';
import type { PlanReading, SessionReading } from './use-cases.ts';

export const presentSessions = ({
  rows,
  next,
}: {
  rows: readonly PackingSessionRow[];
  next: string | null;
}) => ({
  sessions: rows.map(presentSession),
  next,
});

export const sessionCsvRow = (session: PackingSessionRow) => {
  const { stations: _, ...row } = presentSession(session);
  return row;
};

const presentWish = ({ wish, food, kind }: WishedPacking) => ({
  id: wish.packingWishId,
  food: { id: food.foodId, code: food.foodCode, nameEn: food.nameEn, nameEs: food.nameEs },
  kind: { id: kind.containerKindId, code: kind.kindCode, nameEn: kind.nameEn, nameEs: kind.nameEs },
  treatment: wish.treatment,
  containers: wish.containers,
  gramsEach: wish.gramsEach,
  mayMix: wish.mayMix,
});

/** A household's own wish, with what is worth a word on how it is to be packed. */
export const presentOwnWish = (row: SessionReading['wishes'][number]) => ({
  ...presentWish(row),
  warnings: row.warnings,
});

/** A neighbour's time is a time that is taken; whose it is only the lead's plan says. */
const presentSlot = ({ slot }: SlotOf, householdId: string | null) => ({
  id: slot.packingSlotId,
  isOwn: slot.householdId === householdId,
  line: slot.line,
  startsAt: slot.startsAt.toISOString(),
  endsAt: slot.endsAt.toISOString(),
  state: slot.state,
  cameAt: slot.cameAt?.toISOString() ?? null,
});

/** A time as whoever was ticked at it sees it. */
export const presentOwnSlot = (slot: SlotOf) => presentSlot(slot, slot.slot.householdId);

export function presentReading(reading: SessionReading) {
  const { session, wishes, slots, freed, hands, ownGrams, householdId, personId } = reading;
  const missed = freed.find(({ slot }) => slot.householdId === householdId);
  const own = hands.find(({ hand }) => hand.personId === personId)?.hand;
  return {
    session: presentSession(session),
    wishes: wishes.map(presentOwnWish),
    ownGrams: [...ownGrams].map(([foodId, grams]) => ({ foodId, grams })),
    slots: slots.map((slot) => presentSlot(slot, householdId)),
    /** My own time that is free again because nobody of us came for it. */
    missed: missed === undefined ? null : presentOwnSlot(missed),
    hand: own
      ? {
          isComing: own.state === 'coming' || own.state === 'came',
          maySeam: own.maySeam,
          mayLift: own.mayLift,
          seatedOnly: own.seatedOnly,
          isUnder16: own.isUnder16,
        }
      : null,
    coming: hands.filter(({ hand }) => hand.state === 'coming' || hand.state === 'came').length,
  };
}

export const presentHands = (hands: readonly HandOf[]) => ({
  hands: hands
    .filter(({ hand }) => hand.state !== 'taken-back')
    .map(({ hand, name }) => ({
      personId: hand.personId,
      name,
      state: hand.state,
      maySeam: hand.maySeam,
      mayLift: hand.mayLift,
      seatedOnly: hand.seatedOnly,
      isUnder16: hand.isUnder16,
    })),
});

export function presentPlan(reading: PlanReading) {
  const { session, wishes, slots, freed, here, lines, hands, wanted, expected, chance, moreToAsk } = reading;
  const { scales } = reading;
  const byId = new Map(wishes.map((row) => [row.wish.packingWishId, row]));
  return {
    session: presentSession(session),
    linesNeeded: linesNeeded(slots),
    /** Whom to ask for another time where more want a line at once than there are. */
    toMove: presentToMove(slotToMove(slots, session.lines)),
    slots: [...slots, ...freed].map((row) => ({
      ...presentSlot(row, null),
      household: row.household.name,
      isHere: here.has(row.slot.householdId),
    })),
    crew: { ...presentHands(hands), wanted, expected, chance, moreToAsk },
    /** Who stands where, changing every 45 minutes: a proposal, from what each said that they may do. */
    spells: standLines(session, lines, reading).map(({ blocks, ...spell }) => ({
      ...spell,
      blocks: blocks.map(({ personIds: _, ...block }) => block),
    })),
    /** The scales that the day has booked, as they stand on it. */
    scales,
    lines: lines.map((line, at) => ({
      /** Each line weighs on one of its own as far as there are as many; null where the day has booked none. */
      scale: scales[at] ?? scales.at(-1) ?? null,
      containers: line.containers,
      /** How many the line's hours hold at its pace. */
      capacity: capacityOf(session, line),
      changeoverMinutes: line.changeoverMinutes,
      /** What the line stands still for households that come later than it is ready for them. */
      waitSeconds: line.waitSeconds,
      finishSeconds: line.finishSeconds,
      /** Over dry ice: when the last lid may be closed, and how much longer the day lasts for it. */
      lids: line.lids,
      cycleSeconds: line.crew && fractionToNumber(line.crew.cycleSeconds),
      unitsPerHour: line.crew && unitsPerHour(line.crew.cycleSeconds),
      idlePeople: line.crew?.idlePeople ?? 0,
      bottleneck: line.crew?.bottleneck.stations ?? [],
      blocks: (line.crew?.blocks ?? []).map((block) => ({
        stations: block.stations,
        people: block.people,
        cycleSeconds: fractionToNumber(block.cycleSeconds),
        /** The line's, with one person more here. */
        oneMoreSeconds: oneMoreSeconds(session, line, block.stations[0]),
      })),
      withOneMore: line.withOneMore,
      runs: line.runs.map((run) => ({ ...run, ...describeWish(byId.get(run.wishId)) })),
      /** What runs as one, with what each household puts in, has of it, and gets from others or gives them. */
      mixes: reading.mixes.filter((mix) => mix.line === at + 1).map((mix) => presentMix(mix, wishes)),
      /** Only the allergen and the runs that must be kept apart: no name, no household. */
      clashes: line.clashes,
    })),
  };
}

const presentMix = (
  { mixId, wishIds, gramsEach, run, posted, seen }: DayMix,
  wishes: readonly WishedPacking[],
) => {
  const rows = wishes.filter(({ wish }) => wishIds.includes(wish.packingWishId));
  const [first] = rows;
  assert(first, 'a mix has wishes');
  const { food, kind } = presentWish(first);
  return {
    ...{ id: mixId, food, kind, gramsEach, containers: run.containers, leftGrams: run.leftGrams, seen },
    /** Once its grams have changed hands. */
    postedId: posted?.packingMixId ?? null,
    shares: run.shares.map((share) => ({
      household: rows.find(({ wish }) => wish.householdId === share.householdId)?.household.name ?? '',
      ...share,
    })),
  };
};

const presentToMove = (row: SlotOf | null) =>
  row && { slotId: row.slot.packingSlotId, household: row.household.name };

/** The line's cycle with one person more at a station, in seconds a container. */
function oneMoreSeconds(
  { stations }: PackingSessionRow,
  { crew }: PlanReading['lines'][number],
  station: string | undefined,
): number {
  assert(crew && station !== undefined, 'a block is of a crew, and has a station');
  return fractionToNumber(cycleWithOneMoreAt(crew, stations, station));
}

function describeWish(row: WishedPacking | undefined) {
  assert(row, 'every run is somebody’s wish');
  const { household } = row;
  const { id: _, containers: _containers, ...about } = presentWish(row);
  return {
    household: household.name,
    seat: household.seat,
    ...about,
    packets: packetsIn(row),
    dryIce: dryIceIn(row),
    carries: carriedBy(row.food),
  };
}

/** The packets that go into each container; none where the treatment takes none, or nobody knows how heavy the food lies. */
function packetsIn({ wish, food, kind }: WishedPacking) {
  if (wish.treatment !== 'oxygen-absorber') return [];
  const keepingClass = readKeepingClass(food.keepingClass);
  const air = airInPack(wish.gramsEach, kind, { keepingClass, ...bulkOf(food) });
  return (air === null ? null : chooseAbsorbers(air))?.packets ?? [];
}

/** How much dry ice goes into each container, how long its lid waits, and what that can do to people: at the run where it does. */
function dryIceIn(row: WishedPacking) {
  const ice = iceOf(row);
  return ice && { ...ice, cautions: (['dry-ice', 'carbon-dioxide'] as const).map(cautionOf) };
}
