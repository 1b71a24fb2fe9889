import type { Tx } from '@sheafbook/db';
import { dayInZone } from '@sheafbook/units';
import { hasDuty } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { inSpanish } from '../../platform/spoken/spanish.ts';
import { type Lid, listLids } from '../lid/use-cases.ts';
import type { OpenItem } from './open-item.ts';
import { dueAtInstant } from './steps.ts';

/**
 * The lids of jars that wait for whoever has them, and for whoever leads the packing while they stand in the store: one item
 * for all that were closed on one packing day, or at home on one day, due when the last of them tells something. A household's
 * loose ones wait without a day.
 */
export async function listLidItems(tx: Tx, context: Context, root: string): Promise<OpenItem[]> {
  const { actor } = context;
  const items: OpenItem[] = [];
  if (actor.householdId !== null) {
    const own = await listLids(tx, context, { of: 'household' });
    items.push(...dueItems(own, context, root), ...looseItem(own, root));
  }
  if (!hasDuty(actor, 'packing_lead')) return items;
  const store = (await listLids(tx, context, { of: 'common' })).filter(
    ({ household }) => household === null || household.id !== actor.householdId,
  );
  return [...items, ...dueItems(store, context, root).map(ofStore(root))];
}

const NOTHING = { buy: null, minorUnits: null };
const isWaiting = ({ state }: Lid) => state === 'early' || state === 'due';

/** What was answered counts for when its day's lids are due, or an answer to some would move it for the others. */
function dueItems(lids: readonly Lid[], { actor }: Context, root: string): OpenItem[] {
  const keyOf = ({ session, closed }: Lid) =>
    session?.id ?? dayInZone(closed.closedAt.getTime(), actor.timeZone);
  const keys = [...new Set(lids.filter(isWaiting).map(keyOf))];
  return keys.flatMap((key): OpenItem[] => {
    const together = lids.filter((lid) => keyOf(lid) === key);
    const last = together.at(-1); // they come in the order in which they are due
    const [first] = together;
    if (!first || !last) return [];
    const count = together.filter(isWaiting).length;
    const [about, aboutEs] = first.session
      ? [first.session.name, first.session.name]
      : [first.jar.food.nameEn, first.jar.food.nameEs];
    return [
      {
        ...{ ...dueAtInstant(last.dueAt, actor.timeZone), ...NOTHING, kind: 'lid-check', part: key },
        ...{ about, aboutEs, words: wordsOf(count, about), wordsEs: inSpanish(wordsOf(count, aboutEs)) },
        ...{ detail: `${count}`, path: `${root}/lids` },
      },
    ];
  });
}

const wordsOf = (count: number, about: string): string =>
  count === 1
    ? `Press the lid of a jar a day after it was closed: ${about}.`
    : `Press the lids of ${count} jars a day after they were closed: ${about}.`;

const ofStore =
  (root: string) =>
  (item: OpenItem): OpenItem => ({ ...item, path: `${root}/lids?of=common`, isOfStore: true });

function looseItem(lids: readonly Lid[], root: string): OpenItem[] {
  const count = lids.filter(({ state }) => state === 'loose').length;
  if (count === 0) return [];
  const words =
    count === 1
      ? 'The lid of a jar of yours did not hold: close it again, or eat it soon.'
      : `The lids of ${count} jars of yours did not hold: close them again, or eat them soon.`;
  return [{ ...NOTHING, kind: 'lid-loose', words, dueOn: null, dueAt: null, path: `${root}/lids` }];
}
