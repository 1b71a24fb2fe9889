import type { Tx } from '@sheafbook/db';
import type { Context, Outside } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { hashPassword } from '../../platform/password.ts';
import { Problem } from '../../platform/problem.ts';
import { openSessions } from '../../platform/session.ts';
import { enterStorehouse, withLoginTx, withTx } from '../../platform/with-tx.ts';
import { grantDutyTo } from '../duty/use-cases.ts';
import { joinWithNewHousehold } from '../household/use-cases.ts';
import { hasLogins, insertLogin } from '../session/queries.ts';
import {
  insertRules,
  insertStorehouse,
  listStorehousesOfLogin,
  loadRules,
  loadStorehouse,
  lockFirstRun,
  lockStorehouse,
  updateStorehouse,
} from './queries.ts';
import type { RulesChange, SetUp, StorehouseEdit, StorehouseFacts } from './schema.ts';

/**
 * The first run: makes the first login, its storehouse, and its household, and the coordinator's duty. Only on a
 * server that has no login yet; two racing first runs end with one storehouse.
 */
export async function setUpServer(outside: Outside, wish: SetUp) {
  const passwordHash = await hashPassword(wish.password);
  const made = await withLoginTx(outside, null, async (tx) => {
    await lockFirstRun(tx);
    if (await hasLogins(tx)) throw new Problem('already-set-up');
    const { email, personName: name, householdName } = wish;
    const loginId = await insertLogin(tx, { email, name, passwordHash, madeAt: outside.now() });
    const storehouseId = await foundStorehouse(tx, outside, {
      facts: wish.storehouse,
      loginId,
      personName: name,
      householdName,
    });
    return { loginId, storehouseId };
  });
  const session = await openSessions(outside).begin(made.loginId);
  return { ...made, ...session };
}

/** Whether somebody has set this server up; until then its front door leads to the first run. */
export function isSetUp(outside: Outside): Promise<boolean> {
  return withLoginTx(outside, null, (tx) => hasLogins(tx));
}

/** Founds a storehouse with its first household and coordinator, inside the caller's transaction. */
export async function foundStorehouse(
  tx: Tx,
  outside: Outside,
  wish: { facts: StorehouseFacts; loginId: string; personName: string; householdName: string },
): Promise<string> {
  const storehouseId = newId(outside);
  const { facts, loginId, personName, householdName } = wish;
  await enterStorehouse(tx, storehouseId, loginId);
  await insertStorehouse(tx, storehouseId, { facts, foundedAt: outside.now() });
  const { personId } = await joinWithNewHousehold(tx, outside, {
    storehouseId,
    timeZone: facts.timeZone,
    loginId,
    personName,
    householdName,
  });
  await grantDutyTo(tx, outside, { storehouseId, personId, duty: 'coordinator', grantedBy: null });
  return storehouseId;
}

export function listMyStorehouses(outside: Outside, loginId: string) {
  return withLoginTx(outside, loginId, (tx) => listStorehousesOfLogin(tx, loginId));
}

export function readStorehouse(context: Context) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => ({
    storehouse: await loadStorehouse(tx, storehouseId),
    rules: await loadRules(tx, storehouseId),
  }));
}

export function editStorehouse(context: Context, edit: StorehouseEdit) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const storehouse = await lockStorehouse(tx, storehouseId);
    if (storehouse.version !== edit.version)
      throw new Problem('stale-version', { newer: { version: storehouse.version, name: storehouse.name } });
    return {
      storehouse: await updateStorehouse(tx, storehouseId, edit),
      rules: await loadRules(tx, storehouseId),
    };
  });
}

/** A change of rules is a new version. A buy that was fixed keeps the version of that day (job map 2.1). */
export function changeRules(context: Context, change: RulesChange) {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    await lockStorehouse(tx, storehouseId);
    const inForce = await loadRules(tx, storehouseId);
    if (inForce.rulesVersion !== change.rulesVersion)
      throw new Problem('stale-version', { newer: { version: inForce.rulesVersion } });
    const rulesVersion = inForce.rulesVersion + 1;
    const { offerDays, offerDaysWithoutPantry, giftWindowDays, eatFirstMarginDays } = inForce;
    return insertRules(tx, {
      ...{ offerDays, offerDaysWithoutPantry, giftWindowDays, eatFirstMarginDays },
      ...change,
      storehouseId,
      rulesVersion,
      decidedBy: personId,
      decidedAt: context.now(),
    });
  });
}
