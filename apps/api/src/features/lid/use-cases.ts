import type { Tx } from '@sheafbook/db';
import { isLidOpen, type LidSaying } from '@sheafbook/keeping';
import { readCode, spellCode } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { happenedByNow } from '../../platform/happened-at.ts';
import { newId } from '../../platform/new-id.ts';
import { noteHelpersRead, notePrivateRead } from '../../platform/private-read.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { whoseStock } from '../../platform/whose-stock.ts';
import { withTx } from '../../platform/with-tx.ts';
import { lockContainers } from '../container/queries.ts';
import { mayInspectCommon } from '../inspection/use-cases.ts';
import { listKeptContainers } from '../keeping/queries.ts';
import { type Lid, listLids, type WhoseLids } from './lids.ts';
import { insertLidChecks } from './queries.ts';
import type { LidAnswers, LidClosings, LidQuery } from './schema.ts';
import { tellLoose } from './telling.ts';

export { type Lid, listLids } from './lids.ts';

/** What opens others' rows: to nobody but whoever looks at what stands in the store. */
const openingFor = ({ of }: WhoseLids) => (of === 'common' ? ({ task: 'lids' } as const) : {});

/** The jars whose lids are to be looked at, now or once a day is over, and those that were found loose. */
export function readLids(context: Context, query: LidQuery) {
  whoseStock(context, query.of, mayInspectCommon);
  return withTx(context, async (tx) => {
    const lids = (await listLids(tx, context, query)).filter(({ state }) => isLidOpen(state));
    if (query.of === 'household') await noteHelpersRead(tx, context, 'shares and stock');
    else await noteOwnersRead(tx, context, lids);
    return { of: query.of, lids };
  });
}
export type LidsRead = Awaited<ReturnType<typeof readLids>>;

/** Each household sees who looked at the lids of its jars. */
const noteOwnersRead = (tx: Tx, context: Context, lids: readonly Lid[]) =>
  notePrivateRead(tx, context, {
    householdIds: lids.flatMap(({ household }) => household?.id ?? []),
    ...{ what: 'bags and containers at a session', purpose: 'lids of jars' },
  });

/**
 * Says of many jars at once that their lids held, and of some by their codes that they did not. Before a day is over nothing
 * can be said. What another phone said meanwhile counts once; of a lid that was found loose nobody says any more that it held,
 * until the jar was closed again. What was opened, emptied or looked at as a whole meanwhile is left alone.
 */
export function answerLids(context: Context, wish: LidAnswers) {
  whoseStock(context, wish.of, mayInspectCommon);
  const checkedAt = happenedByNow(context.now(), { field: 'checkedAt', at: wish.checkedAt });
  const work = async (tx: Tx) => {
    const loose = await findLoose(tx, context, wish);
    const containerIds = [...new Set([...wish.containerIds, ...loose])];
    const { lids, leftAlone } = await lockLids(tx, context, { of: wish.of, containerIds, at: checkedAt });
    const said = lids.map((lid) => ({ lid, says: judge(lid, loose) }));
    const fresh = said.flatMap(({ lid, says }) =>
      says !== null && says !== saidNow(lid) ? [{ lid, says }] : [],
    );
    await insertLidChecks(
      tx,
      fresh.map(({ lid, says }) => ({
        ...rowOf(context, lid, { note: wish.note, checkedAt }),
        ...{ says, closedAt: lid.closed.closedAt },
      })),
    );
    const found = fresh.filter(({ says }) => says === 'loose').map(({ lid }) => lid);
    await tellLoose(tx, context, found);
    const skipped = said.filter(({ says }) => says === null).length;
    return {
      ...{ held: fresh.length - found.length, loose: found.map(codeOf) },
      ...{ already: said.length - fresh.length - skipped, leftAlone: leftAlone + skipped },
    };
  };
  return withTx(context, work, openingFor(wish));
}

/**
 * Writes down that jars were closed again, each with a fresh absorber or a new vacuum: the day begins anew. Until its lid has
 * held, what a loose one did to its dates stays.
 */
export function closeLidsAgain(context: Context, wish: LidClosings) {
  whoseStock(context, wish.of, mayInspectCommon);
  const checkedAt = context.now();
  const work = async (tx: Tx) => {
    const { lids, leftAlone } = await lockLids(tx, context, { ...wish, at: checkedAt });
    const open = lids.filter(({ state }) => isLidOpen(state));
    await insertLidChecks(
      tx,
      open.map((lid) => ({
        ...rowOf(context, lid, { note: wish.note, checkedAt }),
        ...{ says: 'closed-again', closedAt: checkedAt },
      })),
    );
    return { closed: open.map(codeOf), leftAlone: leftAlone + lids.length - open.length };
  };
  return withTx(context, work, openingFor(wish));
}

const codeOf = ({ jar }: Lid): string => spellCode(jar.container.containerCode);

/** What was said of the closing that counts now; of an earlier one it says nothing. */
const saidNow = ({ closed: { closedAt, said } }: Lid): LidSaying | null =>
  said && said.closedAt.getTime() === closedAt.getTime() ? said.says : null;

function rowOf(context: Context, { jar }: Lid, wish: { note: string; checkedAt: Date }) {
  const { storehouseId, containerId, householdId } = jar.container;
  return {
    ...{ storehouseId, lidCheckId: newId(context), containerId, householdId, ...wish },
    ...{ checkedBy: context.actor.personId, recordedAt: context.now() },
  };
}

/** The jars whose codes were given: a slip of the finger is told by the code itself, another jar's by what waits here. */
async function findLoose(tx: Tx, context: Context, wish: LidAnswers): Promise<ReadonlySet<string>> {
  if (wish.looseCodes.length === 0) return new Set();
  const lids = await listLids(tx, context, wish);
  const idByCode = new Map(lids.map(({ jar }) => [jar.container.containerCode, jar.container.containerId]));
  return new Set(
    wish.looseCodes.map((text, at) => {
      const field = `looseCodes.${at}`;
      const code = readCode(text);
      if (code === undefined)
        throw fieldProblem('invalid-input', field, `${text} is no code of a container; look at it again.`);
      const id = idByCode.get(code);
      if (id === undefined)
        throw fieldProblem(
          'thing-not-found',
          field,
          `No jar whose lid is asked for here has the code ${text}.`,
        );
      return id;
    }),
  );
}

/**
 * Alone with these jars, so that of two phones the later one reads what the earlier one said, and where their lids stand at a
 * moment. How many of them are asked for no more is told; what is not one's own is not there.
 */
async function lockLids(
  tx: Tx,
  context: Context,
  { of, containerIds, at }: WhoseLids & { containerIds: readonly string[]; at: Date },
): Promise<{ lids: Lid[]; leftAlone: number }> {
  const { storehouseId, householdId } = context.actor;
  await lockContainers(tx, storehouseId, containerIds);
  const meant = new Set(containerIds);
  const lids = (await listLids(tx, context, { of }, at)).filter(({ jar }) =>
    meant.has(jar.container.containerId),
  );
  if (of === 'common') await noteOwnersRead(tx, context, lids);
  const there = await listKeptContainers(tx, storehouseId, { containerIds });
  const seen = there.filter(({ container }) => of === 'common' || container.householdId === householdId);
  if (seen.length < meant.size) throw new Problem('thing-not-found', { thing: 'container' });
  return { lids, leftAlone: seen.length - lids.length };
}

/** What is to be written of a lid; null where a whole look has answered for it since. */
function judge(lid: Lid, loose: ReadonlySet<string>): LidSaying | null {
  const says = loose.has(lid.jar.container.containerId) ? 'loose' : 'held';
  if (lid.state === 'early')
    throw lidProblem('lid-too-early', lid, 'was closed less than a day ago, so its lid tells nothing yet.');
  if (lid.state === 'loose' && says === 'held')
    throw lidProblem(
      'lid-found-loose',
      lid,
      'was found loose already: close it again first, or eat it soon.',
    );
  return lid.state === 'looked-at' ? null : says;
}

function lidProblem(code: 'lid-too-early' | 'lid-found-loose', lid: Lid, words: string): Problem {
  return new Problem(code, {
    detail: `${codeOf(lid)} ${words}`,
    fields: [{ field: 'containerIds', message: `${codeOf(lid)} ${words}` }],
    containers: [lid.jar.container.containerCode],
    dueAt: lid.dueAt.toISOString(),
  });
}
