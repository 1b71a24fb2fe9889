import type { PackingSessionRow } from '@sheafbook/db/tables';
import { carriedBy, type LineWish, planLine } from '@sheafbook/packing';
import type { SlotOf, WishedPacking } from './queries.ts';

/** What the pure plan reads of a wish. Eaters never meet their own wish's allergens here: whoever asked for it may eat it. */
export function toLineWish(
  { wish, food, household }: WishedPacking,
  allergens: ReadonlyMap<string, readonly string[]>,
): LineWish {
  const carries = carriedBy(food);
  return {
    wishId: wish.packingWishId,
    householdId: wish.householdId,
    seat: household.seat,
    foodCode: food.foodCode,
    carries,
    mustNotMeet: (allergens.get(wish.householdId) ?? []).filter((allergen) => !carries.includes(allergen)),
    containers: wish.containers,
  };
}

/** The turns of each line: households in the order of their slots, and whoever has none last on the first line. */
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
    return [...turns, others].filter((turn) => turn.length > 0);
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
