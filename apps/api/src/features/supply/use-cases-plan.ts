import { planSupplies } from '@sheafbook/packing';
import { assert, sumOf } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listAllContainerKinds } from '../container-kind/queries.ts';
import { listWishes, loadSession } from '../packing-session/queries.ts';
import { listSupplies } from './queries.ts';
import { timeOpenPack, toKept, toSupply } from './session-plan.ts';

/** What a session's wishes use up to the piece, what the store has of it, and what is to be bought in whole packs. */
export function planSessionSupplies(context: Context, sessionId: string) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const session = await loadSession(tx, storehouseId, sessionId);
    const wishes = await listWishes(tx, storehouseId, { sessionId });
    await notePrivateRead(tx, context, {
      householdIds: [...new Set(wishes.map(({ wish }) => wish.householdId))],
      ...{ what: 'what it wants packed', purpose: 'supplies of a packing session' },
    });
    const rows = await listSupplies(tx, storehouseId);
    const kinds = await listAllContainerKinds(tx, storehouseId);
    const people = session.peopleALine * session.lines;
    const { lines, unkept } = planSupplies(wishes.map(toSupply), rows.map(toKept), { people });
    return {
      session,
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
