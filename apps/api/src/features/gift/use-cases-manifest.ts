import type { Tx } from '@sheafbook/db';
import type { GiftManifestRow } from '@sheafbook/db/tables';
import { lastGiftDay } from '@sheafbook/giving';
import { warmthBandOf } from '@sheafbook/keeping';
import { commonStockGiven, given, type MovementDraft } from '@sheafbook/ledger';
import { sumOf } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { postEntry, reverseEntry } from '../../platform/post-entry.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { refuseFutureDay, todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { lockContainers } from '../container/queries.ts';
import { loadPantry, lockPantry } from '../pantry/queries.ts';
import { loadWorths } from '../stock-count/use-cases.ts';
import { loadHouseOwners, loadOutsideVessels } from '../storehouse/queries.ts';
import { type Candidate, loadCandidates } from './candidates.ts';
import { loadsOf, refusalsOf, type Trip } from './match.ts';
import { presentManifest } from './present.ts';
import {
  insertManifest,
  type LineWithMet,
  type ListedLine,
  listLines,
  listManifests,
  lockManifest,
  nextManifestNo,
  sumGramsBetween,
  updateLines,
  updateManifest,
} from './queries.ts';
import { REFUSAL_WORDS } from './refusal-words.ts';
import type { ManifestWish, ReasonWish, ReceiptWish } from './schema.ts';
import { listLinesWithMet, loadMatchingOf, manifestOf, weekOf } from './use-cases.ts';

/** Signs a trip of a matching out: its whole containers are bespoken for that pantry until the receipt is back. */
export function signOut(context: Context, wish: ManifestWish) {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    const { id, inputs, answer } = await loadMatchingOf(tx, context, wish.matchingId);
    const trip = inputs.trips[wish.trip];
    if (!trip) throw fieldProblem('invalid-input', 'trip', 'The matching has no such trip.');
    await lockPantry(tx, storehouseId, trip.pantryId);
    const codes = loadsOf(inputs, answer)[wish.trip]?.flatMap(({ containers }) => containers) ?? [];
    const wanted = codes.filter((container) => !wish.leaveOut.includes(container.id));
    if (wanted.length === 0) throw fieldProblem('gift-refused', 'trip', 'There is nothing on this trip.');
    await lockContainers(
      tx,
      storehouseId,
      wanted.map((container) => container.id),
    );
    const loaded = await loadStill(tx, context, trip, wanted);
    await refuseMovedOn(tx, context, trip, loaded);
    const manifest = {
      ...{ storehouseId, giftManifestId: newId(context), giftMatchingId: id, pantryId: trip.pantryId },
      ...{ cardVersion: trip.cardVersion, onDay: trip.onDay, driver: wish.driver },
      ...{
        manifestNo: await nextManifestNo(tx, storehouseId),
        signedOutBy: personId,
        signedOutAt: context.now(),
      },
    };
    await insertManifest(
      tx,
      manifest,
      loaded.map(({ kept, ownerId, facts: { sealedBy } }, position) => ({
        ...{ storehouseId, giftManifestId: manifest.giftManifestId, position, ownerId, grams: kept.grams },
        ...{ containerId: kept.container.containerId, sealedBy, warmth: warmthBandOf(kept.stays) },
        ...datesOf(kept, trip),
      })),
    );
    return manifestOf(tx, context, manifest.giftManifestId);
  });
}

function datesOf({ keeping, food }: Candidate['kept'], { card, onDay, openWeekdays }: Trip) {
  const eatFirstOn = keeping?.dates.eatFirstOn ?? onDay;
  const closesOn = lastGiftDay(card, { eatFirstOn, keepingClass: food.keepingClass }, openWeekdays);
  return { eatFirstOn, giftClosesOn: closesOn ?? onDay };
}

/** The containers of a trip as they are now, in the order of the trip; one that is gone since is not there. */
async function loadStill(
  tx: Tx,
  context: Context,
  trip: Trip,
  wanted: readonly { readonly id: string; readonly code: string }[],
): Promise<Candidate[]> {
  const now = new Map(
    (await loadCandidates(tx, context)).map((row) => [row.kept.container.containerId, row]),
  );
  const problems = wanted.flatMap(({ id, code }) => {
    const candidate = now.get(id);
    if (!candidate) return [`${code} is gone from the store.`];
    return refusalsOf(candidate, trip).map((refusal) => REFUSAL_WORDS[refusal](code));
  });
  refuseFor(problems);
  return wanted.flatMap(({ id }) => now.get(id) ?? []);
}

/** The card, the day and the room at the door must still be those of the matching. */
async function refuseMovedOn(
  tx: Tx,
  context: Context,
  trip: Trip,
  loaded: readonly Candidate[],
): Promise<void> {
  const { storehouseId } = context.actor;
  const { pantry, current } = await loadPantry(tx, storehouseId, trip.pantryId);
  const week = { pantryId: trip.pantryId, ...weekOf(trip.onDay) };
  const visit = { pantryId: trip.pantryId, fromOn: trip.onDay, toOn: trip.onDay };
  const most = current.card.mostGramsPerWeek ?? Number.POSITIVE_INFINITY;
  const mostThen = current.card.mostGramsPerVisit ?? Number.POSITIVE_INFINITY;
  const grams = sumOf(loaded.map(({ kept }) => kept.grams));
  refuseFor([
    ...(pantry.cardVersion === trip.cardVersion
      ? []
      : [`${pantry.name} has a newer card than this matching. Match again.`]),
    ...(trip.onDay < todayOf(context) ? ['The day of this trip is over. Match again.'] : []),
    ...((await sumGramsBetween(tx, storehouseId, visit)) + grams > mostThen
      ? [`${pantry.name} takes no more on that day. Match again.`]
      : []),
    ...((await sumGramsBetween(tx, storehouseId, week)) + grams > most
      ? [`${pantry.name} takes no more in that week. Match again.`]
      : []),
  ]);
}

function refuseFor(problems: readonly string[], field = 'trip'): void {
  if (problems.length === 0) return;
  throw new Problem('gift-refused', {
    detail: problems.join(' '),
    fields: problems.map((message) => ({ field, message })),
  });
}

export function readManifests(context: Context) {
  return withTx(
    context,
    async (tx) => {
      const rows = await listManifests(tx, context.actor.storehouseId);
      const lines = await listLinesWithMet(
        tx,
        context.actor.storehouseId,
        rows.map(({ manifest }) => manifest.giftManifestId),
      );
      return rows.map((row) => ({ ...row, lines: linesOf(row.manifest, lines) }));
    },
    { isReadOnly: true },
  );
}

const linesOf = ({ giftManifestId }: GiftManifestRow, lines: readonly LineWithMet[]) =>
  lines.filter(({ line }) => line.giftManifestId === giftManifestId);

export function readManifest(context: Context, manifestId: string) {
  return withTx(context, (tx) => manifestOf(tx, context, manifestId), { isReadOnly: true });
}

/**
 * The receipt is back: what was accepted leaves the books as given, what was refused stands in the store again. What came on
 * hold after the trip left was handed over all the same, and the recall reaches the pantry by it.
 */
export function writeReceipt(context: Context, manifestId: string, wish: ReceiptWish) {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    const manifest = await lockOut(tx, context, { manifestId, version: wish.version });
    const lines = await listLines(tx, storehouseId, [manifestId]);
    refuseWrongDay(context, manifest, wish);
    const reasons = new Map(wish.refused.map(({ containerId, reason }) => [containerId, reason]));
    const strange = wish.refused.findIndex(
      ({ containerId }) => !lines.some((row) => row.line.containerId === containerId),
    );
    if (strange !== -1)
      throw fieldProblem('invalid-input', `refused.${strange}.containerId`, 'This is not on the manifest.');
    const accepted = lines.filter(({ line }) => !reasons.has(line.containerId));
    const ids = accepted.map(({ line }) => line.containerId);
    await lockContainers(tx, storehouseId, ids);
    refuseLate(accepted, wish);
    const entry =
      accepted.length === 0
        ? null
        : await postEntry(tx, context, {
            ...{ what: 'gift-received', onDay: todayOf(context), subjectId: manifestId, note: wish.note },
            drafts: await giftDrafts(tx, storehouseId, accepted),
          });
    await updateLines(tx, manifest, { isOpen: false, isAccepted: true, refusedBecause: null }, ids);
    for (const [containerId, refusedBecause] of reasons)
      await updateLines(tx, manifest, { isOpen: false, isAccepted: false, refusedBecause }, [containerId]);
    await updateManifest(tx, manifest, {
      ...{ stage: 'received', receivedOn: wish.receivedOn, receiverDuty: wish.receiverDuty },
      ...{ receiptNote: wish.note, receivedBy: personId, entryId: entry?.entryId ?? null },
    });
    return manifestOf(tx, context, manifestId);
  });
}

function refuseWrongDay(context: Context, manifest: GiftManifestRow, { receivedOn }: ReceiptWish): void {
  refuseFutureDay(context, { field: 'receivedOn', on: receivedOn });
  if (receivedOn < manifest.onDay)
    throw fieldProblem(
      'invalid-input',
      'receivedOn',
      `This trip was planned for ${manifest.onDay}, not before.`,
    );
}

function refuseLate(accepted: readonly ListedLine[], { receivedOn }: ReceiptWish): void {
  const late = accepted.filter(({ line }) => line.giftClosesOn < receivedOn);
  refuseFor(
    late.map(
      ({ line, container }) => `The gift of ${container.containerCode} closed on ${line.giftClosesOn}.`,
    ),
    'receivedOn',
  );
}

/** The grams of each container leave under its owner; common stock takes its cost along, lot by lot. */
async function giftDrafts(
  tx: Tx,
  storehouseId: string,
  accepted: readonly ListedLine[],
): Promise<MovementDraft[]> {
  const vesselIdOf = await loadOutsideVessels(tx, storehouseId);
  const { commonId } = await loadHouseOwners(tx, storehouseId);
  const grams = accepted.flatMap(({ line, container }) =>
    given({
      ...{ lotId: container.lotId, ownerId: line.ownerId, amountGrams: line.grams },
      ...{ fromVesselId: line.containerId, outsideVesselId: vesselIdOf('given') },
    }),
  );
  const common = accepted.filter(({ line }) => line.ownerId === commonId);
  const lots = [...new Set(common.map(({ container }) => container.lotId))].map((lotId) => {
    const ofLot = common.filter(({ container }) => container.lotId === lotId);
    return { lotId, grams: sumOf(ofLot.map(({ line }) => line.grams)) };
  });
  const worths = await loadWorths(tx, storehouseId, lots);
  const costs = lots.flatMap(({ lotId: causeId }, at) => {
    const amountMinorUnits = worths[at] ?? 0;
    return amountMinorUnits > 0 ? commonStockGiven({ causeId, amountMinorUnits }) : [];
  });
  return [...grams, ...costs];
}

/** Takes a receipt back by a reversing entry; everything on it is out again. */
export function undoReceipt(context: Context, manifestId: string, { version, reason }: ReasonWish) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const manifest = await lockManifest(tx, storehouseId, manifestId);
    await refuseStage(tx, context, manifest, { version, stage: 'received' });
    if (manifest.entryId !== null)
      await reverseEntry(tx, context, {
        ...{ what: 'gift-undone', onDay: todayOf(context), reversesId: manifest.entryId },
        ...{ subjectId: manifestId, note: reason },
      });
    await updateManifest(tx, manifest, {
      ...{ stage: 'out', receivedOn: null, receiverDuty: null, receiptNote: null, receivedBy: null },
      entryId: null,
    });
    await updateLines(tx, manifest, { isOpen: true, isAccepted: null, refusedBecause: null });
    return manifestOf(tx, context, manifestId);
  });
}

/** Calls a trip off before its receipt: everything on it stands in the store again. */
export function callOff(context: Context, manifestId: string, { version, reason }: ReasonWish) {
  return withTx(context, async (tx) => {
    const manifest = await lockOut(tx, context, { manifestId, version });
    await updateManifest(tx, manifest, { stage: 'called-off', calledOffBecause: reason });
    await updateLines(tx, manifest, { isOpen: false, isAccepted: null, refusedBecause: null });
    return manifestOf(tx, context, manifestId);
  });
}

async function lockOut(tx: Tx, context: Context, wish: { manifestId: string; version: number }) {
  const manifest = await lockManifest(tx, context.actor.storehouseId, wish.manifestId);
  await refuseStage(tx, context, manifest, { version: wish.version, stage: 'out' });
  return manifest;
}

async function refuseStage(
  tx: Tx,
  context: Context,
  manifest: GiftManifestRow,
  { version, stage }: { version: number; stage: string },
): Promise<void> {
  if (manifest.version !== version) {
    throw new Problem('stale-version', {
      newer: presentManifest(await manifestOf(tx, context, manifest.giftManifestId)),
    });
  }
  if (manifest.stage !== stage)
    throw new Problem('gift-refused', {
      detail:
        stage === 'out'
          ? 'This manifest is not out any more.'
          : 'There is no receipt of this manifest to take back.',
    });
}
