import type { Tx } from '@sheafbook/db';
import type { InspectionRow } from '@sheafbook/db/tables';
import {
  FINDING_WORDS,
  type Finding,
  INSPECTION_RULES,
  inspectionsDue,
  isInsectDamaged,
  type Judgement,
  judgeInspection,
  readBarrier,
} from '@sheafbook/keeping';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { postEntry, reverseEntry } from '../../platform/post-entry.ts';
import { noteHelpersRead } from '../../platform/private-read.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { whoseStock } from '../../platform/whose-stock.ts';
import { withTx } from '../../platform/with-tx.ts';
import { lockContainer, markOpened, refuseOffered } from '../container/queries.ts';
import { loadKept } from '../keeping/use-cases.ts';
import { holdSiblings } from './hold-siblings.ts';
import { movingOut } from './moving-out.ts';
import { mayInspectCommon } from './policy.ts';
import {
  insertInspection,
  insertSmallTest,
  insertWatches,
  type Looked,
  listBeside,
  listInspections,
  listLooked,
  listSmallTests,
  listWatches,
  loadInspection,
  loadLooked,
} from './queries.ts';
import type { InspectionQuery, InspectionWish, SmallTestWish } from './schema.ts';
import { tellBeside } from './telling.ts';

export { mayInspectCommon } from './policy.ts';

/**
 * Writes down what was found on a container and what becomes of the food. What stood beside it goes on watch, and whoever
 * has some of that is told to look at it, without a word of who found what.
 */
export function inspectContainer(context: Context, containerId: string, wish: InspectionWish) {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    await lockContainer(tx, storehouseId, containerId);
    const looked = await loadMine(tx, context, containerId);
    const findings = withCounted(wish);
    const judgement = judgeWish(findings, wish);
    const { householdId } = looked.container;
    if (wish.how === 'opened' && looked.container.openedOn === null)
      await markOpened(tx, looked.container, todayOf(context));
    const inspectionId = newId(context);
    const { isMovedOut, outcome, note } = wish;
    if (isMovedOut)
      await refuseOffered(tx, storehouseId, { containerIds: [containerId], now: context.now() });
    const drafts = isMovedOut ? await movingOut(tx, storehouseId, { looked, outcome }) : null;
    const entry = drafts && (await postEntry(tx, context, { ...drafts, onDay: todayOf(context), note }));
    const inspection = await insertInspection(tx, {
      ...{ storehouseId, inspectionId, containerId, householdId, how: wish.how, findings },
      ...{ best: judgement.best, outcome, note, entryId: entry?.entryId ?? null },
      ...{ damagedKernels: wish.kernels?.damaged ?? null, sampleGrams: wish.kernels?.sampleGrams ?? null },
      ...{ inspectedBy: personId, inspectedAt: context.now(), inspectedOn: todayOf(context) },
    });
    const held = await holdSiblings(tx, context, { looked, findings, judgement });
    const beside = await watchBeside(tx, context, { looked, inspection, judgement, held });
    return { inspection, judgement, looked: await loadLooked(tx, storehouseId, containerId), beside };
  });
}
export type Inspected = Awaited<ReturnType<typeof inspectContainer>>;

/** A household's own, or common stock for whoever may look at that; a neighbour's is not there. */
async function loadMine(tx: Tx, { actor }: Context, containerId: string): Promise<Looked> {
  const looked = await loadLooked(tx, actor.storehouseId, containerId);
  const { householdId } = looked.container;
  const isMine = householdId === null ? mayInspectCommon(actor) : householdId === actor.householdId;
  if (!isMine) throw new Problem('thing-not-found', { thing: 'container' });
  return looked;
}

/** What was counted speaks for itself: too many damaged kernels are a finding, whoever ticked what. */
function withCounted({ findings, kernels }: InspectionWish): Finding[] {
  if (kernels === null || !isInsectDamaged(kernels.damaged, kernels.sampleGrams)) return findings;
  const others = findings.filter((finding) => finding !== 'nothing-wrong');
  return others.includes('insect-damaged-kernels') ? others : [...others, 'insect-damaged-kernels'];
}

function judgeWish(findings: readonly Finding[], { how, outcome }: InspectionWish): Judgement {
  const hidden = findings.find((finding) => INSPECTION_RULES[finding].shows === 'opened');
  if (how === 'outside' && hidden)
    throw fieldProblem('invalid-input', 'how', 'That shows only once the container is open.');
  const judgement = judgeInspection(findings);
  if (judgement.allowed.includes(outcome)) return judgement;
  const [deciding] = judgement.deciding;
  const message = deciding ? FINDING_WORDS[deciding].why.en : '';
  throw new Problem('outcome-contradicts', {
    detail: message,
    fields: [{ field: 'outcome', message }],
    allowed: judgement.allowed,
    deciding: judgement.deciding,
  });
}

async function watchBeside(
  tx: Tx,
  context: Context,
  found: { looked: Looked; inspection: InspectionRow; judgement: Judgement; held: ReadonlySet<string> },
) {
  const { looked, inspection, judgement, held } = found;
  const { storehouseId, inspectionId, inspectedAt: since } = inspection;
  const worstFirst = [...judgement.deciding, ...(inspection.findings as Finding[])];
  const watching = worstFirst.find((finding) => INSPECTION_RULES[finding].watch !== 'none');
  if (watching === undefined) return [];
  const beside = await listBeside(tx, looked.container, { atPlace: judgement.watch.includes('place') });
  await insertWatches(
    tx,
    beside.map(({ containerId, householdId, isSameWindow }) => ({
      ...{ storehouseId, containerId, inspectionId, householdId, finding: watching, isSameWindow, since },
    })),
  );
  // A household hears of what is on hold by the hold itself.
  const toTell = beside.filter(
    ({ containerId, householdId }) => householdId === null || !held.has(containerId),
  );
  await tellBeside(tx, context, {
    finderId: looked.container.householdId,
    finding: watching,
    beside: toTell,
  });
  return beside;
}

/** Puts the grams back that an inspection booked out; what was found stays written. */
export function undoMovingOut(context: Context, inspectionId: string, reason: string) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const { inspection, isUndone } = await loadInspection(tx, storehouseId, inspectionId);
    const { containerId, entryId } = inspection;
    await loadMine(tx, context, containerId);
    if (entryId === null) throw new Problem('cannot-reverse', { detail: 'Nothing was booked out with it.' });
    if (isUndone) throw new Problem('already-reversed');
    const reversal = {
      what: 'inspection-undone',
      onDay: todayOf(context),
      reversesId: entryId,
      note: reason,
    };
    await reverseEntry(tx, context, reversal);
    return loadLooked(tx, storehouseId, containerId);
  });
}

/** Every look at a container, the newest first. */
export function readInspections(context: Context, containerId: string) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const looked = await loadMine(tx, context, containerId);
    if (looked.container.householdId !== null) await noteHelpersRead(tx, context, 'shares and stock');
    return {
      ...{ looked, inspections: await listInspections(tx, storehouseId, containerId) },
      tests: await listSmallTests(tx, storehouseId, looked.container.lotId),
    };
  });
}

/** Writes down a small test of the food in a container; it is told of the whole lot. */
export function testContainer(context: Context, containerId: string, wish: SmallTestWish) {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    const { container } = await loadMine(tx, context, containerId);
    const { lotId, householdId } = container;
    await insertSmallTest(tx, {
      ...{ storehouseId, smallTestId: newId(context), containerId, lotId, householdId, kind: wish.kind },
      ...{ laid: wish.seeds?.laid ?? null, sprouted: wish.seeds?.sprouted ?? null, note: wish.note },
      ...{ testedOn: todayOf(context), testedBy: personId },
    });
    return listSmallTests(tx, storehouseId, lotId);
  });
}

/** What is on watch because of something beside it, and what else is to be looked at by today. */
export function readToInspect(context: Context, query: InspectionQuery) {
  return withTx(context, async (tx) => {
    const householdId = whoseStock(context, query.of, mayInspectCommon);
    if (householdId !== null) await noteHelpersRead(tx, context, 'shares and stock');
    return { of: query.of, ...(await listToInspect(tx, context, householdId)) };
  });
}

/** The same with where each of them stands, and whether it is on hold, for whoever walks along the shelves with a list. */
export function readInspectionRound(context: Context, query: InspectionQuery) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const householdId = whoseStock(context, query.of, mayInspectCommon);
    if (householdId !== null) await noteHelpersRead(tx, context, 'places and stock');
    const { watches, due } = await listToInspect(tx, context, householdId);
    const all = [...watches, ...due.map(({ row }) => row.looked)];
    const containerIds = [...new Set(all.map(({ container }) => container.containerId))];
    const kept =
      containerIds.length === 0 ? [] : await loadKept(tx, storehouseId, { containerIds }, todayOf(context));
    const keptById = new Map(kept.map((one) => [one.container.containerId, one]));
    return { watches, due, keptById };
  });
}

/** How many containers somebody is to look at by today, or common stock has (null), what is on watch among them. */
export async function countToInspect(tx: Tx, context: Context, householdId: string | null): Promise<number> {
  const { watches, due } = await listToInspect(tx, context, householdId);
  const watched = new Set(watches.map(({ container }) => container.containerId));
  return watched.size + due.length;
}

async function listToInspect(tx: Tx, context: Context, householdId: string | null) {
  const { storehouseId } = context.actor;
  const stock = await listLooked(tx, storehouseId, householdId);
  const watches = await listWatches(tx, storehouseId, householdId);
  const watched = new Set(watches.map(({ container }) => container.containerId));
  const due = inspectionsDue(
    stock.map((looked) => ({ ...lookedAt(looked), looked })),
    todayOf(context),
  );
  return { watches, due: due.filter(({ row }) => !watched.has(row.looked.container.containerId)) };
}

const lookedAt = ({ container, kind, lastOn }: Looked) => ({
  code: container.containerCode,
  lotId: container.lotId,
  barrier: readBarrier(kind.barrier),
  packedOn: container.packedOn,
  openedOn: container.openedOn,
  lastOn,
});
