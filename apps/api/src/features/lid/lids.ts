import type { Tx } from '@sheafbook/db';
import {
  isLidDrawn,
  type LidState,
  lidDueMs,
  lidStateOf,
  readBarrier,
  readTreatment,
} from '@sheafbook/keeping';
import { addDays, compareText } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { todayOf } from '../../platform/today.ts';
import { type KeptRow, listKeptContainers } from '../keeping/queries.ts';
import { type Closed, listClosings, listHouseholdNames, listSessionNames } from './queries.ts';

/** From then on the half-yearly look at a jar tells of its lid too. */
const MOST_DAYS = 180;

/** A jar whose lid was drawn down, with where that stands. */
export type Lid = {
  readonly jar: KeptRow;
  readonly household: { readonly id: string; readonly name: string } | null;
  readonly session: { readonly id: string; readonly name: string } | null;
  readonly closed: Closed;
  readonly dueAt: Date;
  readonly state: LidState;
};

/** Whose lids: a household's own, or with "common" those of whatever stands in the store. */
export type WhoseLids = { readonly of: 'household' | 'common' };

/** Every jar whose lid a vacuum or an absorber draws down, those that held too, in the order in which they were closed. */
export async function listLids(
  tx: Tx,
  context: Context,
  { of }: WhoseLids,
  at: Date = context.now(),
): Promise<Lid[]> {
  const { storehouseId, householdId } = context.actor;
  const isStore = of === 'common';
  const sinceOn = addDays(todayOf(context), -MOST_DAYS);
  const closings = (await listClosings(tx, storehouseId, { sinceOn, isStore })).filter((closed) =>
    isStore ? closed.isInStore : closed.householdId === householdId,
  );
  if (closings.length === 0) return [];
  const jars = await listKeptContainers(tx, storehouseId, {
    containerIds: closings.map(({ containerId }) => containerId),
  });
  const closedById = new Map(closings.map((closed) => [closed.containerId, closed]));
  const mine = jars.flatMap((jar) => {
    const closed = closedById.get(jar.container.containerId);
    return closed && isDrawn(jar) ? [{ jar, closed }] : [];
  });
  const idsOf = (ids: readonly (string | null)[]) => [...new Set(ids.flatMap((id) => id ?? []))];
  const households = await listHouseholdNames(
    tx,
    storehouseId,
    idsOf(mine.map(({ jar }) => jar.container.householdId)),
  );
  const sessions = await listSessionNames(
    tx,
    storehouseId,
    idsOf(mine.map(({ closed }) => closed.sessionId)),
  );
  const named = (names: ReadonlyMap<string, string>, id: string | null) =>
    id === null ? null : { id, name: names.get(id) ?? '' };
  return mine
    .map(({ jar, closed }) => ({
      ...{ jar, closed, household: named(households, jar.container.householdId) },
      ...{ session: named(sessions, closed.sessionId), state: stateOf(closed, at) },
      dueAt: new Date(lidDueMs(closed.closedAt.getTime())),
    }))
    .toSorted(
      (a, b) =>
        a.dueAt.getTime() - b.dueAt.getTime() ||
        compareText(a.jar.container.containerCode, b.jar.container.containerCode),
    );
}

const isDrawn = ({ kind, container }: KeptRow) =>
  isLidDrawn(readBarrier(kind.barrier), readTreatment(container.treatment));

function stateOf({ closedAt, said, lastLook }: Closed, at: Date): LidState {
  return lidStateOf(
    {
      closedMs: closedAt.getTime(),
      said: said && { says: said.says, ofClosedMs: said.closedAt.getTime() },
      lastLook: lastLook && { atMs: lastLook.inspectedAt.getTime(), outcome: lastLook.outcome },
    },
    at.getTime(),
  );
}
