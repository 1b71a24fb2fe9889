import type { Tx } from '@sheafbook/db';
import type { BagRow } from '@sheafbook/db/tables';
import { bagLanded } from '@sheafbook/ledger';
import type { Context } from '../../platform/context.ts';
import { postEntry, reverseEntry } from '../../platform/post-entry.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { loadDelivery } from '../delivery/queries.ts';
import { endHoldsOfEmpty } from '../hold/queries.ts';
import { loadClosedThrough } from '../period/queries.ts';
import { loadHouseOwners, loadOutsideVessels } from '../storehouse/queries.ts';
import { listContents, listReceipts } from './queries.ts';

/** Net grams from the supplier into each bag. Where the books are closed by now, it is today's entry and names the day. */
export async function landBags(
  tx: Tx,
  context: Context,
  { bags, arrivedOn }: { bags: readonly BagRow[]; arrivedOn: string },
): Promise<void> {
  const { storehouseId } = context.actor;
  const { unassignedId: unassignedOwnerId } = await loadHouseOwners(tx, storehouseId);
  const vesselIdOf = await loadOutsideVessels(tx, storehouseId);
  const closedThrough = await loadClosedThrough(tx, storehouseId);
  const isClosed = closedThrough !== null && arrivedOn <= closedThrough;
  const when = isClosed
    ? { onDay: todayOf(context), note: `Arrived on ${arrivedOn}.` }
    : { onDay: arrivedOn };
  for (const { bagId, buyId, lotId, netGrams: amountGrams } of bags) {
    const place = { supplierVesselId: vesselIdOf('supplier'), bagVesselId: bagId, unassignedOwnerId };
    const drafts = bagLanded({ lotId, ...place, amountGrams });
    await postEntry(tx, context, { what: 'bag-landed', ...when, buyId, subjectId: bagId, drafts });
  }
}

/** A bag that was refused is accepted after all. */
export async function landAfterAll(tx: Tx, context: Context, bag: BagRow): Promise<void> {
  if (bag.netGrams === 0)
    throw fieldProblem('does-not-add-up', 'decision', 'The bag is empty, so there is nothing to accept.');
  const { arrivedOn } = await loadDelivery(tx, bag.storehouseId, bag.deliveryId);
  await landBags(tx, context, { bags: [bag], arrivedOn });
}

/** An accepted bag is refused after all: what brought it in is undone, newest first. */
export async function sendBack(tx: Tx, context: Context, bag: BagRow): Promise<void> {
  const contents = await listContents(tx, bag.storehouseId, bag);
  const [nobodys] = contents;
  const isWhole = contents.length === 1 && nobodys?.kind === 'unassigned' && nobodys.grams === bag.netGrams;
  if (!isWhole)
    throw new Problem('cannot-reverse', {
      detail: 'Part of this bag has been shared out, lost or taken. Undo that first.',
      bagId: bag.bagId,
      netGrams: bag.netGrams,
      unassignedGrams: contents.find((content) => content.kind === 'unassigned')?.grams ?? 0,
    });
  for (const receipt of await listReceipts(tx, bag.storehouseId, bag.bagId))
    await reverseEntry(tx, context, {
      what: 'bag-refused',
      onDay: todayOf(context),
      buyId: bag.buyId,
      subjectId: bag.bagId,
      reversesId: receipt.entryId,
    });
  const vesselIds = [bag.bagId];
  await endHoldsOfEmpty(
    tx,
    { storehouseId: bag.storehouseId, vesselIds },
    { finding: 'The bag was refused and went back.', at: context.now() },
  );
}
