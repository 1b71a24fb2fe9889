import type { Tx } from '@sheafbook/db';
import type { PackingSessionRow } from '@sheafbook/db/tables';
import { sumOf } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { digestOf } from '../../platform/digest.ts';
import { newId } from '../../platform/new-id.ts';
import { WHOLE_LIST } from '../../platform/paging.ts';
import { postEntry, reverseEntry } from '../../platform/post-entry.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listItems } from '../equipment/queries.ts';
import { loadHousehold } from '../household/queries.ts';
import { refuseEmptyTin } from '../money/use-cases.ts';
import { writeNotice } from '../notice/use-cases.ts';
import { loadSession, lockSession, updateSession } from '../packing-session/queries.ts';
import { requireSessionStage } from '../packing-session/use-cases.ts';
import { listPours } from '../pour-log/queries.ts';
import { loadHouseOwners } from '../storehouse/queries.ts';
import { listSupplies, lockSupplies } from '../supply/queries.ts';
import { mayPayFromTill } from '../supply/use-cases.ts';
import { fillersOf, listCosts, shareCosts } from './costs.ts';
import { settlementDrafts } from './postings.ts';
import { proposeUse } from './proposal.ts';
import {
  closeClearing,
  findSettlement,
  insertSettlement,
  listCostsOfSettlement,
  listSharesOfSettlement,
  markSettlementUndone,
} from './queries.ts';
import type { SettlementPosting, SettlementWish } from './schema.ts';

/** Where a session stands: who filled what, what the log says was used, and what was posted if it is settled. */
export function readSettlement(context: Context, sessionId: string) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const session = await loadSession(tx, storehouseId, sessionId);
    const pours = await listPours(tx, storehouseId, sessionId);
    const fillers = fillersOf(pours);
    await noteRead(tx, context, fillers);
    const rows = await listSupplies(tx, storehouseId);
    const settlement = await findSettlement(tx, storehouseId, sessionId);
    return {
      ...{ session, fillers, settlement },
      proposal: await proposeUse(tx, { session, pours, rows }),
      items: await listItems(tx, storehouseId, { limit: WHOLE_LIST }),
      posted: settlement ? await loadPosted(tx, storehouseId, settlement.sessionSettlementId) : null,
    };
  });
}
export type SettlementReading = Awaited<ReturnType<typeof readSettlement>>;

async function loadPosted(tx: Tx, storehouseId: string, settlementId: string) {
  const costs = await listCostsOfSettlement(tx, storehouseId, settlementId);
  const shares = await listSharesOfSettlement(tx, storehouseId, { settlementId });
  return { costs, shares };
}

const noteRead = (tx: Tx, context: Context, of: readonly { householdId: string }[]) =>
  notePrivateRead(tx, context, {
    householdIds: of.map(({ householdId }) => householdId),
    ...{ what: 'what a packing day costs it', purpose: 'settlement of a packing session' },
  });

/** What settling would post, to the cent, without posting it. */
export function previewSettlement(context: Context, sessionId: string, wish: SettlementWish) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const session = await loadSession(tx, storehouseId, sessionId);
    requireSigned(session);
    const reckoned = await reckon(tx, context, { session, wish });
    await noteRead(tx, context, reckoned.fillers);
    return reckoned;
  });
}
export type Reckoned = Awaited<ReturnType<typeof previewSettlement>>;

function requireSigned(session: PackingSessionRow): void {
  if (session.stage === 'open' || session.stage === 'running')
    throw new Problem('session-stage-wrong', {
      detail: 'Sign the grams of this session first; then it can be settled.',
      stage: session.stage,
    });
  requireSessionStage(session, 'signed');
}

/** What is shown beforehand and what is posted come from here, so that they can't differ. */
async function reckon(
  tx: Tx,
  context: Context,
  { session, wish }: { session: PackingSessionRow; wish: SettlementWish },
) {
  const { storehouseId } = context.actor;
  refuseTwice(wish);
  const supplyIds = wish.supplies.map(({ supplyId }) => supplyId);
  const supplies = supplyIds.length === 0 ? [] : await lockSupplies(tx, storehouseId, supplyIds);
  const pours = await listPours(tx, storehouseId, session.packingSessionId);
  const items = await listItems(tx, storehouseId, { limit: WHOLE_LIST });
  await refusePayers(tx, context, wish);
  const fillers = fillersOf(pours);
  const shared = shareCosts(listCosts(wish, { session, pours, supplies, items }), fillers);
  const seen = digestOf([session.packingSessionId, fillers, shared.costs]);
  return { session, fillers, ...shared, seen };
}

function refuseTwice({ supplies, equipmentFees }: SettlementWish): void {
  const ids = [...supplies.map(({ supplyId }) => supplyId), ...equipmentFees.map(({ itemId }) => itemId)];
  if (new Set(ids).size < ids.length)
    throw new Problem('invalid-input', { detail: 'Each supply and each thing stands on one line.' });
}

async function refusePayers(tx: Tx, context: Context, { sundries }: SettlementWish): Promise<void> {
  for (const { paidBy } of sundries) {
    if (paidBy.who === 'household') await loadHousehold(tx, context.actor.storehouseId, paidBy.householdId);
    else if (!mayPayFromTill(context.actor))
      throw new Problem('duty-missing', {
        detail: 'The treasurer pays from the bank and the tin. Say which household paid in the shop.',
      });
  }
  const fromTin = sundries.filter(({ paidBy }) => paidBy.who === 'till' && paidBy.till === 'cash');
  const minorUnits = sumOf(fromTin.map((sundry) => sundry.minorUnits));
  if (minorUnits > 0) await refuseEmptyTin(tx, context, { till: 'cash', minorUnits });
}

/**
 * Posts what a day cost as one entry, moves the session on and tells whoever is charged. The session's row is locked, so that
 * two who settle at once come one after the other, and the second is refused.
 */
export function settleDay(context: Context, sessionId: string, { seen, ...wish }: SettlementPosting) {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    const session = await lockSession(tx, storehouseId, sessionId);
    requireSigned(session);
    const reckoned = await reckon(tx, context, { session, wish });
    if (reckoned.seen !== seen)
      throw new Problem('settlement-moved', { totalMinorUnits: reckoned.totalMinorUnits });
    const { commonId: ownerId } = await loadHouseOwners(tx, storehouseId);
    const drafts = settlementDrafts(reckoned, { sessionId, ownerId });
    const onDay = todayOf(context);
    const entry =
      drafts.length === 0
        ? null
        : await postEntry(tx, context, {
            ...{ what: 'session-settled', onDay, subjectId: sessionId, note: wish.note, drafts },
          });
    await keepSettlement(tx, context, {
      reckoned,
      entryId: entry?.entryId ?? null,
      note: wish.note,
      personId,
    });
    await closeClearing(tx, storehouseId, sessionId);
    const settled = await updateSession(tx, session, { stage: 'settled' });
    await tellCharged(tx, context, reckoned);
    return { ...reckoned, session: settled, entry };
  });
}
export type Settled = Awaited<ReturnType<typeof settleDay>>;

async function keepSettlement(
  tx: Tx,
  context: Context,
  kept: { reckoned: Reckoned; entryId: string | null; note: string; personId: string },
): Promise<void> {
  const { storehouseId } = context.actor;
  const { reckoned, entryId, note, personId: settledBy } = kept;
  const sessionSettlementId = newId(context);
  const of = { storehouseId, sessionSettlementId };
  await insertSettlement(
    tx,
    {
      ...{ ...of, packingSessionId: reckoned.session.packingSessionId, entryId, note },
      ...{ settledBy, settledAt: context.now() },
    },
    reckoned.costs.map(({ name: kind, what, supplyId, pieces, minorUnits, borneBy }, position) => ({
      ...{ ...of, position, kind, what, supplyId, pieces, minorUnits, borneBy },
    })),
    reckoned.costs.flatMap(({ shares }, position) =>
      shares.map(({ householdId, containers, minorUnits }) => ({
        ...{ ...of, position, householdId, containers, minorUnits },
      })),
    ),
  );
}

/** No letter names an amount; the page does. */
async function tellCharged(tx: Tx, context: Context, { session, charges }: Reckoned): Promise<void> {
  for (const { householdId, minorUnits } of charges)
    if (minorUnits > 0)
      await writeNotice(tx, context, {
        ...{ kind: 'packing', audience: { to: 'household', householdId }, about: session.name },
        says: `${session.name} is settled. Look at what your containers cost.`,
        path: `/packing-sessions/${session.packingSessionId}`,
      });
}

/** Takes a settlement back as a whole: the pieces stand on the shelf again and nobody is charged for the day. */
export function undoSettlement(context: Context, sessionId: string, { reason }: { reason: string }) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const session = await lockSession(tx, storehouseId, sessionId);
    requireSessionStage(session, 'settled');
    const settlement = await findSettlement(tx, storehouseId, sessionId);
    if (!settlement) throw new Problem('thing-not-found', { thing: 'settlement' });
    const entry =
      settlement.entryId === null
        ? null
        : await reverseEntry(tx, context, {
            ...{ what: 'session-settlement-undone', onDay: todayOf(context), reversesId: settlement.entryId },
            ...{ subjectId: sessionId, note: reason },
          });
    const undoneEntryId = entry?.entryId ?? null;
    await markSettlementUndone(tx, settlement, { undoneAt: context.now(), undoneEntryId });
    const reopened = await updateSession(tx, session, { stage: 'signed' });
    return { session: reopened, entry };
  });
}
export type Undone = Awaited<ReturnType<typeof undoSettlement>>;
