import type { Tx } from '@sheafbook/db';
import type { Context } from '../../platform/context.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { withTx } from '../../platform/with-tx.ts';
import { mayReadEntries, presentEntry, readEntriesInside } from '../entry/use-cases.ts';
import { drawSample } from './draw.ts';
import type { Drawn, Trace } from './drawn.ts';
import {
  listBagCodes,
  listContainerCodes,
  listMoneyEntries,
  listTracedBags,
  listTracedContainers,
  listTracedSteps,
} from './queries.ts';

export { listMetOnLine } from './line.ts';
export { presentTraces } from './present.ts';

/** Ten bags, containers and entries of money drawn by a seed, each with its way, every gram and cent adding up. */
export const drawTraces = (context: Context, seed: string): Promise<Drawn> =>
  withTx(context, (tx) => drawTracesInside(tx, context, seed));

export async function drawTracesInside(tx: Tx, context: Context, seed: string): Promise<Drawn> {
  const { storehouseId } = context.actor;
  const bagCodes = await listBagCodes(tx, storehouseId);
  const containerCodes = await listContainerCodes(tx, storehouseId);
  const entries = await listMoneyEntries(tx, storehouseId);
  const drawn = drawSample(seed, {
    bag: bagCodes,
    container: containerCodes,
    entry: entries.map(({ code }) => code),
  });
  const drawnEntries = drawn.entry.flatMap((code) => entries.filter((entry) => entry.code === code));
  return {
    seed,
    candidates: bagCodes.length + containerCodes.length + entries.length,
    traces: [
      ...(await traceBags(tx, storehouseId, drawn.bag)),
      ...(await traceContainers(tx, context, drawn.container)),
      ...(await traceEntries(tx, context, drawnEntries)),
    ],
  };
}

async function traceBags(tx: Tx, storehouseId: string, codes: readonly string[]): Promise<Trace[]> {
  if (codes.length === 0) return [];
  const bags = await listTracedBags(tx, storehouseId, codes);
  const stepsOf = await stepsByVessel(
    tx,
    storehouseId,
    bags.map(({ bagId }) => bagId),
  );
  return codes.flatMap((code) =>
    bags
      .filter(({ bagCode }) => bagCode === code)
      .map((bag) => ({ kind: 'bag' as const, code, bag, steps: stepsOf(bag.bagId) })),
  );
}

/** Each household whose container was drawn finds in its record that somebody looked. */
async function traceContainers(tx: Tx, context: Context, codes: readonly string[]): Promise<Trace[]> {
  if (codes.length === 0) return [];
  const { storehouseId } = context.actor;
  const containers = await listTracedContainers(tx, storehouseId, codes);
  const householdIds = containers.flatMap(({ householdId }) => (householdId === null ? [] : [householdId]));
  await notePrivateRead(tx, context, { householdIds, what: 'containers', purpose: 'traces of a review' });
  const stepsOf = await stepsByVessel(
    tx,
    storehouseId,
    containers.map(({ containerId }) => containerId),
  );
  return codes.flatMap((code) =>
    containers
      .filter(({ containerCode }) => containerCode === code)
      .map((container) => ({
        ...{ kind: 'container' as const, code, container },
        steps: stepsOf(container.containerId),
      })),
  );
}

async function traceEntries(
  tx: Tx,
  context: Context,
  drawn: readonly { readonly entryId: string; readonly code: string }[],
): Promise<Trace[]> {
  const mayRead = mayReadEntries(context.actor);
  const ids = drawn.map(({ entryId }) => entryId);
  const inWords = mayRead ? await readEntriesInside(tx, context, ids) : [];
  const shown = inWords.map(presentEntry);
  return drawn.map(({ entryId, code }) => ({
    ...{ kind: 'entry' as const, code },
    entry: shown.find(({ id }) => id === entryId) ?? null,
  }));
}

async function stepsByVessel(tx: Tx, storehouseId: string, vesselIds: readonly string[]) {
  const steps = await listTracedSteps(tx, storehouseId, vesselIds);
  return (vesselId: string) => steps.filter((step) => step.vesselId === vesselId);
}
