import type { Tx } from '@sheafbook/db';
import type { DeliveryRow, LotRow } from '@sheafbook/db/tables';
import { assert, codeFromNumber } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { fieldProblem } from '../../platform/problem.ts';
import { listBuyLines } from '../buy/queries.ts';
import type { OfferedBag } from '../delivery/queries.ts';
import { takeNumber } from '../household/queries.ts';
import { findLastBagNo, insertLot, listLotsOfLines, updateHarvestYear } from './queries.ts';
import type { NewBag } from './schema.ts';
import { bookWeight } from './weighing.ts';

/** One character less than a container's code, so that no bag and no container ever share one. */
const BAG_CODE_CHARACTERS = 5;

type Drafting = {
  delivery: DeliveryRow;
  offered: ReadonlyMap<string, OfferedBag>;
  wishes: readonly NewBag[];
};

/** The rows of new bags, with their weights booked, their lots found or made, and their numbers taken. */
export async function draftBags(tx: Tx, context: Context, { delivery, offered, wishes }: Drafting) {
  const { storehouseId, buyId, deliveryId } = delivery;
  const offers = wishes.map(({ bagOfferId }) => {
    const offer = offered.get(bagOfferId);
    assert(offer, 'every bag size was looked up before');
    return offer;
  });
  const weights = wishes.map((wish, at) => {
    const field = `bags.${at}.`;
    const weight = bookWeight({ ...wish, declaredGrams: offers[at]?.bagGrams ?? 0 }, field);
    if (weight.netGrams === 0 && wish.decision !== 'refused')
      throw fieldProblem('does-not-add-up', `${field}grossGrams`, 'An empty bag is refused, not accepted.');
    return weight;
  });
  const lots = await loadLots(tx, context, { delivery, offers, wishes });
  const numbers = await openNumbers(tx, storehouseId, offers);
  const rows = [];
  for (const [at, wish] of wishes.entries()) {
    const [offer, weight, lot] = [offers[at], weights[at], lots[at]];
    assert(offer && weight && lot, 'one offer, weight and lot for each bag');
    const { condition, decision, note, isExemptFromWeighing } = wish;
    rows.push({
      storehouseId,
      bagId: newId(context),
      bagCode: codeFromNumber(await takeNumber(tx, storehouseId, 'bag'), BAG_CODE_CHARACTERS),
      bagNo: numbers.next(offer.buyLineId),
      buyId,
      buyLineId: offer.buyLineId,
      deliveryId,
      bagOfferId: offer.bagOfferId,
      lotId: lot.lotId,
      declaredGrams: offer.bagGrams,
      ...weight,
      ...{ condition, decision, note, isExemptFromWeighing },
      moistureTenthsPercent: wish.moistureTenthsPercent ?? null,
      weighedAt: weight.grossGrams === null ? null : context.now(),
    });
  }
  return rows;
}

/** Bags of a line are numbered 1, 2, 3 … over all parts of its delivery, under the lock of the buy. */
async function openNumbers(tx: Tx, storehouseId: string, offers: readonly OfferedBag[]) {
  const last = new Map<string, number>();
  for (const lineId of new Set(offers.map((offer) => offer.buyLineId)))
    last.set(lineId, await findLastBagNo(tx, storehouseId, lineId));
  const next = (lineId: string): number => {
    const number = (last.get(lineId) ?? 0) + 1;
    last.set(lineId, number);
    return number;
  };
  return { next };
}

/** The lot of each bag: the line and the supplier's mark name it. Bags without a mark are one lot of their line. */
async function loadLots(
  tx: Tx,
  context: Context,
  { delivery, offers, wishes }: Omit<Drafting, 'offered'> & { offers: readonly OfferedBag[] },
): Promise<LotRow[]> {
  const { storehouseId, buyId, supplierId, arrivedOn } = delivery;
  const lineIds = [...new Set(offers.map((offer) => offer.buyLineId))];
  const known = await listLotsOfLines(tx, storehouseId, lineIds);
  const lines = await listBuyLines(tx, storehouseId, buyId);
  const found: LotRow[] = [];
  for (const [at, { supplierMark, harvestYear }] of wishes.entries()) {
    const line = lines.find((candidate) => candidate.buyLineId === offers[at]?.buyLineId);
    assert(line, 'a bag size belongs to a line of its buy');
    const position = known.findIndex(
      (lot) => lot.buyLineId === line.buyLineId && lot.supplierMark === supplierMark,
    );
    const lot = known[position];
    if (lot) {
      const agreed = await agreeOnHarvest(tx, lot, { harvestYear, field: `bags.${at}.harvestYear` });
      known[position] = agreed;
      found.push(agreed);
    } else {
      const { buyLineId, foodId } = line;
      const facts = { buyLineId, foodId, supplierId, supplierMark, harvestYear: harvestYear ?? null };
      const made = await insertLot(tx, { ...facts, storehouseId, lotId: newId(context), madeOn: arrivedOn });
      known.push(made);
      found.push(made);
    }
  }
  return found;
}

/** A lot is of one harvest. A year that is read off a later bag is added; another year is another lot. */
async function agreeOnHarvest(
  tx: Tx,
  lot: LotRow,
  { harvestYear, field }: { harvestYear: number | undefined; field: string },
): Promise<LotRow> {
  if (harvestYear === undefined || harvestYear === lot.harvestYear) return lot;
  if (lot.harvestYear === null) return updateHarvestYear(tx, lot, harvestYear);
  throw fieldProblem(
    'does-not-add-up',
    field,
    `Bags with this mark are of the harvest of ${lot.harvestYear}. Give the other lot a mark of its own.`,
  );
}
