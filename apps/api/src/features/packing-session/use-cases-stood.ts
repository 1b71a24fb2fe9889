import type { Tx } from '@sheafbook/db';
import type { PackingSessionRow } from '@sheafbook/db/tables';
import { planLines, standLines, toLineWish, turnsOfLines } from './plan.ts';
import { listSlots, listWishes } from './queries.ts';
import { insertStood, listHands, listLastStations } from './queries-hands.ts';

/**
 * Writes down where those who were ticked as come stood, as the plan put them, so that the next day begins them elsewhere. Read
 * without the allergies of eaters: they order foods, and who stands where does not hang on that.
 */
export async function keepStood(tx: Tx, session: PackingSessionRow): Promise<void> {
  const { storehouseId, packingSessionId: sessionId } = session;
  const hands = (await listHands(tx, storehouseId, sessionId)).filter(({ hand }) => hand.state === 'came');
  const wishes = await listWishes(tx, storehouseId, { sessionId });
  const { slots } = await listSlots(tx, storehouseId, sessionId);
  const lineWishes = wishes.map((row) => toLineWish(row, new Map()));
  const lines = planLines(session, turnsOfLines(lineWishes, slots, session));
  const personIds = hands.map(({ hand }) => hand.personId);
  const lastStations = await listLastStations(tx, storehouseId, { personIds, before: session.startsAt });
  const stood = new Map<string, { personId: string; station: string; spells: number }>();
  for (const { blocks } of standLines(session, lines, { hands, lastStations }))
    for (const block of blocks)
      for (const personId of block.personIds)
        for (const station of block.stations) {
          const key = `${personId} ${station}`;
          stood.set(key, { personId, station, spells: (stood.get(key)?.spells ?? 0) + 1 });
        }
  await insertStood(
    tx,
    [...stood.values()].map((row) => ({ storehouseId, packingSessionId: sessionId, ...row })),
  );
}
