import type { Tx } from '@sheafbook/db';
import type { EaterRow } from '@sheafbook/db/tables';
import { firstDayOf } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import type { PageQuery } from '../../platform/paging.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadOwnHousehold } from '../household/use-cases.ts';
import { presentEater } from './present.ts';
import {
  deleteEater,
  findEater,
  insertEater,
  listEaters,
  listKnownFoodCodes,
  updateEater,
} from './queries.ts';
import type { EaterEdit, NewEater } from './schema.ts';

export function readEaters(context: Context, householdId: string, page: PageQuery): Promise<EaterRow[]> {
  const { after, limit } = page;
  return withTx(context, async (tx) => {
    await loadOwnHousehold(tx, context, householdId);
    await notePrivateRead(tx, context, { householdIds: [householdId], what: 'eaters', purpose: 'helping' });
    return listEaters(tx, context.actor.storehouseId, householdId, { after, limit });
  });
}

export function addEater(context: Context, householdId: string, wish: NewEater): Promise<EaterRow> {
  return withTx(context, async (tx) => {
    await loadOwnHousehold(tx, context, householdId);
    await refuseImpossible(tx, context, wish);
    return insertEater(tx, { ...wish, storehouseId: context.actor.storehouseId, householdId });
  });
}

export function editEater(
  context: Context,
  path: { householdId: string; eaterId: string },
  edit: EaterEdit,
): Promise<EaterRow> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    await loadOwnHousehold(tx, context, path.householdId);
    const before = await loadEater(tx, context, path);
    await refuseImpossible(tx, context, edit, before.excludedFoodCodes);
    const written = await updateEater(tx, { ...edit, ...path, storehouseId });
    return written ?? refuseStale(tx, context, path);
  });
}

export function removeEater(
  context: Context,
  path: { householdId: string; eaterId: string },
  version: number,
): Promise<void> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    await loadOwnHousehold(tx, context, path.householdId);
    await loadEater(tx, context, path);
    const isGone = await deleteEater(tx, { ...path, storehouseId, version });
    if (!isGone) await refuseStale(tx, context, path);
  });
}

async function loadEater(
  tx: Tx,
  { actor }: Context,
  { householdId, eaterId }: { householdId: string; eaterId: string },
): Promise<EaterRow> {
  const eater = await findEater(tx, actor.storehouseId, householdId, eaterId);
  if (!eater) throw new Problem('thing-not-found', { thing: 'eater' });
  return eater;
}

async function refuseStale(
  tx: Tx,
  context: Context,
  path: { householdId: string; eaterId: string },
): Promise<never> {
  const newer = await loadEater(tx, context, path);
  throw new Problem('stale-version', { newer: presentEater(newer, todayOf(context)) });
}

/** What only the day and the storehouse's foods can tell. A code that stood there before may stay. */
async function refuseImpossible(
  tx: Tx,
  context: Context,
  facts: NewEater,
  codesBefore: readonly string[] = [],
): Promise<void> {
  if (firstDayOf(facts.birthOn) > todayOf(context))
    throw fieldProblem('invalid-input', 'birthOn', 'This birth date is still to come.');
  const codes = facts.excludedFoodCodes.filter((code) => !codesBefore.includes(code));
  const known = new Set(await listKnownFoodCodes(tx, context.actor.storehouseId, codes));
  const fields = facts.excludedFoodCodes.flatMap((code, position) =>
    known.has(code) || codesBefore.includes(code)
      ? []
      : [{ field: `excludedFoodCodes.${position}`, message: `The storehouse has no food called ${code}.` }],
  );
  if (fields.length > 0) throw new Problem('invalid-input', { fields });
}
