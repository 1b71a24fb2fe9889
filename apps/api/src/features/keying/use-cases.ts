import type { Tx } from '@sheafbook/db';
import type { BuyRow } from '@sheafbook/db/tables';
import { instantOfWallTime, isWallTime, readCode } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { fieldProblem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadBuy } from '../buy/queries.ts';
import { seesAllKeyings } from './policy.ts';
import { findPaperId, insertKeyings, listKeyings, type SeenKeying } from './queries.ts';
import type { Pen } from './schema.ts';

type Keyed = {
  readonly what: 'pledge' | 'delivery' | 'count' | 'bag' | 'weight' | 'pick-up';
  readonly subjectIds: readonly string[];
  readonly buy: Pick<BuyRow, 'buyId' | 'madeAt'>;
  readonly householdId?: string;
  readonly pen: Pen;
};

/**
 * Keeps when a pen wrote what is keyed in now, in the transaction of the command itself. It is kept and shown beside the
 * time of keying; rank, deadline and day of booking go by the keying, which nobody can date back.
 */
export async function keepKeying(tx: Tx, context: Context, keyed: Keyed): Promise<void> {
  const { what, subjectIds, buy, householdId, pen } = keyed;
  if (pen.writtenAt === undefined) return;
  const { actor } = context;
  const { storehouseId } = actor;
  const keyedAt = context.now();
  const writtenAt = instantOf(context, pen.writtenAt);
  refuseImpossible({ writtenAt, keyedAt, buy });
  const paperId = await findPaper(tx, storehouseId, pen.paperCode);
  const isEnteredFor = householdId !== undefined && (actor.isHelping || actor.householdId !== householdId);
  await insertKeyings(
    tx,
    subjectIds.map((subjectId) => ({
      ...{ storehouseId, what, subjectId, paperId, writtenAt, keyedAt, isEnteredFor },
      keyingId: newId(context),
      buyId: buy.buyId,
      householdId: householdId ?? null,
      keyedBy: actor.personId,
    })),
  );
}

const instantOf = ({ actor }: Context, text: string): Date =>
  new Date(isWallTime(text) ? instantOfWallTime(text, actor.timeZone) : text);

function refuseImpossible(at: { writtenAt: Date; keyedAt: Date; buy: Pick<BuyRow, 'madeAt'> }): void {
  if (at.writtenAt > at.keyedAt)
    throw fieldProblem(
      'invalid-input',
      'writtenAt',
      'This is still to come; what is keyed in was written before.',
    );
  if (at.writtenAt < at.buy.madeAt)
    throw fieldProblem(
      'invalid-input',
      'writtenAt',
      'The buy was planned after that; look at the day again.',
    );
}

async function findPaper(tx: Tx, storehouseId: string, text: string | undefined): Promise<string | null> {
  if (text === undefined || text === '') return null;
  const code = readCode(text);
  const paperId = code && (await findPaperId(tx, storehouseId, code));
  if (!paperId) throw fieldProblem('thing-not-found', 'paperCode', 'No paper here has this code.');
  return paperId;
}

/** What was keyed in for a buy: all of it for the duties that see its pledges, else what is no other household's. */
export function readKeyings(context: Context, buyId: string): Promise<SeenKeying[]> {
  const { actor } = context;
  return withTx(context, async (tx) => {
    await loadBuy(tx, actor.storehouseId, buyId);
    const keyings = await listKeyings(tx, actor.storehouseId, buyId);
    const seen = keyings.filter(
      ({ householdId }) => householdId === null || householdId === actor.householdId || seesAllKeyings(actor),
    );
    const householdIds = seen.flatMap(({ householdId }) => householdId ?? []);
    await notePrivateRead(tx, context, {
      householdIds,
      what: 'pledges',
      purpose: 'what was keyed in for a buy',
    });
    return seen;
  });
}
