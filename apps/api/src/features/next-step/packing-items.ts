import type { Tx } from '@sheafbook/db';
import type { Context } from '../../platform/context.ts';
import { listOwnSessions } from '../packing-session/queries.ts';
import type { OpenItem } from './open-item.ts';
import { dueAtInstant } from './steps.ts';

/** A household's time on a line, and the day on which a person said to come and help. */
export async function listPackingItems(tx: Tx, context: Context, root: string): Promise<OpenItem[]> {
  const { storehouseId, householdId, personId, timeZone } = context.actor;
  const own = await listOwnSessions(tx, storehouseId, { since: context.now(), householdId, personId });
  return own
    .filter(({ session: { stage } }) => stage === 'open' || stage === 'running')
    .flatMap(({ session, slot, hand }) => {
      const { packingSessionId, name: about, startsAt, endsAt } = session;
      const common = {
        buy: null,
        minorUnits: null,
        about,
        path: `${root}/packing-sessions/${packingSessionId}`,
      };
      const items: OpenItem[] = [];
      if (slot?.state === 'booked')
        items.push({
          ...{
            ...dueAtInstant(slot.startsAt, timeZone),
            ...common,
            kind: 'packing-time',
            endsAt: slot.endsAt,
          },
          words: `Bring your bags to the line: ${about}.`,
        });
      if (hand?.state === 'coming')
        items.push({
          ...{ ...dueAtInstant(startsAt, timeZone), ...common, kind: 'packing-help', endsAt },
          words: `You said that you come to help: ${about}.`,
        });
      return items;
    });
}
