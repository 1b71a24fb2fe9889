import type { Tx } from '@sheafbook/db';
import type { LoanRow, PhotoRow } from '@sheafbook/db/tables';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadItem, loadUnit, lockItem } from '../equipment/queries.ts';
import { findNextLoan, loadLoan } from '../loan/queries.ts';
import { mayAddPhotosOfItem, mayAddPhotosOfLoan, maySeePhotosOfLoan } from './policy.ts';
import { insertPhoto, type PhotoFacts } from './queries.ts';
import { listPhotosOfItem, requirePartOfItem } from './queries-equipment.ts';
import { readJpeg } from './read-jpeg.ts';
import type { EquipmentPhotoQuery, EquipmentPhotoWish } from './schema.ts';

/**
 * Keeps a photo of a thing or a part of it, taken by its keeper, or of how a piece went out and came back, taken by the
 * keeper or by whoever borrowed it. As of any photo only what draws the picture is kept.
 */
export function addEquipmentPhoto(
  context: Context,
  itemId: string,
  wish: EquipmentPhotoWish,
): Promise<PhotoFacts> {
  const { actor } = context;
  const { storehouseId, personId } = actor;
  const { partId = null, loan, note } = wish;
  const { content, widthPixels, heightPixels } = readJpeg(wish.contentBase64);
  return withTx(context, async (tx) => {
    if (loan)
      await lockItem(tx, storehouseId, itemId); // so that it does not go out meanwhile
    else await loadItem(tx, storehouseId, itemId);
    if (partId !== null) await requirePartOfItem(tx, storehouseId, { itemId, partId });
    const of = loan ? await loadLoanOfItem(tx, storehouseId, { itemId, loanId: loan.loanId }) : null;
    if (of ? !mayAddPhotosOfLoan(actor, of.householdId) : !mayAddPhotosOfItem(actor))
      throw new Problem(of ? 'not-your-household' : 'duty-missing');
    if (of) await refuseAfterNext(tx, of);
    return insertPhoto(tx, {
      ...{ storehouseId, content, widthPixels, heightPixels, note },
      ...{ photoId: newId(context), equipmentItemId: itemId, equipmentPartId: partId },
      ...{ equipmentUnitId: of?.equipmentUnitId, loanId: of?.loanId, moment: loan?.moment },
      ...{ addedBy: personId, addedAt: context.now() },
    });
  });
}

/** The next borrower's check-out is where evidence about the loan before ends: by then the piece is in other hands (job map 8). */
async function refuseAfterNext(tx: Tx, loan: LoanRow): Promise<void> {
  if (await findNextLoan(tx, loan))
    throw new Problem('not-out', {
      detail: 'The piece has gone out again since: a photo of it shows no more how this loan was.',
    });
}

async function loadLoanOfItem(
  tx: Tx,
  storehouseId: string,
  { itemId, loanId }: { itemId: string; loanId: string },
): Promise<LoanRow> {
  const loan = await loadLoan(tx, storehouseId, loanId);
  const { equipmentItemId } = await loadUnit(tx, storehouseId, loan.equipmentUnitId);
  if (equipmentItemId !== itemId) throw new Problem('thing-not-found', { thing: 'loan' });
  return loan;
}

/** The photos of a thing and its parts, which every member sees, or those of one loan, for those who see the loan. */
export function readEquipmentPhotos(
  context: Context,
  itemId: string,
  { loanId }: EquipmentPhotoQuery,
): Promise<PhotoFacts[]> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    await loadItem(tx, storehouseId, itemId);
    if (loanId !== undefined)
      await lookAtLoan(tx, context, await loadLoanOfItem(tx, storehouseId, { itemId, loanId }));
    return listPhotosOfItem(tx, storehouseId, { itemId, loanId });
  });
}

/** Refuses whoever may not see the loan that a photo is of; who sees another household's is written down. */
export async function requireSeesLoanOf(tx: Tx, context: Context, { loanId }: PhotoRow): Promise<void> {
  if (loanId !== null) await lookAtLoan(tx, context, await loadLoan(tx, context.actor.storehouseId, loanId));
}

async function lookAtLoan(tx: Tx, context: Context, { householdId }: LoanRow): Promise<void> {
  if (!maySeePhotosOfLoan(context.actor, householdId)) throw new Problem('not-your-household');
  await notePrivateRead(tx, context, {
    householdIds: [householdId],
    ...{ what: 'loans', purpose: 'looking after equipment' },
  });
}

/** What was photographed of a loan stays once the loan is settled, as its entries do. */
export async function refuseSettledLoan(tx: Tx, { storehouseId, loanId }: PhotoRow): Promise<void> {
  if (loanId !== null && (await loadLoan(tx, storehouseId, loanId)).inAt !== null)
    throw new Problem('not-out', { detail: 'The loan is settled, and its photos stay with it.' });
}
