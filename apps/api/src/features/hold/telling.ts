import type { Tx } from '@sheafbook/db';
import type { HoldRow } from '@sheafbook/db/tables';
import type { Context } from '../../platform/context.ts';
import { writeNotice } from '../notice/use-cases.ts';

/** Chosen containers have no name in common, and the codes of one household are not for another to read. */
export const NAMELESS = '…';

/** Each household hears of what is its own, and of nobody else who has some (job map 12). */
export async function tellOwner(
  tx: Tx,
  context: Context,
  told: {
    about: string;
    aboutEs: string;
    buyId: string | null;
    hold: HoldRow;
    kind: 'held' | 'released';
    householdId: string;
    says: string;
  },
): Promise<void> {
  const { about, aboutEs, buyId, hold, kind, householdId, says } = told;
  await writeNotice(tx, context, {
    ...{ kind, says, about, aboutEs, isSafety: kind === 'held' },
    ...(buyId === null ? {} : { buyId }),
    audience: { to: 'household', householdId },
    path: `/holds/${hold.holdId}`,
  });
}
