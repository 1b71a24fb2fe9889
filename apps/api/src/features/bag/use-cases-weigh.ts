import type { Tx } from '@sheafbook/db';
import type { BagRow } from '@sheafbook/db/tables';
import { bagLost, bagReceiptCorrected, discarded, type MovementDraft, reweighed } from '@sheafbook/ledger';
import { explainedByMoisture } from '@sheafbook/packing';
import type { Context } from '../../platform/context.ts';
import { type PostedEntry, postEntry } from '../../platform/post-entry.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { endHoldsOfEmpty, listHeld } from '../hold/queries.ts';
import { keepKeying } from '../keying/use-cases.ts';
import { loadHouseOwners, loadOutsideVessels } from '../storehouse/queries.ts';
import {
  type BagContent,
  listContents,
  loadSeenBag,
  noteMoisture,
  type SeenBag,
  updateBag,
  updateMoisture,
} from './queries.ts';
import type { BagDiscard, BagLoss, BagWeight } from './schema.ts';
import { staleBag, withBag } from './use-cases.ts';
import { type BookedWeight, bookWeight } from './weighing.ts';

/** What may still happen to a bag on hold: it is tested, swept up or thrown away. */
const ALLOWED_ON_HOLD: ReadonlySet<string> = new Set(['spilled', 'sampled', 'discarded']);

/**
 * Weighs a bag, once; weighing it again is a correction and needs its reason. While a bag is as it came, the
 * difference is the supplier's; once somebody owns part of it or something left it, its owners bear it in proportion.
 */
export function weighBag(context: Context, bagId: string, wish: BagWeight): Promise<SeenBag> {
  return withBag(
    context,
    bagId,
    async (tx, bag, buy) => {
      if (bag.decision === 'refused')
        throw new Problem('not-enough-left', {
          detail: 'The bag was refused, so there is nothing to weigh.',
        });
      if (bag.weighedAt && wish.reason === '')
        throw new Problem('bag-already-weighed', {
          detail: 'This bag has been weighed already. Weigh it again with a reason.',
          fields: [{ field: 'reason', message: 'Say why it is weighed again.' }],
          netGrams: bag.netGrams,
          weighedAt: bag.weighedAt.toISOString(),
        });
      if (bag.version !== wish.version) throw await staleBag(tx, bag);
      const contents = await listContents(tx, bag.storehouseId, bag);
      await bookDifference(tx, context, { bag, contents, wish });
      if (wish.moisture) await updateMoisture(tx, bag, wish.moisture.isTenths);
      await keepKeying(tx, context, { what: 'weight', subjectIds: [bagId], buy, pen: wish });
      return loadSeenBag(tx, bag.storehouseId, bagId);
    },
    { buyId: wish.buyId },
  );
}

type Weighing = { bag: BagRow; contents: readonly BagContent[]; wish: BagWeight };

async function bookDifference(tx: Tx, context: Context, weighing: Weighing): Promise<void> {
  const { bag, contents, wish } = weighing;
  const heldGrams = contents.reduce((sum, content) => sum + content.grams, 0);
  if (wish.moisture && bag.weighedAt === null && heldGrams === bag.netGrams)
    throw fieldProblem(
      'invalid-input',
      'moisture',
      'Moisture explains what a second weighing finds. This is the first.',
    );
  if (heldGrams !== bag.netGrams) return weighWhatIsLeft(tx, context, { ...weighing, heldGrams });
  const { grossGrams, tareGrams } = wish;
  const booked = bookWeight({ declaredGrams: bag.declaredGrams, grossGrams, tareGrams });
  const isNobodys = contents.every((content) => content.kind === 'unassigned');
  if (isNobodys) return correctReceipt(tx, context, { ...weighing, booked });
  await shareDifference(tx, context, { ...weighing, scaleGrams: booked.netGrams });
  const { netGrams: _, ...scale } = booked; // the book took in what it took in; its owners bore the difference
  await updateBag(tx, bag, { ...scale, weighedAt: context.now() });
}

/** Nothing has left the bag and nobody owns of it: the book takes in what the scale says. */
async function correctReceipt(
  tx: Tx,
  context: Context,
  { booked, ...weighing }: Weighing & { booked: BookedWeight },
): Promise<void> {
  const { bag, wish } = weighing;
  if (booked.netGrams === 0)
    throw fieldProblem('does-not-add-up', 'grossGrams', 'The bag is empty. Refuse it instead.');
  const { unassignedId: unassignedOwnerId } = await loadHouseOwners(tx, bag.storehouseId);
  const vesselIdOf = await loadOutsideVessels(tx, bag.storehouseId);
  const change = explainedIn(weighing, booked.netGrams);
  // What dried or grew damp is still there or gone, and was never short: the supplier's is the rest.
  if (change)
    await shareDifference(tx, context, {
      ...weighing,
      ...{ scaleGrams: booked.netGrams, toGrams: bag.netGrams + change.grams },
    });
  const receivedGrams = booked.netGrams - (change?.grams ?? 0);
  const drafts = bagReceiptCorrected({
    lotId: bag.lotId,
    supplierVesselId: vesselIdOf('supplier'),
    bagVesselId: bag.bagId,
    unassignedOwnerId,
    bookedGrams: bag.netGrams,
    weighedGrams: receivedGrams,
  });
  await updateBag(tx, bag, { ...booked, netGrams: receivedGrams, weighedAt: context.now() });
  await postOfBag(tx, context, { bag, what: 'bag-weighed', drafts, note: wish.reason });
}

/** Part of the bag is gone, so the scale can't say what came; it says what is left (ledger-notes 6.9). */
async function weighWhatIsLeft(
  tx: Tx,
  context: Context,
  { heldGrams, ...weighing }: Weighing & { heldGrams: number },
): Promise<void> {
  const { bag, wish } = weighing;
  if (wish.reason === '')
    throw fieldProblem('invalid-input', 'reason', 'Part of this bag has left. Say why the rest is weighed.');
  const { grossGrams, tareGrams } = bookWeight({ ...wish, declaredGrams: bag.declaredGrams });
  const weighedGrams = (grossGrams ?? 0) - (tareGrams ?? 0);
  if (heldGrams === 0 && weighedGrams > 0)
    throw new Problem('not-enough-left', { detail: 'By the book there is nothing left in this bag.' });
  await shareDifference(tx, context, { ...weighing, scaleGrams: weighedGrams });
  await updateBag(tx, bag, {});
}

/** Owners bear what is missing up to what the scale says, or gain what is over, in proportion; or only up to `toGrams` of it. */
async function shareDifference(
  tx: Tx,
  context: Context,
  { scaleGrams, toGrams = scaleGrams, ...weighing }: Weighing & { scaleGrams: number; toGrams?: number },
): Promise<void> {
  const { bag, contents, wish } = weighing;
  const change = explainedIn(weighing, scaleGrams);
  const vesselIdOf = await loadOutsideVessels(tx, bag.storehouseId);
  const drafts = reweighed({
    lotId: bag.lotId,
    vesselId: bag.bagId,
    unexplainedVesselId: vesselIdOf('unexplained'),
    owners: contents.map(({ ownerId, grams }) => ({ ownerId, bookedGrams: grams })),
    weighedGrams: toGrams,
    moisture: change && { vesselId: vesselIdOf('moisture'), grams: change.grams },
  });
  const entry = await postOfBag(tx, context, { bag, what: 'bag-weighed-again', drafts, note: wish.reason });
  if (entry && change)
    await noteMoisture(tx, bag, { entryId: entry.entryId, weighedGrams: scaleGrams, ...change });
}

/** What two readings explain of a difference, in whole grams below zero where the food dried; nothing where there is none. */
function explainedIn({ contents, wish: { moisture } }: Weighing, weighedGrams: number) {
  if (!moisture) return undefined;
  const bookedGrams = contents.reduce((sum, content) => sum + content.grams, 0);
  const grams = explainedByMoisture({ bookedGrams, weighedGrams }, moisture);
  return grams === 0 ? undefined : { grams, bookedGrams, ...moisture };
}

/** Books grams that were lost after landing and before they were anyone's. */
export function loseFromBag(context: Context, bagId: string, loss: BagLoss): Promise<SeenBag> {
  return withBag(context, bagId, async (tx, bag) => {
    const isHeld = (await listHeld(tx, bag.storehouseId, [bagId])).length > 0;
    if (isHeld && !ALLOWED_ON_HOLD.has(loss.to)) throw new Problem('bag-on-hold', { bagId });
    const contents = await listContents(tx, bag.storehouseId, bag);
    const unassignedGrams = contents.find(({ kind }) => kind === 'unassigned')?.grams ?? 0;
    if (loss.grams > unassignedGrams)
      throw new Problem('not-enough-left', {
        detail: `Of this bag ${unassignedGrams} g are nobody's.`,
        fields: [{ field: 'grams', message: `At most ${unassignedGrams} g.` }],
        unassignedGrams,
      });
    const { unassignedId: unassignedOwnerId } = await loadHouseOwners(tx, bag.storehouseId);
    const vesselIdOf = await loadOutsideVessels(tx, bag.storehouseId);
    const drafts = bagLost({
      lotId: bag.lotId,
      bagVesselId: bagId,
      outsideVesselId: vesselIdOf(loss.to),
      unassignedOwnerId,
      amountGrams: loss.grams,
    });
    await postOfBag(tx, context, { bag, what: 'bag-lost', drafts, note: loss.because });
    const isEmpty = contents.every(({ kind, grams }) => kind === 'unassigned' && grams === loss.grams);
    if (isHeld && isEmpty)
      await endHoldsOfEmpty(
        tx,
        { storehouseId: bag.storehouseId, vesselIds: [bagId] },
        { finding: loss.because, at: context.now() },
      );
    return loadSeenBag(tx, bag.storehouseId, bagId);
  });
}

/** Throws away all that is left in a bag on hold, whoever owns it, and ends the hold (job map section 12). */
export function discardBag(context: Context, bagId: string, { finding }: BagDiscard): Promise<SeenBag> {
  return withBag(
    context,
    bagId,
    async (tx, bag) => {
      const [held] = await listHeld(tx, bag.storehouseId, [bagId]);
      if (!held) throw new Problem('hold-ended', { detail: 'Only a bag on hold is thrown away whole.' });
      const vesselIdOf = await loadOutsideVessels(tx, bag.storehouseId);
      const contents = await listContents(tx, bag.storehouseId, bag);
      const drafts = contents.flatMap(({ ownerId, grams }) =>
        discarded({
          lotId: bag.lotId,
          fromVesselId: bagId,
          outsideVesselId: vesselIdOf('discarded'),
          ownerId,
          amountGrams: grams,
        }),
      );
      await postOfBag(tx, context, { bag, what: 'bag-discarded', drafts, note: finding });
      await endHoldsOfEmpty(
        tx,
        { storehouseId: bag.storehouseId, vesselIds: [bagId] },
        { finding, at: context.now() },
      );
      return loadSeenBag(tx, bag.storehouseId, bagId);
    },
    { isAtAnyStage: true },
  );
}

type PostOfBag = { bag: BagRow; what: string; drafts: readonly MovementDraft[]; note: string };

async function postOfBag(
  tx: Tx,
  context: Context,
  { bag, ...entry }: PostOfBag,
): Promise<PostedEntry | undefined> {
  if (entry.drafts.length === 0) return undefined;
  return postEntry(tx, context, {
    ...entry,
    onDay: todayOf(context),
    buyId: bag.buyId,
    subjectId: bag.bagId,
  });
}
