import type { Tx } from '@sheafbook/db';
import type { Context } from '../../platform/context.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { fieldProblem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { type Exceptions, listCorrections, listOverrides } from './queries.ts';
import type { ExceptionsQuery } from './schema.ts';

export { mayReadExceptions } from './policy.ts';
export { presentExceptions } from './present.ts';

type Days = Pick<ExceptionsQuery, 'fromOn' | 'toOn'>;

/** What was taken back and what was decided against the rule in some days, each with the reason written then. */
export function readExceptions(context: Context, days: Days) {
  const { fromOn, toOn } = days;
  if (fromOn !== undefined && toOn !== undefined && fromOn > toOn)
    throw fieldProblem('invalid-input', 'toOn', 'The last day lies before the first.');
  return withTx(context, (tx) => readExceptionsInside(tx, context, days));
}

/** Each household that was let off or written off finds in its record that somebody read why. */
async function readExceptionsInside(tx: Tx, context: Context, days: Days): Promise<Exceptions> {
  const { storehouseId, currency, timeZone } = context.actor;
  const span = { fromOn: days.fromOn, toOn: days.toOn, timeZone };
  const corrections = await listCorrections(tx, storehouseId, span);
  const overrides = await listOverrides(tx, storehouseId, span);
  const householdIds = overrides.flatMap(({ householdId }) => (householdId === null ? [] : [householdId]));
  await notePrivateRead(tx, context, {
    householdIds,
    what: 'waivers and write-offs',
    purpose: 'exceptions of a review',
  });
  return { currency, corrections, overrides };
}
