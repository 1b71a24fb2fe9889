import type { Tx } from '@sheafbook/db';
import type { FoodRow, OfferRow } from '@sheafbook/db/tables';
import { type Asked, firstRefusalGroups, planTurns, type Turn } from '@sheafbook/giving';
import { divideFractions, fraction } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { readNeeds } from '../split/use-cases.ts';
import { listToAsk, listTurns, updateOffer, updateTurn } from './queries.ts';

/**
 * Who is asked first when a food is offered, in their groups. It reads what the eaters of each household need and what it
 * holds, as need-first does; each is told that it was read, and nobody is shown the order.
 */
export async function askInOrder(
  tx: Tx,
  context: Context,
  { food, giverId }: { food: FoodRow; giverId: string | null },
): Promise<string[][]> {
  const all = await listToAsk(tx, context.actor.storehouseId);
  const others = all.filter(({ householdId }) => householdId !== giverId);
  const needs = await readNeeds(tx, context, {
    food,
    ownerIds: others.map(({ householdId }) => householdId),
    what: 'days of stock and what was taken before, as first refusal reads it',
    purpose: 'an offer to members',
  });
  const asked = others.map(({ householdId, seat, hasEaters, lastTookAt }): Asked => {
    const { dailyGrams, stockGrams } = needs.get(householdId) ?? { dailyGrams: fraction(0), stockGrams: 0 };
    const isNeeded = dailyGrams.numerator > 0n;
    return {
      ...{ householdId, seat, lastTookAt: lastTookAt?.getTime() ?? null },
      isUsable: isNeeded || !hasEaters, // whose eaters nobody knows is asked too, after the others
      coverageDays: isNeeded ? divideFractions(fraction(stockGrams), dailyGrams) : null,
    };
  });
  return firstRefusalGroups(asked);
}

export const toDates = ({ householdId, groupNo, fromAt, untilAt }: Turn) => ({
  ...{ householdId, groupNo, fromAt: new Date(fromAt), untilAt: new Date(untilAt) },
});

/**
 * Reckons the turns of an offer again after somebody passed. Tells whose turn comes by it, and whether everybody has
 * passed. Each household whose place was read for it is told so.
 */
export async function advanceTurns(tx: Tx, context: Context, offer: OfferRow) {
  const rows = await listTurns(tx, offer);
  await notePrivateRead(tx, context, {
    householdIds: rows.map(({ householdId }) => householdId),
    what: 'the order of asking, as first refusal reads it',
    purpose: 'passing an offer on',
  });
  const groups: string[][] = [];
  for (const { groupNo, householdId } of rows)
    groups[groupNo - 1] = [...(groups[groupNo - 1] ?? []), householdId];
  const { turns, openAt } = planTurns({
    groups,
    offeredAt: offer.offeredAt.getTime(),
    closesAt: offer.closesAt.getTime(),
    windowHours: offer.windowHours,
    passedAt: new Map(
      rows.flatMap(({ householdId, passedAt }) =>
        passedAt ? [[householdId, passedAt.getTime()] as const] : [],
      ),
    ),
  });
  const now = context.now().getTime();
  const comes: string[] = [];
  for (const turn of turns) {
    const before = rows.find(({ householdId }) => householdId === turn.householdId);
    const { fromAt, untilAt } = toDates(turn);
    if (!before || (before.fromAt.getTime() === turn.fromAt && before.untilAt.getTime() === turn.untilAt))
      continue;
    await updateTurn(tx, before, { fromAt, untilAt });
    if (before.fromAt.getTime() > now && turn.fromAt <= now && turn.untilAt > now)
      comes.push(turn.householdId);
  }
  if (openAt !== offer.openAt.getTime()) await updateOffer(tx, offer, { openAt: new Date(openAt) });
  return { comes, haveAllPassed: openAt <= now };
}
