import type { Tx } from '@sheafbook/db';
import type { Context } from '../../platform/context.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadOwnHousehold } from '../household/use-cases.ts';
import { type Plan, presentPlan } from './present.ts';
import {
  deleteGuidelines,
  findPlan,
  insertGuidelines,
  insertPlan,
  listGuidelines,
  updatePlan,
} from './queries.ts';
import type { PlanEdit } from './schema.ts';

export function readPlan(context: Context, householdId: string): Promise<Plan> {
  return withTx(context, async (tx) => {
    await loadOwnHousehold(tx, context, householdId);
    await notePrivateRead(tx, context, { householdIds: [householdId], what: 'plan', purpose: 'helping' });
    return findWholePlan(tx, context, householdId);
  });
}

/** Replaces a household's plan, guideline figures included: a group that is left out goes by the guideline again. */
export function editPlan(context: Context, householdId: string, edit: PlanEdit): Promise<Plan> {
  const { storehouseId } = context.actor;
  const { guidelines, ...facts } = edit;
  return withTx(context, async (tx) => {
    await loadOwnHousehold(tx, context, householdId);
    const row = { ...facts, storehouseId, householdId };
    const written =
      edit.version === 0 ? await insertPlan(tx, { ...row, version: 1 }) : await updatePlan(tx, row);
    if (!written)
      throw new Problem('stale-version', {
        newer: presentPlan(await findWholePlan(tx, context, householdId)),
      });
    await deleteGuidelines(tx, storehouseId, householdId);
    await insertGuidelines(
      tx,
      guidelines.map((guideline) => ({ ...guideline, storehouseId, householdId })),
    );
    return findWholePlan(tx, context, householdId);
  });
}

async function findWholePlan(tx: Tx, { actor }: Context, householdId: string): Promise<Plan> {
  return {
    plan: await findPlan(tx, actor.storehouseId, householdId),
    guidelines: await listGuidelines(tx, actor.storehouseId, householdId),
  };
}
