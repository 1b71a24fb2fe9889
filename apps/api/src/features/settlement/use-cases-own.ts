import type { Tx } from '@sheafbook/db';
import type { PackingSessionRow } from '@sheafbook/db/tables';
import { isFor, type KeptSupply, pieceCost, sizesKept, usesOf } from '@sheafbook/packing';
import { sumOf } from '@sheafbook/units';
import { householdOf } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listWishes, loadSession, type WishedPacking } from '../packing-session/queries.ts';
import { type LoggedPour, listPours } from '../pour-log/queries.ts';
import { listSupplies } from '../supply/queries.ts';
import { toKept, toSupply } from '../supply/use-cases.ts';
import { filledToSupply } from './proposal.ts';
import {
  findSettlement,
  listCostsOfSettlement,
  listSharesOfSettlement,
  sumContainersOfCosts,
} from './queries.ts';

/** One cost of a household; `allMinorUnits` and `allContainers` say what it is a part of, once the day is settled. */
export type OwnCost = {
  readonly kind: string;
  readonly what: string;
  readonly containers: number;
  readonly minorUnits: number | null;
  readonly allMinorUnits: number | null;
  readonly allContainers: number | null;
};

/** What a packing day costs the household that asks: to the cent once it is settled, and about how much before. */
export function readOwnCosts(context: Context, sessionId: string) {
  const { storehouseId } = context.actor;
  const householdId = householdOf(context);
  return withTx(
    context,
    async (tx) => {
      const session = await loadSession(tx, storehouseId, sessionId);
      const wishes = await listWishes(tx, storehouseId, { sessionId, householdId });
      const kept = (await listSupplies(tx, storehouseId)).map((row) => ({
        ...toKept(row),
        name: row.supply.name,
      }));
      const settled = await settledCosts(tx, storehouseId, { sessionId, householdId });
      const pours = (await listPours(tx, storehouseId, sessionId)).filter(
        ({ pour }) => pour.householdId === householdId && pour.undoneEntryId === null,
      );
      const isOver = session.stage === 'signed' || session.stage === 'settled';
      const costs =
        settled ?? estimate(session, { kept, wishes: isOver ? [] : wishes, pours: isOver ? pours : [] });
      const sums = costs.map(({ minorUnits }) => minorUnits);
      return {
        ...{ session, costs, isEstimate: settled === null, currency: context.actor.currency },
        totalMinorUnits: sums.includes(null) ? null : sumOf(sums.map((sum) => sum ?? 0)),
        bring: bringOf(wishes, kept),
      };
    },
    { isReadOnly: true },
  );
}
export type OwnCosts = Awaited<ReturnType<typeof readOwnCosts>>;

async function settledCosts(
  tx: Tx,
  storehouseId: string,
  { sessionId, householdId }: { sessionId: string; householdId: string },
): Promise<OwnCost[] | null> {
  const settlement = await findSettlement(tx, storehouseId, sessionId);
  if (!settlement) return null;
  const settlementId = settlement.sessionSettlementId;
  const costs = await listCostsOfSettlement(tx, storehouseId, settlementId);
  const shares = await listSharesOfSettlement(tx, storehouseId, { settlementId, householdId });
  const all = await sumContainersOfCosts(tx, storehouseId, settlementId);
  return shares.flatMap(({ share }) => {
    const cost = costs.find(({ position }) => position === share.position);
    if (!cost || share.containers === 0) return [];
    return [
      {
        ...{ kind: cost.kind, what: cost.what, containers: share.containers, minorUnits: share.minorUnits },
        ...{ allMinorUnits: cost.minorUnits, allContainers: all.get(share.position) ?? null },
      },
    ];
  });
}

type NamedSupply = KeptSupply & { readonly name: string };

/** Each supply by the price of a pack, for the pieces that the household's own containers take, and the line fee. */
function estimate(
  { lineFeeMinorUnits }: PackingSessionRow,
  of: {
    kept: readonly NamedSupply[];
    wishes: readonly WishedPacking[];
    pours: readonly LoggedPour[];
  },
): OwnCost[] {
  const { kept } = of;
  const own = [...of.wishes.map(toSupply), ...of.pours.map(filledToSupply)];
  const uses = own.flatMap((wish) =>
    usesOf(wish, sizesKept(kept)).map((use) => ({ use, containers: wish.containers })),
  );
  const unknown = { allMinorUnits: null, allContainers: null };
  const costs = kept.flatMap((supply): OwnCost[] => {
    const taken = uses.filter(({ use }) => isFor(supply, use));
    const pieces = sumOf(taken.map(({ use }) => use.pieces)) * supply.piecesEach;
    if (pieces === 0) return [];
    const containers = sumOf(taken.map((one) => one.containers));
    const minorUnits = pieceCost(pieces, supply);
    return [{ ...unknown, kind: 'supplies', what: supply.name, containers, minorUnits }];
  });
  const containers = sumOf(own.map((wish) => wish.containers));
  const fee = {
    ...unknown,
    kind: 'line-fee',
    what: '',
    containers,
    minorUnits: lineFeeMinorUnits * containers,
  };
  return fee.minorUnits > 0 ? [...costs, fee] : costs;
}

/** What a household brings: its food, and the containers that the store keeps none of, clean and dry. */
function bringOf(wishes: readonly WishedPacking[], kept: readonly KeptSupply[]) {
  const keeps = (kindId: string) =>
    kept.some(({ kind, kindId: of }) => kind === 'container' && of === kindId);
  return wishes.map(({ wish, food, kind }) => ({
    food,
    grams: wish.containers * wish.gramsEach,
    containers: keeps(kind.containerKindId) ? null : { kind, count: wish.containers },
  }));
}
