import type { Tx } from '@sheafbook/db';
import { addDays, dayInZone } from '@sheafbook/units';
import type { Duty } from '../../platform/actor.ts';
import type { Context, Outside } from '../../platform/context.ts';
import type { PageQuery } from '../../platform/paging.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadPresentPerson } from '../person/queries.ts';
import { areSeparate, type Holder, isNear, mayGiveDuties, needsSuccessor } from './policy.ts';
import {
  insertDutyGrant,
  listDutyGrants,
  listHolders,
  listHoldersUntil,
  listSitting,
  lockDuties,
  updateDutiesEnded,
  updateDutyEnded,
  updatePlannedEnd,
} from './queries.ts';

/** Grants a duty inside the caller's transaction, unguarded: the founder's first duty is granted by nobody. */
export function grantDutyTo(
  tx: Tx,
  outside: Outside,
  grant: { storehouseId: string; personId: string; duty: Duty; grantedBy: string | null },
) {
  return insertDutyGrant(tx, { ...grant, grantedAt: outside.now() });
}

export function grantDuty(context: Context, personId: string, duty: Duty) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    await lockDuties(tx, storehouseId);
    const person = await loadPresentPerson(tx, storehouseId, personId);
    const holders = await listHolders(tx, storehouseId);
    if (person.loginId === null)
      throw new Problem('invalid-input', {
        detail: `${person.name} has no login, and a duty is done with one.`,
        fields: [{ field: 'person', message: 'A duty needs a login.' }],
      });
    if (holders.some((holder) => holder.personId === personId && holder.duty === duty))
      throw new Problem('already-there', { detail: `${person.name} holds this duty already.` });
    if (!areSeparate(person, duty, holders)) throw new Problem('duties-not-separate');
    const grant = await grantDutyTo(tx, context, {
      storehouseId,
      personId,
      duty,
      grantedBy: context.actor.personId,
    });
    return { grant, person };
  });
}

export function endDuty(context: Context, personId: string, duty: Duty) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    await lockDuties(tx, storehouseId);
    const person = await loadPresentPerson(tx, storehouseId, personId);
    return { grant: await endDutyOf(tx, context, { storehouseId, personId, duty }), person };
  });
}

/** Says on which day a duty is meant to end. Nothing ends by itself then: it is told in time to who holds and who hands it on. */
export function planEndOfDuty(
  context: Context,
  personId: string,
  { duty, endsOn }: { duty: Duty; endsOn: string | null },
) {
  const { storehouseId } = context.actor;
  if (endsOn !== null && endsOn < todayOf(context))
    throw fieldProblem('invalid-input', 'endsOn', 'This day is past; a duty that ended is taken back.');
  return withTx(context, async (tx) => {
    await lockDuties(tx, storehouseId);
    const person = await loadPresentPerson(tx, storehouseId, personId);
    const grant = await updatePlannedEnd(tx, { storehouseId, personId, duty }, endsOn);
    if (!grant) throw new Problem('thing-not-found', { thing: 'duty' });
    return { grant, person };
  });
}

/** Job map 3.1, question 22. */
const ENDS_WITHIN_DAYS = 60;

/** The duties that are meant to end soon, or should have: all of them for whoever hands duties on, one's own for everybody. */
export async function listEndingDuties(tx: Tx, context: Context) {
  const { actor } = context;
  const by = addDays(todayOf(context), ENDS_WITHIN_DAYS);
  return (await listSitting(tx, actor.storehouseId)).flatMap(({ duty, personId, name, endsOn }) =>
    endsOn !== null && endsOn <= by && (personId === actor.personId || mayGiveDuties(actor))
      ? [{ duty, personId, name, endsOn, isOwn: personId === actor.personId }]
      : [],
  );
}

/** Ends one duty, or refuses when nobody else holds it. The caller has locked the duties. */
async function endDutyOf(
  tx: Tx,
  outside: Outside,
  held: { storehouseId: string; personId: string; duty: Duty },
) {
  const last = await listLastOfDuty(tx, held.storehouseId, [held.personId]);
  if (last.some(({ duty }) => duty === held.duty)) throw new Problem('last-of-duty', { duty: held.duty });
  const grant = await updateDutyEnded(tx, held, outside.now());
  if (!grant) throw new Problem('thing-not-found', { thing: 'duty' });
  return grant;
}

/** Which duties would stand empty without these persons, though somebody must hold them. Locks the duties. */
export async function listLastOfDuty(
  tx: Tx,
  storehouseId: string,
  personIds: readonly string[],
): Promise<Holder[]> {
  await lockDuties(tx, storehouseId);
  const holders = await listHolders(tx, storehouseId);
  return holders.filter(
    ({ personId, duty }) => personIds.includes(personId) && needsSuccessor(personIds, duty, holders),
  );
}

/** Ends every duty of persons who leave, unguarded: the caller has asked `listLastOfDuty`. */
export function endDutiesOf(
  tx: Tx,
  outside: Outside,
  leavers: { storehouseId: string; personIds: readonly string[] },
) {
  return updateDutiesEnded(tx, leavers, outside.now());
}

/**
 * Who of these, the person or a housemate, held a duty at any time after the end of one day, by a moment. Duties
 * are apart at any one moment, but they change hands. Null when neither did.
 */
export async function whoHeld(
  tx: Tx,
  { actor }: Context,
  held: { duty: Duty; afterDay: string | null; until: Date },
): Promise<'oneself' | 'household' | null> {
  const holders = (await listHoldersUntil(tx, actor.storehouseId, held)).filter(
    ({ endedAt }) =>
      held.afterDay === null ||
      endedAt === null ||
      dayInZone(endedAt.getTime(), actor.timeZone) > held.afterDay,
  );
  if (holders.some(({ personId }) => personId === actor.personId)) return 'oneself';
  return holders.some((holder) => isNear(actor, holder)) ? 'household' : null;
}

export function readDutyGrants(context: Context, page: PageQuery) {
  const { after, limit } = page;
  return withTx(context, (tx) => listDutyGrants(tx, context.actor.storehouseId, { after, limit }));
}
