import type { Tx } from '@sheafbook/db';
import type { InvitationRow } from '@sheafbook/db/tables';
import type { Context, Outside } from '../../platform/context.ts';
import type { PageQuery } from '../../platform/paging.ts';
import { hashPassword } from '../../platform/password.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { hashToken } from '../../platform/session.ts';
import { enterStorehouse, withLoginTx, withTx } from '../../platform/with-tx.ts';
import { findContact } from '../contact/queries.ts';
import { loadPresentHousehold } from '../household/queries.ts';
import { joinHousehold, joinWithNewHousehold } from '../household/use-cases.ts';
import { forgetAttempts, insertLogin } from '../session/queries.ts';
import { refuseTooManyAttempts } from '../session/use-cases.ts';
import { loadStorehouse } from '../storehouse/queries.ts';
import {
  findInvitation,
  insertInvitation,
  listInvitations,
  lockInvitation,
  lockInvitationWithToken,
  updateUsed,
  updateWithdrawn,
} from './queries.ts';
import type { Acceptance, InvitationWish } from './schema.ts';

const DAY_MILLISECONDS = 86_400_000;

/**
 * Makes a link for one person. The token leaves once, in this answer; the book keeps its hash. With it comes, when asked
 * for, the address that the household is kept with: whoever invites writes the letter, so that no token waits in the book.
 */
export async function invite(context: Context, wish: InvitationWish) {
  const { storehouseId, personId } = context.actor;
  const token = Buffer.from(context.randomBytes(32)).toString('base64url');
  const madeAt = context.now();
  const made = await withTx(
    context,
    async (tx) => {
      const email = wish.withEmail ? await readEmail(tx, context, wish.householdId) : null;
      if (wish.householdId !== undefined) await loadPresentHousehold(tx, storehouseId, wish.householdId);
      const invitation = await insertInvitation(tx, {
        storehouseId,
        tokenHash: hashToken(token),
        householdId: wish.householdId ?? null,
        householdName: wish.householdName ?? null,
        madeBy: personId,
        madeAt,
        expiresAt: new Date(madeAt.getTime() + wish.days * DAY_MILLISECONDS),
      });
      return { invitation, email };
    },
    wish.withEmail ? { task: 'contact' } : {},
  );
  return { ...made, token };
}

/** Null where none is kept. The household sees the look, and what it was for. */
async function readEmail(tx: Tx, context: Context, householdId: string | undefined): Promise<string | null> {
  if (householdId === undefined) return null;
  const contact = await findContact(tx, context.actor.storehouseId, householdId);
  if (!contact || contact.email === '') return null;
  await notePrivateRead(tx, context, {
    ...{ householdIds: [householdId], what: 'contact', purpose: 'sending an invitation' },
  });
  return contact.email;
}

export function readInvitations(context: Context, page: PageQuery) {
  const { after, limit } = page;
  return withTx(context, (tx) => listInvitations(tx, context.actor.storehouseId, { after, limit }));
}

export function withdrawInvitation(context: Context, invitationId: string): Promise<void> {
  return withTx(context, async (tx) => {
    const invitation = await lockInvitation(tx, context.actor.storehouseId, invitationId);
    if (!invitation) throw new Problem('thing-not-found', { thing: 'invitation' });
    if (invitation.usedAt || invitation.withdrawnAt) throw new Problem('invitation-not-valid');
    await updateWithdrawn(tx, invitation, context.now());
  });
}

/** A link as somebody without a login brings it. Where it comes from is for counting attempts alone. */
export type Bearer = { readonly storehouseId: string; readonly token: string; readonly from: string };

export async function lookAtInvitation(outside: Outside, bearer: Bearer) {
  await refuseGuessing(outside, bearer);
  const found = await withLoginTx(outside, null, async (tx) => {
    await enterStorehouse(tx, bearer.storehouseId, null);
    return findInvitation(tx, bearer.storehouseId, hashToken(bearer.token));
  });
  if (!found) throw new Problem('invitation-not-valid');
  refuseUnlessOpen(found.invitation, outside.now());
  await forgetGuessing(outside, bearer);
  return found;
}

/**
 * Joins by a link: with a new login, or with the one that is signed in (`loginId`), which may so belong to several
 * storehouses. The invitation's row is locked first, so that a link lets one person in however many try at once.
 */
export async function acceptInvitation(
  outside: Outside,
  bearer: Bearer,
  wish: Acceptance & { loginId: string | null },
) {
  const { storehouseId } = bearer;
  // Each try costs a password's hashing, so tries are counted by link too.
  await refuseTooManyAttempts(outside, [`invitation:${hashToken(bearer.token)}`]);
  await lookAtInvitation(outside, bearer);
  const passwordHash = wish.login ? await hashPassword(wish.login.password) : null;
  return withLoginTx(outside, wish.loginId, async (tx) => {
    await enterStorehouse(tx, storehouseId, wish.loginId);
    const invitation = await lockInvitationWithToken(tx, storehouseId, hashToken(bearer.token));
    if (!invitation) throw new Problem('invitation-not-valid');
    refuseUnlessOpen(invitation, outside.now());
    const loginId = await loginFor(tx, outside, { ...wish, passwordHash });
    const joined = await join(tx, outside, { invitation, wish, loginId });
    await updateUsed(tx, invitation, { at: outside.now(), householdId: joined.householdId });
    return { ...joined, storehouseId, loginId, isNewLogin: passwordHash !== null };
  });
}

async function loginFor(
  tx: Tx,
  outside: Outside,
  wish: Acceptance & { loginId: string | null; passwordHash: string | null },
): Promise<string> {
  if (wish.login && wish.passwordHash)
    return insertLogin(tx, {
      email: wish.login.email,
      name: wish.personName,
      passwordHash: wish.passwordHash,
      madeAt: outside.now(),
    });
  if (!wish.loginId) throw new Problem('not-signed-in');
  return wish.loginId;
}

async function join(
  tx: Tx,
  outside: Outside,
  { invitation, wish, loginId }: { invitation: InvitationRow; wish: Acceptance; loginId: string },
) {
  const { storehouseId, householdId } = invitation;
  const { timeZone } = await loadStorehouse(tx, storehouseId);
  const person = { storehouseId, timeZone, loginId, personName: wish.personName };
  if (householdId !== null) {
    if (wish.householdName !== undefined)
      throw fieldProblem(
        'invalid-input',
        'householdName',
        'This invitation is into a household with a name.',
      );
    return joinHousehold(tx, outside, { ...person, householdId });
  }
  const householdName = wish.householdName ?? invitation.householdName;
  if (householdName === null)
    throw fieldProblem('invalid-input', 'householdName', 'A new household needs a name.');
  return joinWithNewHousehold(tx, outside, { ...person, householdName });
}

function refuseUnlessOpen(invitation: InvitationRow, now: Date): void {
  if (invitation.usedAt || invitation.withdrawnAt || invitation.expiresAt <= now)
    throw new Problem('invitation-not-valid');
}

// A hall full of people joins from one address, so a link that is good wipes the count of that address.
const refuseGuessing = (outside: Outside, { from }: Bearer) =>
  refuseTooManyAttempts(outside, [`invitation-from:${from}`]);
const forgetGuessing = (outside: Outside, { from }: Bearer) =>
  withLoginTx(outside, null, (tx) => forgetAttempts(tx, `invitation-from:${from}`));
