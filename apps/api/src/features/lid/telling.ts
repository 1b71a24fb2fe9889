import type { Tx } from '@sheafbook/db';
import { spellCode } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { listCodes } from '../../platform/list-codes.ts';
import { writeNotice } from '../notice/use-cases.ts';
import type { Lid } from './lids.ts';

/** Whoever owns jars whose lids somebody else found loose hears of its own, and what to do with them. */
export async function tellLoose(tx: Tx, context: Context, found: readonly Lid[]): Promise<void> {
  const owners = new Set(found.flatMap(({ household }) => household?.id ?? []));
  owners.delete(context.actor.householdId ?? '');
  for (const householdId of owners) {
    const own = found.filter(({ household }) => household?.id === householdId);
    const codes = listCodes(own.map(({ jar }) => spellCode(jar.container.containerCode)));
    await writeNotice(tx, context, {
      ...{ kind: 'packing', audience: { to: 'household', householdId } },
      about: own[0]?.session?.name ?? codes,
      says: `The lids of these jars of yours did not hold for a day: ${codes}. If the food is dry and smells right, close each again with a fresh absorber or a new vacuum and look again a day later, or eat it within 30 days. If it is wet, mouldy or smells wrong, throw it away.`,
      path: '/lids',
    });
  }
}
