import type { BuyRow } from '@sheafbook/db/tables';
import type { Actor } from '../../platform/actor.ts';
import type { ConfirmedView, ConsentView, readOrders } from './use-cases.ts';

export function presentConsents({ buy, consents, orderNos }: ConsentView) {
  return {
    buyId: buy.buyId,
    stage: buy.stage,
    version: buy.version,
    consents: consents.map(({ duty, personId, agreedAt }) => ({
      duty,
      personId,
      agreedAt: agreedAt.toISOString(),
    })),
    orderNos: [...orderNos],
  };
}

type Orders = Awaited<ReturnType<typeof readOrders>>;

/** The fields of the order paper, for everyone in the storehouse: bags and prices are nobody's secret. */
export function presentOrders(orders: Orders, actor: Actor) {
  return { orders: orders.heads.map((head) => presentOrder(orders, head, actor)) };
}

function presentOrder(orders: Orders, { order, supplier, quote }: Orders['heads'][number], actor: Actor) {
  const foods = orders.foods.filter(({ line }) => line.supplierOrderId === order.supplierOrderId);
  const terms = orders.quotes.find((known) => known.quote.quoteId === quote.quoteId);
  return {
    id: order.supplierOrderId,
    orderNo: order.orderNo,
    orderedOn: order.orderedOn,
    supplier: { id: supplier.supplierId, name: supplier.name, contact: supplier.contact },
    quote: { id: quote.quoteId, reference: quote.reference, validUntil: quote.validUntil },
    deliverTo: order.deliverTo,
    landingOn: orders.buy.landingOn,
    leadDays: quote.leadDays,
    contacts: orders.coordinators.map(({ name, phone }) => ({
      duty: 'coordinator',
      name,
      phone: phone ?? '',
    })),
    grams: foods.reduce((sum, { line, offer }) => sum + line.bags * offer.bagGrams, 0),
    lines: foods.map((food) => presentLine(orders, food)),
    currency: actor.currency,
    freightTerms: {
      steps: terms?.freight.steps.map(({ fromGrams, minorUnits }) => ({ fromGrams, minorUnits })) ?? [],
      freeFromGoodsMinorUnits: terms?.freight.freeFromGoodsMinorUnits ?? null,
    },
    goodsMinorUnits: order.goodsMinorUnits,
    freightMinorUnits: order.freightMinorUnits,
    totalMinorUnits: order.goodsMinorUnits + order.freightMinorUnits,
    cropYear: quote.cropYear,
    moistureNote: quote.moistureNote,
    note: order.note,
    cancelledAt: order.cancelledAt?.toISOString() ?? null,
    cancellationNote: order.cancellationNote,
  };
}

function presentLine({ quotes }: Orders, { line, offer, buyLine, food }: Orders['foods'][number]) {
  const terms = quotes
    .flatMap((quote) => quote.offers)
    .find((known) => known.bagOfferId === offer.bagOfferId);
  // With incremental breaks each bag has the price of its own step, so there is no one price a bag.
  const reached = terms?.breaks.findLast((priceBreak) => priceBreak.fromBags <= line.bags);
  const isOnePrice = terms?.breakKind === 'all-units' || terms?.breaks.length === 1;
  return {
    lineId: buyLine.buyLineId,
    food: { id: food.foodId, foodCode: food.foodCode, nameEn: food.nameEn, nameEs: food.nameEs },
    bagOfferId: offer.bagOfferId,
    bagLabel: offer.bagLabel,
    bagSize: offer.bagSize,
    massUnit: buyLine.massUnit,
    bagGrams: offer.bagGrams,
    bags: line.bags,
    bagPriceMinorUnits: isOnePrice ? (reached?.bagPriceMinorUnits ?? null) : null,
    goodsMinorUnits: line.goodsMinorUnits,
  };
}

export function presentReopened({ buyId, stage, version }: BuyRow) {
  return { buyId, stage, version };
}

export function presentConfirmed({ quote, ...view }: ConfirmedView, actor: Actor) {
  return {
    quoteId: quote.quote.quoteId,
    version: quote.quote.version,
    validUntil: quote.quote.validUntil,
    currency: actor.currency,
    estimatedMinorUnits: view.estimatedMinorUnits,
    repricedMinorUnits: view.repricedMinorUnits,
    needsFixingAgain: view.needsFixingAgain,
  };
}
