import type { Context } from '../../platform/context.ts';
import type { PageQuery } from '../../platform/paging.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadHousehold, lockPresentHousehold } from '../household/queries.ts';
import { loadPresentPerson } from '../person/queries.ts';
import { mayEndGrant, mayListHelpersOf, mayNameHelpersOf } from './policy.ts';
import {
  findGrantInForce,
  hasLogin,
  insertHelperGrant,
  listHelperGrants,
  lockHelperGrant,
  type NamedGrant,
  updateGrantEnded,
} from './queries.ts';
import type { HelperWish } from './schema.ts';

export type { NamedGrant };

const DAY_MILLISECONDS = 86_400_000;

/** Lets a person act for a household until a day. One grant at a time for the two of them; it is renewed by a new one. */
export function nameHelper(context: Context, householdId: string, wish: HelperWish): Promise<NamedGrant> {
  const { storehouseId, personId: grantedBy } = context.actor;
  return withTx(context, async (tx) => {
    const household = await lockPresentHousehold(tx, storehouseId, householdId);
    const subject = { householdId, hasLogin: await hasLogin(tx, storehouseId, householdId) };
    if (!mayNameHelpersOf(context.actor, subject)) throw new Problem('not-your-household');
    const isOwn = context.actor.householdId === householdId;
    if (!isOwn && wish.reason === '')
      throw fieldProblem('invalid-input', 'reason', 'Say why this household needs somebody to act for it.');
    const helper = await loadPresentPerson(tx, storehouseId, wish.personId);
    if (helper.householdId === householdId)
      throw fieldProblem('invalid-input', 'personId', 'This person belongs to the household already.');
    if (helper.loginId === null)
      throw fieldProblem('invalid-input', 'personId', 'A helper needs a login to act with.');
    const now = context.now();
    const pair = { storehouseId, householdId, personId: wish.personId };
    if (await findGrantInForce(tx, pair, now))
      throw new Problem('already-there', { detail: `${helper.name} may act for this household already.` });
    const expiresAt = new Date(now.getTime() + wish.days * DAY_MILLISECONDS);
    const { reason } = wish;
    const grant = await insertHelperGrant(tx, { ...pair, reason, grantedBy, grantedAt: now, expiresAt });
    return { grant, helperName: helper.name, householdName: household.name };
  });
}

/** Ends a helper's right before its day. What was entered with it stays, and says whom it was entered for. */
export function endHelp(context: Context, householdId: string, helperGrantId: string): Promise<void> {
  return withTx(context, async (tx) => {
    const grant = await lockHelperGrant(tx, context.actor.storehouseId, helperGrantId);
    if (grant?.householdId !== householdId) throw new Problem('thing-not-found', { thing: 'helper' });
    if (!mayEndGrant(context.actor, grant)) throw new Problem('not-your-household');
    if (grant.endedAt !== null || grant.expiresAt <= context.now())
      throw new Problem('helper-grant-missing', { detail: 'This right has ended already.' });
    await updateGrantEnded(tx, grant, context.now());
  });
}

/** Who may act, and who might in the past, for a household. */
export function readHelpers(context: Context, householdId: string, page: PageQuery): Promise<NamedGrant[]> {
  const { storehouseId } = context.actor;
  const { after, limit } = page;
  return withTx(context, async (tx) => {
    await loadHousehold(tx, storehouseId, householdId);
    if (!mayListHelpersOf(context.actor, householdId)) throw new Problem('not-your-household');
    return listHelperGrants(tx, { storehouseId, householdId }, { after, limit });
  });
}

/** For whom the actor may act, and might in the past. */
export function readMyHelping(context: Context, page: PageQuery): Promise<NamedGrant[]> {
  const { storehouseId, personId } = context.actor;
  const { after, limit } = page;
  return withTx(context, (tx) => listHelperGrants(tx, { storehouseId, personId }, { after, limit }));
}
