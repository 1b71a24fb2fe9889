import type { Tx } from '@sheafbook/db';
import type { PackingSessionRow } from '@sheafbook/db/tables';
import type { Context } from '../../platform/context.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { mixWishes, type RunWish } from './mixing.ts';
import { planLines, toLineWish, turnsOfLines } from './plan.ts';
import { listAllergens, listSlots, listWishes, type SlotOf } from './queries.ts';

/**
 * What runs on which line when, under the task `packing`. The allergies of eaters keep foods apart; each household that was
 * read for it finds that written down.
 */
export async function planDay(
  tx: Tx,
  context: Context,
  session: PackingSessionRow,
  { purpose, people }: { purpose: string; people?: number | undefined },
) {
  const { storehouseId, packingSessionId: sessionId } = session;
  const asked = await listWishes(tx, storehouseId, { sessionId });
  const { slots, freed } = await listSlots(tx, storehouseId, sessionId);
  const { wishes, mixes } = await mixWishes(tx, { storehouseId, sessionId }, asked, slots);
  const householdIds = [...new Set(wishes.map(({ wish }) => wish.householdId))];
  const allergens = await listAllergens(tx, storehouseId, householdIds);
  await notePrivateRead(tx, context, { householdIds, what: 'what it wants packed', purpose });
  await notePrivateRead(tx, context, {
    householdIds: householdIds.filter((householdId) => (allergens.get(householdId) ?? []).length > 0),
    what: 'allergies, as the order of foods reads them',
    purpose,
  });
  return { wishes, mixes, slots, freed, lines: linesOf(session, { wishes, slots, allergens, people }) };
}

/** The lines of a day by its wishes as they run. Of a mix somebody may have no container, only what is left over. */
export function linesOf(
  session: PackingSessionRow,
  day: {
    wishes: readonly RunWish[];
    slots: readonly SlotOf[];
    allergens: Parameters<typeof toLineWish>[1];
    people?: number | undefined;
  },
) {
  const { wishes, slots, allergens, people } = day;
  const lineWishes = wishes
    .filter(({ wish }) => wish.containers > 0)
    .map((row) => toLineWish(row, allergens));
  return planLines(session, turnsOfLines(lineWishes, slots, session), people);
}
