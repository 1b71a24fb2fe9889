import type { PackingSessionRow } from '@sheafbook/db/tables';
import { readTreatment } from '@sheafbook/keeping';
import {
  carriedBy,
  dryIceOf,
  type LinePlan,
  type LineWish,
  type Mix,
  planLine,
  SPELL_MINUTES,
  slotCapacity,
  standCrew,
} from '@sheafbook/packing';
import type { SlotOf, WishedPacking } from './queries.ts';
import type { HandOf } from './queries-hands.ts';

/** What the pure plan reads of a wish. Eaters never meet their own wish's allergens here: whoever asked for it may eat it. */
export function toLineWish(
  row: WishedPacking & { readonly mix?: Mix | null },
  allergens: ReadonlyMap<string, readonly string[]>,
): LineWish {
  const { wish, food, household } = row;
  const carries = carriedBy(food);
  return {
    wishId: wish.packingWishId,
    householdId: wish.householdId,
    seat: household.seat,
    foodCode: food.foodCode,
    carries,
    mustNotMeet: (allergens.get(wish.householdId) ?? []).filter((allergen) => !carries.includes(allergen)),
    containers: wish.containers,
    lidWaitMinutes: iceOf(row)?.waitMinutes,
    mix: row.mix ? { mixId: row.mix.mixId, seat: row.mix.run.shares[0]?.seat ?? household.seat } : undefined,
  };
}

/** How much dry ice goes into the containers of a wish, and how long their lids wait; null where none goes in. */
export const iceOf = ({ wish, kind }: WishedPacking) =>
  dryIceOf({
    treatment: readTreatment(wish.treatment) ?? 'none',
    capacityMicrolitres: kind.capacityMicrolitres,
    containers: wish.containers,
  });

/**
 * The turns of each line: households in the order of their slots, and whoever has none last on the first line. What is mixed
 * runs once the last of those who mix it comes.
 */
export function turnsOfLines(
  wishes: readonly LineWish[],
  slots: readonly SlotOf[],
  { lines, startsAt }: Pick<PackingSessionRow, 'lines' | 'startsAt'>,
): LineWish[][][] {
  const booked = slots
    .filter(({ slot }) => slot.state === 'booked')
    .toSorted((a, b) => a.slot.startsAt.getTime() - b.slot.startsAt.getTime());
  const withSlot = new Set(booked.map(({ slot }) => slot.householdId));
  return Array.from({ length: lines }, (_, at) => {
    const turns = booked
      .filter(({ slot }) => slot.line === at + 1)
      .map(({ slot }) => {
        const notBeforeSecond = Math.floor((slot.startsAt.getTime() - startsAt.getTime()) / 1000);
        return wishes
          .filter(({ householdId }) => householdId === slot.householdId)
          .map((wish) => ({ ...wish, notBeforeSecond }));
      });
    const others = at === 0 ? wishes.filter(({ householdId }) => !withSlot.has(householdId)) : [];
    return gatherMixes([...turns, others]).filter((turn) => turn.length > 0);
  });
}

/** Each mix in the last turn that any of it is in, and no sooner than the last of its households comes. */
function gatherMixes(turns: readonly (readonly LineWish[])[]): LineWish[][] {
  const lastOf = (mixId: string) =>
    turns.findLastIndex((turn) => turn.some(({ mix }) => mix?.mixId === mixId));
  return turns.map((turn, at) => {
    const staying = turn.filter(({ mix }) => mix === undefined || lastOf(mix.mixId) === at);
    const coming = turns
      .slice(0, at)
      .flatMap((before) => before.filter(({ mix }) => mix !== undefined && lastOf(mix.mixId) === at));
    const all = [...staying, ...coming];
    return all.map((wish) => {
      const together = wish.mix ? all.filter(({ mix }) => mix?.mixId === wish.mix?.mixId) : [wish];
      const from = together.flatMap(({ notBeforeSecond }) => notBeforeSecond ?? []);
      return from.length === 0 ? wish : { ...wish, notBeforeSecond: Math.max(...from) };
    });
  });
}

/** The day of each line, as the session counts on its people or with another number of them. */
export function planLines(
  session: PackingSessionRow,
  turns: readonly (readonly (readonly LineWish[])[])[],
  people = session.peopleALine,
) {
  const { stations, setupMinutes, breakMinutes, cleanDownMinutes } = session;
  return turns.map((line) =>
    planLine(line, { stations, people, setupMinutes, breakMinutes, cleanDownMinutes }),
  );
}

/** How many containers a line's hours hold at its pace, beside what the day takes anyway; null where it can't run. */
export function capacityOf(session: PackingSessionRow, { crew, changeoverMinutes }: LinePlan): number | null {
  const { setupMinutes, breakMinutes, cleanDownMinutes, startsAt, endsAt } = session;
  const dayMinutes = Math.floor((endsAt.getTime() - startsAt.getTime()) / 60_000);
  const day = { setupMinutes, changeoverMinutes, breakMinutes, cleanDownMinutes };
  return crew && slotCapacity(dayMinutes, crew.cycleSeconds, day);
}

/** Where people stood most at the last session that they came to. */
type LastStations = ReadonlyMap<string, readonly string[]>;

/**
 * Who of those that come stands where on all lines, from when the first is set up until the last has closed its containers;
 * nobody stands at a station while lids wait over dry ice. Nothing where nobody comes or no line runs.
 */
export function standLines(
  session: PackingSessionRow,
  lines: readonly LinePlan[],
  { hands, lastStations }: { hands: readonly HandOf[]; lastStations: LastStations },
) {
  const here = hands.filter(({ hand }) => hand.state === 'coming' || hand.state === 'came');
  const running = lines.flatMap(({ crew, finishSeconds, lids, containers }, at) =>
    crew && finishSeconds !== null && containers > 0
      ? [{ line: at + 1, crew, cleanedSecond: finishSeconds - (lids?.longerSeconds ?? 0) }]
      : [],
  );
  if (here.length === 0 || running.length === 0) return [];
  const fromSecond = 60 * session.setupMinutes;
  const untilSecond =
    Math.max(...running.map(({ cleanedSecond }) => cleanedSecond)) - 60 * session.cleanDownMinutes;
  const count = Math.max(1, Math.ceil((untilSecond - fromSecond) / (60 * SPELL_MINUTES)));
  const blocks = running.flatMap(({ line, crew }) => crew.blocks.map((block) => ({ line, ...block })));
  const helpers = here.map(({ hand }) => ({
    ...{ personId: hand.personId, maySeam: hand.maySeam, mayLift: hand.mayLift },
    ...{ seatedOnly: hand.seatedOnly, isUnder16: hand.isUnder16 },
    lastStations: lastStations.get(hand.personId) ?? [],
  }));
  const nameOf = new Map(here.map(({ hand, name }) => [hand.personId, name]));
  const named = (personIds: readonly string[]) => personIds.map((id) => nameOf.get(id) ?? '');
  return standCrew({ blocks, stations: session.stations }, helpers, count).map((spell, at) => ({
    startsAtSecond: fromSecond + at * 60 * SPELL_MINUTES,
    blocks: spell.blocks.map(({ stations, personIds, missing }, block) => ({
      ...{ line: blocks[block]?.line ?? 1, stations, personIds, names: named(personIds), missing },
    })),
    resting: named(spell.resting),
  }));
}
