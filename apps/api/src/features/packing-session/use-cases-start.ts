import type { PackingSessionRow } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { namedIn, namingProblem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { planDay } from './plan-day.ts';
import { lockSession, updateSession } from './queries.ts';
import { requireSessionStage } from './stage.ts';

/**
 * The line begins: from now on food is poured, and what is wanted stands. Refused while a food would run after what somebody who
 * gets it must not meet (job map 7.4): no clean between two foods is a promise to an allergic eater.
 */
export function startSession(context: Context, sessionId: string): Promise<PackingSessionRow> {
  return withTx(
    context,
    async (tx) => {
      const session = await lockSession(tx, context.actor.storehouseId, sessionId);
      requireSessionStage(session, 'open');
      const { wishes, lines } = await planDay(tx, context, session, {
        purpose: 'beginning of a packing session',
      });
      refuseClash(wishes, lines);
      return updateSession(tx, session, { stage: 'running', startedAt: context.now() });
    },
    { task: 'packing' },
  );
}

type Day = Awaited<ReturnType<typeof planDay>>;

/** Names the food and the line, and neither the household nor what its eater can't have. */
function refuseClash(wishes: Day['wishes'], lines: Day['lines']): void {
  const at = lines.findIndex(({ clashes }) => clashes.length > 0);
  const clash = lines[at]?.clashes[0];
  if (!clash) return;
  const food = wishes.find(({ wish }) => wish.packingWishId === clash.wishId)?.food;
  assert(food, 'every clash is about somebody’s wish');
  const says = (language: 'en' | 'es') =>
    `Somebody who gets ${namedIn(language, food)} must not meet what runs before it on line ${at + 1}. Move the times, or pack it on another day.`;
  throw namingProblem('allergen-clash', { says });
}
