import type { Tx } from '@sheafbook/db';
import type { Context } from '../../platform/context.ts';
import { mayGive } from '../gift/use-cases.ts';
import { countToInspect, mayInspectCommon } from '../inspection/use-cases.ts';
import { listNearDates, type NearLot } from '../rotation/use-cases.ts';
import type { ItemPart, OpenItem } from './open-item.ts';

/** What of a household's stock, and of common stock for those who keep it, comes near its dates or wants a look. */
export async function listStockItems(tx: Tx, context: Context, root: string): Promise<OpenItem[]> {
  const { actor } = context;
  const items: OpenItem[] = [];
  if (actor.householdId !== null) {
    items.push(...nearItem(await listNearDates(tx, context, actor.householdId), `${root}/rotation`));
    items.push(...lookItem(await countToInspect(tx, context, actor.householdId), 'household', root));
  }
  if (mayGive(actor)) items.push(...nearItem(await listNearDates(tx, context, null), `${root}/giving-queue`));
  if (mayInspectCommon(actor))
    items.push(...lookItem(await countToInspect(tx, context, null), 'common', root));
  return items;
}

const WITHOUT_DAY = { buy: null, dueOn: null, dueAt: null, minorUnits: null };

/** The days themselves are estimates and drift, so the item has none; each lot in each place is told once. */
function nearItem(lots: readonly NearLot[], path: string): OpenItem[] {
  if (lots.length === 0) return [];
  const says = path.endsWith('/rotation') ? 'own' : 'common';
  const count = lots.reduce((sum, lot) => sum + lot.count, 0);
  const parts = lots.map((lot) => partOf(lot, says));
  return [
    {
      ...WITHOUT_DAY,
      kind: 'dates-near',
      words: NEAR_WORDS[says](count),
      path,
      parts,
      isOfStore: says === 'common',
    },
  ];
}

const NEAR_WORDS = {
  own: (count: number) =>
    count === 1
      ? 'A container of yours comes near one of its last dates: see what to eat first.'
      : `${count} containers of yours come near their last dates: see what to eat first.`,
  common: (count: number) =>
    count === 1
      ? 'A container of common stock comes near one of its last dates: see what to give.'
      : `${count} containers of common stock come near their last dates: see what to give.`,
};

/** What stands elsewhere since is another thing, and told anew once its dates are near there. */
function partOf({ near, lotId, food, place, count }: NearLot, says: ItemPart['says']): ItemPart {
  const at = place === null ? '' : ` (${place.name})`;
  return {
    ...{ kind: `${near}-near`, thing: `${lotId} ${place?.placeId ?? 'nowhere'} ${says}`, says },
    about: {
      en: `${food.nameEn}, ${count} ${count === 1 ? 'container' : 'containers'}${at}`,
      es: `${food.nameEs}, ${count} ${count === 1 ? 'envase' : 'envases'}${at}`,
    },
  };
}

function lookItem(count: number, of: 'household' | 'common', root: string): OpenItem[] {
  if (count === 0) return [];
  const path = `${root}/inspections/due?of=${of}`;
  return [
    { ...WITHOUT_DAY, kind: 'looks-due', words: LOOK_WORDS[of](count), path, isOfStore: of === 'common' },
  ];
}

const LOOK_WORDS = {
  household: (count: number) =>
    count === 1
      ? 'A container of yours wants to be looked at.'
      : `${count} containers of yours want to be looked at.`,
  common: (count: number) =>
    count === 1
      ? 'A container of common stock wants to be looked at.'
      : `${count} containers of common stock want to be looked at.`,
};
