import type { Tx } from '@sheafbook/db';
import type { Context } from '../../platform/context.ts';
import { listHands, listSessionsSince, listSlots } from '../packing-session/queries.ts';
import type { OpenItem } from './open-item.ts';
import { dueAtInstant } from './steps.ts';

/** A household's time on a line, and the day on which a person said to come and help. */
export async function listPackingItems(tx: Tx, context: Context, root: string): Promise<OpenItem[]> {
  const { storehouseId, householdId, personId, timeZone } = context.actor;
  const items: OpenItem[] = [];
  const sessions = await listSessionsSince(tx, storehouseId, context.now());
  for (const session of sessions.filter(({ stage }) => stage === 'open' || stage === 'running')) {
    const { packingSessionId, name, startsAt, endsAt } = session;
    const common = {
      buy: null,
      minorUnits: null,
      about: name,
      path: `${root}/packing-sessions/${packingSessionId}`,
    };
    const slots = householdId === null ? [] : await listSlots(tx, storehouseId, packingSessionId);
    const own = slots.find(({ slot }) => slot.householdId === householdId && slot.state === 'booked');
    if (own)
      items.push({
        ...{
          ...dueAtInstant(own.slot.startsAt, timeZone),
          ...common,
          kind: 'packing-time',
          endsAt: own.slot.endsAt,
        },
        words: `Bring your bags to the line: ${name}.`,
      });
    const hands = await listHands(tx, storehouseId, packingSessionId);
    if (hands.some(({ hand }) => hand.personId === personId && hand.state === 'coming'))
      items.push({
        ...{ ...dueAtInstant(startsAt, timeZone), ...common, kind: 'packing-help', endsAt },
        words: `You said that you come to help: ${name}.`,
      });
  }
  return items;
}
