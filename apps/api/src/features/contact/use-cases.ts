import type { HouseholdContactRow } from '@sheafbook/db/tables';
import type { Context } from '../../platform/context.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadPresentHousehold } from '../household/queries.ts';
import { loadOwnHousehold } from '../household/use-cases.ts';
import { mayReadForTask } from './policy.ts';
import { presentContact } from './present.ts';
import { findContact, insertContact, updateContact } from './queries.ts';
import type { ContactEdit } from './schema.ts';

/**
 * Reads a household's telephone and address: one's own; what the household shows to members; or, for a duty's task, with
 * a purpose that is written down and shown to the household.
 */
export async function readContact(
  context: Context,
  householdId: string,
  purpose: string | undefined,
): Promise<HouseholdContactRow | undefined> {
  const { actor } = context;
  const isOwn = actor.householdId === householdId;
  if (!isOwn && purpose !== undefined && mayReadForTask(actor))
    return readForTask(context, householdId, purpose);
  return withTx(context, async (tx) => {
    await loadPresentHousehold(tx, actor.storehouseId, householdId);
    const contact = await findContact(tx, actor.storehouseId, householdId);
    if (isOwn && actor.isHelping)
      await notePrivateRead(tx, context, {
        householdIds: [householdId],
        what: 'contact',
        purpose: 'helping',
      });
    if (isOwn || contact) return contact;
    if (mayReadForTask(actor))
      throw fieldProblem(
        'invalid-input',
        'purpose',
        'Say what you need it for; the household sees your words.',
      );
    throw new Problem('not-your-household');
  });
}

function readForTask(context: Context, householdId: string, purpose: string) {
  const { storehouseId } = context.actor;
  return withTx(
    context,
    async (tx) => {
      await loadPresentHousehold(tx, storehouseId, householdId);
      await notePrivateRead(tx, context, { householdIds: [householdId], what: 'contact', purpose });
      return findContact(tx, storehouseId, householdId);
    },
    { task: 'contact' },
  );
}

export function editContact(context: Context, householdId: string, edit: ContactEdit) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    await loadOwnHousehold(tx, context, householdId);
    const row = { ...edit, storehouseId, householdId };
    const written =
      edit.version === 0 ? await insertContact(tx, { ...row, version: 1 }) : await updateContact(tx, row);
    if (written) return written;
    const newer = await findContact(tx, storehouseId, householdId);
    throw new Problem('stale-version', { newer: presentContact(householdId, newer) });
  });
}
