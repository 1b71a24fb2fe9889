import type { Tx } from '@sheafbook/db';
import * as ledger from '@sheafbook/ledger';
import { dayInZone, sumOf } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadContainerKind } from '../container-kind/queries.ts';
import { loadHousehold } from '../household/queries.ts';
import { checkedDay, postMoney, refuseEmptyTin } from '../money/use-cases.ts';
import { loadHouseOwners } from '../storehouse/queries.ts';
import { loadSupplier } from '../supplier/queries.ts';
import { mayPayFromTill } from './policy.ts';
import { presentSupply } from './present.ts';
import {
  findSupplyByName,
  findSupplyOfSort,
  insertSupply,
  insertUseBys,
  listSupplies,
  lockSupplies,
  lockSupply,
  nextSessionAt,
  type SupplyOnHand,
  updateSupply,
} from './queries.ts';
import type { Purchase, SupplyCount, SupplyEdit, SupplyWish } from './schema.ts';
import { withUseBys } from './use-by.ts';

export { mayPayFromTill } from './policy.ts';
export { toKept, toSupply } from './session-plan.ts';
export { planSessionSupplies } from './use-cases-plan.ts';

/** All supplies, each with what of it is past its day or will be when the next packing day comes. */
export function findSupplies(context: Context) {
  const { storehouseId, timeZone } = context.actor;
  return withTx(
    context,
    async (tx) => {
      const rows = await listSupplies(tx, storehouseId, { retired: true });
      const nextAt = await nextSessionAt(tx, storehouseId);
      const today = todayOf(context);
      const onDay = nextAt === null ? today : dayInZone(nextAt.getTime(), timeZone);
      return withUseBys(tx, rows, { today, onDay });
    },
    { isReadOnly: true },
  );
}

/** Keeps a further supply; it holds nothing until some is bought, brought or counted. */
export function addSupply(context: Context, wish: SupplyWish): Promise<SupplyOnHand> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    if (wish.containerKindId !== null) await loadContainerKind(tx, storehouseId, wish.containerKindId);
    await refuseTakenName(tx, storehouseId, wish.name);
    await refuseSameSort(tx, storehouseId, wish);
    const supplyId = newId(context);
    await insertSupply(tx, { ...wish, storehouseId, supplyId });
    return lockSupply(tx, storehouseId, supplyId);
  });
}

async function refuseTakenName(tx: Tx, storehouseId: string, name: string): Promise<void> {
  if (await findSupplyByName(tx, storehouseId, name))
    throw fieldProblem('already-there', 'name', `There is a supply called ${name} already.`);
}

/** Gloves and the rest may be of many sorts; of all else a plan counts on one. */
async function refuseSameSort(
  tx: Tx,
  storehouseId: string,
  sort: { kind: string; containerKindId: string | null; sizeMillilitres: number | null },
): Promise<void> {
  if (sort.kind === 'glove' || sort.kind === 'other') return;
  const same = await findSupplyOfSort(tx, storehouseId, sort);
  if (same)
    throw fieldProblem(
      'already-there',
      'kind',
      `${same.name} is kept for this already. Change it, or put it away first.`,
    );
}

/** What it is called and how it is sold. What it is stays: another thing is another supply. */
export function editSupply(context: Context, supplyId: string, edit: SupplyEdit): Promise<SupplyOnHand> {
  const { storehouseId } = context.actor;
  const { version, ...change } = edit;
  return withTx(context, async (tx) => {
    const found = await lockSupply(tx, storehouseId, supplyId);
    const { supply } = found;
    if (supply.version !== version) throw new Problem('stale-version', { newer: presentSupply(found) });
    if (supply.name !== change.name) await refuseTakenName(tx, storehouseId, change.name);
    if (supply.isRetired && !change.isRetired) await refuseSameSort(tx, storehouseId, supply);
    if (change.isRetired && found.onHandPieces > 0)
      throw new Problem('in-use', {
        detail: `${found.onHandPieces} of ${supply.name} are on hand still. Use them up or count them first.`,
      });
    await updateSupply(tx, supply, change);
    return lockSupply(tx, storehouseId, supplyId);
  });
}

/**
 * Writes down what was bought, as one entry: the pieces come into the store and what they cost stands beside them. A household
 * that paid in the shop is owed for it.
 */
export function buySupplies(context: Context, wish: Purchase) {
  const { storehouseId } = context.actor;
  const onDay = checkedDay(context, wish);
  return withTx(context, async (tx) => {
    const supplyIds = wish.lines.map(({ supplyId }) => supplyId);
    if (new Set(supplyIds).size < supplyIds.length)
      throw fieldProblem('invalid-input', 'lines', 'Each supply stands on one line.');
    refuseSpoiltOnArrival(wish.lines, onDay);
    await lockSupplies(tx, storehouseId, supplyIds);
    const minorUnits = sumOf(wish.lines.map((line) => line.minorUnits));
    await refusePayer(tx, context, { ...wish, onDay, minorUnits });
    const { commonId: ownerId } = await loadHouseOwners(tx, storehouseId);
    const drafts = wish.lines.flatMap(({ supplyId, pieces, minorUnits: amount }) => [
      ...ledger.piecesCameIn({ supplyId, ownerId, pieces }),
      ...(amount === 0 ? [] : paidDrafts(wish.paidBy, { supplyId, amountMinorUnits: amount })),
    ]);
    const what = wish.paidBy.who === 'nobody' ? 'supplies-brought' : 'supplies-bought';
    const posted = await postMoney(tx, context, { what, onDay, minorUnits, note: wish.note, drafts });
    const dated = wish.lines.flatMap(({ supplyId, useBy }) => (useBy === null ? [] : [{ supplyId, useBy }]));
    await insertUseBys(tx, { storehouseId, entryId: posted.entryId }, dated);
    return posted;
  });
}

/** A day that was over when the pack came is a slip of the pen, or a pack that nobody should keep. */
function refuseSpoiltOnArrival(lines: Purchase['lines'], onDay: string): void {
  const at = lines.findIndex(({ useBy }) => useBy !== null && useBy < onDay);
  if (at >= 0)
    throw fieldProblem(
      'invalid-input',
      `lines.${at}.useBy`,
      'This day was over when it came. Read the day on the pack again; what is past it is not kept.',
    );
}

async function refusePayer(
  tx: Tx,
  context: Context,
  { paidBy, ...wish }: Purchase & { onDay: string; minorUnits: number },
): Promise<void> {
  const { storehouseId } = context.actor;
  if (paidBy.who === 'supplier') await loadSupplier(tx, storehouseId, paidBy.supplierId);
  if (paidBy.who === 'household') await loadHousehold(tx, storehouseId, paidBy.householdId);
  if (paidBy.who !== 'till') return;
  if (!mayPayFromTill(context.actor))
    throw new Problem('duty-missing', {
      detail: 'The treasurer pays from the bank and the tin. Say which household paid in the shop.',
    });
  await refuseEmptyTin(tx, context, { till: paidBy.till, minorUnits: wish.minorUnits });
}

function paidDrafts(paidBy: Purchase['paidBy'], of: { supplyId: string; amountMinorUnits: number }) {
  if (paidBy.who === 'supplier') return ledger.suppliesBought({ ...of, supplierId: paidBy.supplierId });
  if (paidBy.who === 'household')
    return ledger.suppliesPaid({ ...of, paidBy: { householdId: paidBy.householdId } });
  if (paidBy.who === 'nobody') return ledger.suppliesPaid({ ...of, paidBy: 'store-fund' });
  return ledger.suppliesPaid({ ...of, paidBy: { till: paidBy.till === 'cash' ? 'cash_tin' : 'bank' } });
}

/** Brings the book to what was counted. Refused when something moved since, so that nothing is counted away twice. */
export function countSupply(context: Context, supplyId: string, wish: SupplyCount) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const { onHandPieces, worthMinorUnits } = await lockSupply(tx, storehouseId, supplyId);
    if (onHandPieces !== wish.bookPieces)
      throw fieldProblem(
        'stale-version',
        'bookPieces',
        'Something was bought or used since it was counted. Count it again.',
      );
    const pieces = Math.abs(wish.countedPieces - onHandPieces);
    if (pieces === 0)
      throw new Problem('nothing-to-post', {
        detail: 'The count agrees with the book; nothing is to be booked.',
      });
    const isOver = wish.countedPieces > onHandPieces;
    const { commonId: ownerId } = await loadHouseOwners(tx, storehouseId);
    const cost = ledger.averageCost({ pieces: onHandPieces, minorUnits: worthMinorUnits, wanted: pieces });
    const of = { supplyId, ownerId, pieces };
    return postMoney(tx, context, {
      ...{ what: 'supplies-counted', onDay: todayOf(context), minorUnits: cost, note: wish.reason },
      subjectId: supplyId,
      drafts: [
        ...(isOver ? ledger.piecesCameIn(of) : ledger.piecesWentOut(of)),
        ...ledger.suppliesCounted({ supplyId, differenceMinorUnits: isOver ? cost : -cost }),
      ],
    });
  });
}
