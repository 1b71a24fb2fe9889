import type { Tx } from '@sheafbook/db';
import { dayInZone, readCode } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { refuseFutureDay } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import type { SeenHold } from './queries.ts';
import type { NoticePart } from './queries-notice.ts';
import { insertSlip, listSlips, type SlipBack } from './queries-slip.ts';
import type { RecallSlip } from './schema.ts';
import { loadHouseholdParts, loadPantryParts, loadStanding } from './use-cases-notice.ts';

/**
 * Keys in the slip of a recall notice that came back on paper: it is their word, by whoever signed it, and they count as
 * reached from now on. A later slip of theirs stands in its place.
 */
export function keySlip(context: Context, holdId: string, slip: RecallSlip): Promise<SlipBack | undefined> {
  const { storehouseId, personId: keyedBy } = context.actor;
  const { householdId, pantryId, signedBy, writtenOn, note } = slip;
  const inside = async (tx: Tx) => {
    const seen = await loadStanding(tx, storehouseId, holdId);
    refuseWrongDay(context, seen, writtenOn);
    const lines = linesOf(slip, await partsOf(tx, seen, slip));
    if (householdId !== null)
      await notePrivateRead(tx, context, { householdIds: [householdId], what: 'notices', purpose: 'recall' });
    const holdSlipId = newId(context);
    const keyedAt = context.now();
    await insertSlip(
      tx,
      {
        ...{ storehouseId, holdSlipId, holdId, householdId, pantryId },
        ...{ signedBy, writtenOn, note, keyedBy, keyedAt },
      },
      lines,
    );
    return (await listSlips(tx, seen.hold)).find(
      (back) => back.householdId === householdId && back.pantryId === pantryId,
    );
  };
  return withTx(context, inside, { task: 'notice' });
}

function refuseWrongDay(context: Context, { hold }: SeenHold, writtenOn: string): void {
  refuseFutureDay(context, { field: 'writtenOn', on: writtenOn });
  if (writtenOn < dayInZone(hold.heldAt.getTime(), context.actor.timeZone))
    throw fieldProblem(
      'invalid-input',
      'writtenOn',
      'The hold began after that; look at the day on the slip again.',
    );
}

/** What stands on their notice; whoever was told of none of it has no slip to give back. */
function partsOf(tx: Tx, seen: SeenHold, { householdId, pantryId }: RecallSlip): Promise<NoticePart[]> {
  if (householdId !== null) return loadHouseholdParts(tx, seen, householdId);
  if (pantryId !== null) return loadPantryParts(tx, seen, pantryId);
  throw new Problem('invalid-input');
}

function linesOf({ became }: RecallSlip, parts: readonly NoticePart[]) {
  const seen = new Set<string>();
  const lines = became.map((line, at) => {
    const code = readCode(line.code) ?? '';
    const part = parts.find((one) => one.code === code);
    if (!part)
      throw fieldProblem('thing-not-found', `became.${at}.code`, 'This code is not on their notice.');
    if (seen.has(code))
      throw fieldProblem('invalid-input', `became.${at}.code`, 'This code stands here twice.');
    seen.add(code);
    return { vesselId: part.vesselId, became: line.became };
  });
  if (lines.length === 0 && parts.length > 0)
    throw fieldProblem('invalid-input', 'became', 'Say what became of at least one of the codes.');
  return lines;
}
