import { planSupplies } from '@sheafbook/packing';
import { assert, dayInZone, sumOf } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listAllContainerKinds } from '../container-kind/queries.ts';
import { listSlots, listWishes, loadSession } from '../packing-session/queries.ts';
import { mixWishes } from '../packing-session/use-cases.ts';
import { listSupplies } from './queries.ts';
import { timeOpenPack, toKept, toSupply } from './session-plan.ts';
import { goodPieces, withUseBys } from './use-by.ts';

/** What a session's wishes use up to the piece, what the store has of it, and what is to be bought in whole packs. */
export function planSessionSupplies(context: Context, sessionId: string) {
  const { storehouseId, timeZone } = context.actor;
  return withTx(context, async (tx) => {
    const session = await loadSession(tx, storehouseId, sessionId);
    const { slots } = await listSlots(tx, storehouseId, sessionId);
    const asked = await listWishes(tx, storehouseId, { sessionId });
    const { wishes } = await mixWishes(tx, { storehouseId, sessionId }, asked, slots);
    await notePrivateRead(tx, context, {
      householdIds: [...new Set(wishes.map(({ wish }) => wish.householdId))],
      ...{ what: 'what it wants packed', purpose: 'supplies of a packing session' },
    });
    const rows = await withUseBys(tx, await listSupplies(tx, storehouseId), {
      today: todayOf(context),
      onDay: dayInZone(session.startsAt.getTime(), timeZone),
    });
    // Supplies that are on the shelf now say nothing about a day that is over.
    const isAhead = session.stage === 'open' || session.stage === 'running';
    const kept = rows.map((row) => ({
      ...toKept(row),
      ...(isAhead ? { onHandPieces: goodPieces(row) } : {}),
    }));
    const kinds = await listAllContainerKinds(tx, storehouseId);
    const people = session.peopleALine * session.lines;
    const { lines, unkept } = planSupplies(wishes.map(toSupply), kept, { people });
    return {
      session,
      isAhead,
      containers: sumOf(wishes.map(({ wish }) => wish.containers)),
      lines: lines.map((line) => {
        const row = rows.find(({ supply }) => supply.supplyId === line.supplyId);
        assert(row, 'a line is planned from a supply');
        const pack = row.supply.kind === 'absorber' ? timeOpenPack(session, row.supply.packPieces) : null;
        return { line, row, pack };
      }),
      unkept: unkept.map((use) => ({
        use,
        kind: kinds.find(({ containerKindId }) => containerKindId === use.kindId),
      })),
    };
  });
}
export type SessionSupplies = Awaited<ReturnType<typeof planSessionSupplies>>;
