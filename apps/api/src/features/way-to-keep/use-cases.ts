import type { SupplyPriceRow } from '@sheafbook/db/tables';
import { bulkOf, readKeepingClass } from '@sheafbook/foods';
import { readBarrier } from '@sheafbook/keeping';
import { listWaysToKeep, type UsePrices } from '@sheafbook/packing';
import type { Context } from '../../platform/context.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listAllContainerKinds } from '../container-kind/queries.ts';
import { loadFood } from '../food/queries.ts';
import { listPiecePrices } from '../supply/queries.ts';
import { deleteSupplyPrice, listSupplyPrices, upsertSupplyPrice } from './queries.ts';
import type { SupplyPriceWish, WaysQuery } from './schema.ts';

/** Every container kind with every treatment for a mass of a food: ranked what is safe, and why not the rest. */
export function findWaysToKeep(context: Context, query: WaysQuery) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const food = await loadFood(tx, storehouseId, query.food);
    const kinds = await listAllContainerKinds(tx, storehouseId);
    const listed = await listPiecePrices(tx, storehouseId);
    const prices = pricesOf(await listSupplyPrices(tx, storehouseId), listed.absorbers);
    const toKeep = {
      keepingClass: readKeepingClass(food.keepingClass),
      needsMoistureTest: food.needsMoistureTest,
      moisturePercent: query.moistureTenths === undefined ? null : query.moistureTenths / 10,
      ...bulkOf(food),
    };
    const toUse = kinds.map((kind) => ({
      kindId: kind.containerKindId,
      kindCode: kind.kindCode,
      capacityMicrolitres: kind.capacityMicrolitres,
      barrier: readBarrier(kind.barrier),
      isDark: kind.isDark,
      priceMinorUnits: listed.containerPrice(kind),
    }));
    return { food, kinds, grams: query.grams, ...listWaysToKeep(query.grams, toKeep, toUse, prices) };
  });
}

/** The codes are the catalogue's own, so that a price of a packet names its size. What the supplies list says comes first. */
function pricesOf(rows: readonly SupplyPriceRow[], listed: ReadonlyMap<number, number>): UsePrices {
  const absorbers = new Map<number, number>();
  for (const { supplyCode, priceMinorUnits } of rows) {
    const size = /^absorber-(\d+)$/.exec(supplyCode)?.[1];
    if (size !== undefined) absorbers.set(Number(size), priceMinorUnits);
  }
  for (const [size, each] of listed) absorbers.set(size, each);
  const ice = rows.find(({ supplyCode }) => supplyCode === 'dry-ice-kilogram');
  return { absorbers, dryIceKilogram: ice?.priceMinorUnits ?? null };
}

export function findSupplyPrices(context: Context) {
  return withTx(context, (tx) => listSupplyPrices(tx, context.actor.storehouseId));
}

/** The last word counts: a price has no history, and what was charged by an older one stays charged. */
export function setSupplyPrice(context: Context, { supplyCode, priceMinorUnits }: SupplyPriceWish) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    if (priceMinorUnits === null) await deleteSupplyPrice(tx, storehouseId, supplyCode);
    else await upsertSupplyPrice(tx, { storehouseId, supplyCode, priceMinorUnits });
    return listSupplyPrices(tx, storehouseId);
  });
}
