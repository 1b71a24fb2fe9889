import { costPerUse, lateLoans, type Share, usedHours, waitedFor } from '@sheafbook/booking';
import type { EquipmentItemRow, EquipmentUnitRow } from '@sheafbook/db/tables';
import { addDays, instantOfWallTime } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { WHOLE_LIST } from '../../platform/paging.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listItems, listUnits } from '../equipment/queries.ts';
import { listLoansWithin, listSessionsWithin, listWishesWithin, sumRepairs, sumUses } from './queries.ts';

const DAYS_OF_A_YEAR = 365;

/** What a thing came to in a year. */
export type ItemUse = {
  readonly item: EquipmentItemRow;
  readonly pieces: number;
  readonly hours: Share;
  readonly late: Share;
  readonly uses: number;
  readonly costMinorUnits: number;
  readonly eachMinorUnits: number | null;
  readonly waited: ReturnType<typeof waitedFor>;
};
export type Use = { readonly fromOn: string; readonly toOn: string; readonly items: readonly ItemUse[] };

/**
 * How much each thing was used in the 365 days to this moment, how often it came back late, what a use cost, and how many
 * waited for it in vain: figures of things, never of those who borrowed them.
 */
export function readUse(context: Context): Promise<Use> {
  const { storehouseId, timeZone } = context.actor;
  const toOn = todayOf(context);
  const fromOn = addDays(toOn, -DAYS_OF_A_YEAR);
  const to = context.now();
  const from = new Date(instantOfWallTime(`${addDays(fromOn, 1)}T00:00`, timeZone));
  return withTx(
    context,
    async (tx) => {
      const items = await listItems(tx, storehouseId, { limit: WHOLE_LIST });
      const itemIds = items.map(({ equipmentItemId }) => equipmentItemId);
      const facts = {
        units: itemIds.length === 0 ? [] : await listUnits(tx, storehouseId, itemIds),
        loans: await listLoansWithin(tx, storehouseId, { from, to }),
        sessions: await listSessionsWithin(tx, storehouseId, { from, to }),
        uses: await sumUses(tx, storehouseId, { from, to }),
        costs: await sumRepairs(tx, storehouseId, { fromOn, toOn }),
        wishes: await listWishesWithin(tx, storehouseId, { from, to }),
      };
      const span = { startMs: from.getTime(), endMs: to.getTime() };
      return {
        fromOn: addDays(fromOn, 1),
        toOn,
        items: items.map((item) => reckon(item, facts, { span, timeZone })),
      };
    },
    { isReadOnly: true },
  );
}

type Facts = {
  readonly units: readonly EquipmentUnitRow[];
  readonly loans: Awaited<ReturnType<typeof listLoansWithin>>;
  readonly sessions: Awaited<ReturnType<typeof listSessionsWithin>>;
  readonly uses: Awaited<ReturnType<typeof sumUses>>;
  readonly costs: Awaited<ReturnType<typeof sumRepairs>>;
  readonly wishes: Awaited<ReturnType<typeof listWishesWithin>>;
};
type At = { readonly span: { startMs: number; endMs: number }; readonly timeZone: string };

function reckon(item: EquipmentItemRow, facts: Facts, at: At): ItemUse {
  const { equipmentItemId } = item;
  const isOwn = ({ itemId }: { itemId: string }) => itemId === equipmentItemId;
  const loans = facts.loans.filter(isOwn);
  const units = facts.units.filter(
    (unit) => unit.equipmentItemId === equipmentItemId && unit.condition !== 'retired',
  );
  const uses = facts.uses.get(equipmentItemId) ?? 0;
  const costMinorUnits = facts.costs.get(equipmentItemId) ?? 0;
  const wishes = facts.wishes.filter(isOwn);
  return {
    ...{ item, pieces: units.length, uses, costMinorUnits },
    hours: usedHours(
      units.map((unit) => pieceOf(unit, facts, at)),
      at.span,
    ),
    late: lateLoans(
      loans.map(({ dueAt, inAt }) => ({ dueMs: dueAt.getTime(), backMs: inAt?.getTime() ?? null })),
      at.span,
    ),
    eachMinorUnits: costPerUse(costMinorUnits, uses),
    waited: waitedFor(
      wishes.map(({ startsAt, endedAt, isServed, isOffered }) => ({
        ...{ startMs: startsAt.getTime(), isServed },
        endedMs: isOffered ? null : (endedAt?.getTime() ?? null), // an offer that stands is still an open wish
      })),
      at.span.endMs,
    ),
  };
}

function pieceOf({ equipmentUnitId, inUseSince }: EquipmentUnitRow, facts: Facts, { span, timeZone }: At) {
  const isIts = ({ unitId }: { unitId: string }) => unitId === equipmentUnitId;
  const loans = facts.loans.filter(isIts).map(({ outAt, inAt }) => ({
    ...{ startMs: outAt.getTime(), endMs: inAt?.getTime() ?? span.endMs },
  }));
  const days = facts.sessions.filter(isIts).map(({ startsAt, endsAt }) => ({
    ...{ startMs: startsAt.getTime(), endMs: endsAt.getTime() },
  }));
  return {
    sinceMs: instantOfWallTime(`${inUseSince}T00:00`, timeZone),
    used: [...loans, ...days].filter(({ startMs, endMs }) => startMs < endMs),
  };
}
