import type { Tx } from '@sheafbook/db';
import type { PackingSessionRow } from '@sheafbook/db/tables';
import { mixWishes } from './mixing.ts';
import { standLines } from './plan.ts';
import { linesOf } from './plan-day.ts';
import { listSlots, listWishes } from './queries.ts';
import { insertStood, listHands, listLastStations } from './queries-hands.ts';

/**
 * Writes down where those who were ticked as come stood, as the plan put them, so that the next day begins them elsewhere. Read
 * without the allergies of eaters, which are private: what they change of the order moves a spell at most.
 */
export async function keepStood(tx: Tx, session: PackingSessionRow): Promise<void> {
  const { storehouseId, packingSessionId: sessionId } = session;
  const hands = (await listHands(tx, storehouseId, sessionId)).filter(({ hand }) => hand.state === 'came');
  const asked = await listWishes(tx, storehouseId, { sessionId });
  const { slots } = await listSlots(tx, storehouseId, sessionId);
  const { wishes } = await mixWishes(tx, { storehouseId, sessionId }, asked, slots);
  const lines = linesOf(session, { wishes, slots, allergens: new Map() });
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
