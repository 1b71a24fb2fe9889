import type { Tx } from '@sheafbook/db';
import type { ContainerRow, PackingSessionRow } from '@sheafbook/db/tables';
import { assert, dayInZone, spellCode } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { updateTreatment } from '../container/queries.ts';
import { lockBagOfOwner, makeContainers } from '../container/use-cases.ts';
import { loadContainerKind } from '../container-kind/queries.ts';
import { listHeld } from '../hold/queries.ts';
import { withLabelFacts } from '../label/use-cases.ts';
import { loadSession, lockSessionForShare } from '../packing-session/queries.ts';
import { requireSessionStage } from '../packing-session/use-cases.ts';
import { type ByCode, listBlank, listSpent, lockByCodes } from './queries.ts';
import type { LabelsAhead } from './schema.ts';

/** Makes labels for containers that are still to be filled, so that they stand on the cans before the line runs. */
export function makeLabels(context: Context, sessionId: string, wish: LabelsAhead): Promise<ContainerRow[]> {
  const { storehouseId } = context.actor;
  const { bagId, householdId, containerKindId, treatment, count } = wish;
  return withTx(context, async (tx) => {
    const session = await lockSessionForShare(tx, storehouseId, sessionId);
    requireSessionStage(session, 'open', 'running');
    const { bag } = await lockBagOfOwner(tx, storehouseId, {
      ...{ bagId, ownerId: householdId, grams: 1, field: 'bagId' },
    });
    const kind = await loadContainerKind(tx, storehouseId, containerKindId);
    return makeContainers(tx, context, {
      ...{ kind, householdId, lotId: bag.lotId, packedOn: labelsSay(context, session), count, note: '' },
      ...{ treatment, moistureTenths: bag.moistureTenthsPercent },
    });
  });
}

/** The day that the labels made ahead for a packing day say. */
export const labelsSay = ({ actor }: Context, { startsAt }: PackingSessionRow): string =>
  dayInZone(startsAt.getTime(), actor.timeZone);

/** The labels made for a packing day that nobody has filled anything under: all of them, or those named. */
export function readBlank(context: Context, sessionId: string, codes: readonly string[] = []) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const session = await loadSession(tx, storehouseId, sessionId);
    const rows = await listBlank(tx, storehouseId, { sessionId, packedOn: labelsSay(context, session) });
    const meant = rows.filter(
      ({ container }) => codes.length === 0 || codes.includes(container.containerCode),
    );
    if (meant.length < codes.length) throw new Problem('thing-not-found', { thing: 'label' });
    await notePrivateRead(tx, context, {
      householdIds: meant.map(({ household }) => household.householdId),
      ...{ what: 'labels of containers to come', purpose: 'labels ahead of a packing day' },
    });
    return withLabelFacts(tx, context, meant);
  });
}

/** The labels of a packing day that are not on a can: those that wait for one, and those whose can was put back. */
export async function readLabels(context: Context, sessionId: string) {
  const blank = await readBlank(context, sessionId);
  const spent = await withTx(context, async (tx) => {
    const rows = await listSpent(tx, context.actor.storehouseId, sessionId);
    await notePrivateRead(tx, context, {
      householdIds: rows.map(({ household }) => household.householdId),
      ...{ what: 'labels of containers to come', purpose: 'labels ahead of a packing day' },
    });
    return rows;
  });
  return { blank, spent };
}
export type LabelsOfDay = Awaited<ReturnType<typeof readLabels>>;

type ToFill = Omit<Parameters<typeof makeContainers>[2], 'count' | 'householdId'> & {
  readonly householdId: string;
  /** The code that stands on each container, or null where it gets a label afterwards. */
  readonly codes: readonly (string | null)[];
  readonly session: PackingSessionRow;
  /** The day on which it is poured, which may be another than the one planned when its label was printed. */
  readonly packedOn: string;
};

/** The containers that a line fills, in its order: those under a label made ahead, and new ones where there is none. */
export async function containersToFill(tx: Tx, context: Context, wish: ToFill): Promise<ContainerRow[]> {
  const { codes, session, ...facts } = wish;
  const named = codes.flatMap((code) => code ?? []);
  const printed = await takeLabelled(tx, context, wish);
  const count = codes.length - named.length;
  const made = count === 0 ? [] : await makeContainers(tx, context, { ...facts, count });
  const rest = made.values();
  return codes.map((code) => {
    const row = code === null ? rest.next().value : printed.get(code);
    assert(row, 'each code was found, and as many made as had none');
    return row;
  });
}

/** Takes the labels with these codes, each judged before any is taken. */
async function takeLabelled(tx: Tx, context: Context, wish: ToFill): Promise<Map<string, ContainerRow>> {
  const { storehouseId } = context.actor;
  const { codes, treatment = null, moistureTenths = null } = wish;
  const named = codes.flatMap((code) => code ?? []);
  if (named.length === 0) return new Map();
  const rows = await lockByCodes(tx, storehouseId, named);
  const found = new Map(rows.map((row) => [row.container.containerCode, row]));
  const ids = rows.map(({ container }) => container.containerId);
  const held = new Set((await listHeld(tx, storehouseId, ids)).map(({ vesselId }) => vesselId));
  const plannedOn = labelsSay(context, wish.session);
  for (const [at, code] of codes.entries())
    if (code !== null) judgeLabel(found.get(code), { ...wish, held, plannedOn, code, field: `codes.${at}` });
  const filled = { treatment, moistureTenths, packedOn: wish.packedOn };
  for (const { container } of rows) await updateTreatment(tx, container, filled);
  return new Map(rows.map(({ container }) => [container.containerCode, { ...container, ...filled }]));
}

type Meant = Pick<ToFill, 'householdId' | 'lotId' | 'kind'> & {
  readonly held: ReadonlySet<string>;
  readonly plannedOn: string;
  readonly code: string;
  readonly field: string;
};

/** Refuses a label that this can't be poured under, and says why. */
function judgeLabel(row: ByCode | undefined, meant: Meant): void {
  const { field } = meant;
  const code = spellCode(meant.code);
  if (!row) throw fieldProblem('thing-not-found', field, `No container here has the code ${code}.`);
  const { container } = row;
  if (container.householdId !== meant.householdId)
    throw fieldProblem('label-does-not-fit', field, `The label ${code} is of another household.`);
  if (meant.held.has(container.containerId))
    throw fieldProblem('on-hold', field, `${code} is on hold, so nothing is poured into it.`);
  if (row.hasEnded)
    throw fieldProblem('container-ended', field, `${code} has ended: what was in it stands in a new one.`);
  if (!row.isBlank)
    throw fieldProblem('label-used', field, `${code} was filled and closed already. Read the label again.`);
  if (container.lotId !== meant.lotId)
    throw fieldProblem('label-does-not-fit', field, `The label ${code} is of another lot of food.`);
  if (container.containerKindId !== meant.kind.containerKindId)
    throw fieldProblem('label-does-not-fit', field, `The label ${code} is of another kind of container.`);
  if (container.packedOn !== meant.plannedOn)
    throw fieldProblem('label-does-not-fit', field, `The label ${code} is of another day.`);
}
