import { gramsOfPhysicalUnit } from '@sheafbook/units';
import type { Caller, TestApp } from './app.ts';
import { aBuy, aPledge, bodyOf, type OfferWish, type PledgeWish, type TestBuy } from './buy.ts';
import { changeRules } from './fixed-buy.ts';
import { aDelivery, type BagWish, countDelivery, type TestBag } from './landed-buy.ts';
import type { TestStorehouse } from './storehouse.ts';

/** One bag size of one food a line, so that a test says no more than who wants what and what came. */
export type PlainFood = {
  foodCode?: string;
  bagSize?: number;
  bagPriceMinorUnits?: number;
  pledges: readonly (Omit<PledgeWish, 'foodCode'> & { by: Caller })[];
  /** What came, in full bags unless said otherwise. */
  bags: readonly BagWish[];
};

export type PlainWish = {
  treasurer: Caller;
  foods: readonly PlainFood[];
  massUnit?: 'lb' | 'kg';
  freightMinorUnits?: number;
  rules?: Record<string, unknown>;
  hasInvoice?: boolean;
  isLanded?: boolean;
};

export type TestPlainBuy = TestBuy & {
  treasurer: Caller;
  bags: TestBag[];
  offers: Record<string, string>;
  /** What was ordered of each food, as the supplier bills it. */
  goods: Record<string, number>;
  massUnit: 'lb' | 'kg';
};

const TARE_GRAMS = 250;
const WHEAT = 'wheat-hard-red-winter';
let invoiceNumbers = 0;

/** Offers and prices of a plain buy as its quote sends them. */
const offerOf = ({ foodCode = WHEAT, bagSize = 50, bagPriceMinorUnits = 3600 }: PlainFood): OfferWish => ({
  foodCode,
  bagSize: bagSize,
  bagPriceMinorUnits,
});

/** A buy without deposits, ordered by what was pledged, landed with the bags named, and billed in full. */
export async function aPlainBuy(
  app: TestApp,
  storehouse: TestStorehouse,
  wish: PlainWish,
): Promise<TestPlainBuy> {
  const { treasurer, foods, massUnit = 'lb', freightMinorUnits = 0 } = wish;
  const { hasInvoice = true, isLanded = true } = wish;
  await changeRules(storehouse, { depositPercent: 0, ...wish.rules });
  const freightSteps = freightMinorUnits > 0 ? [{ fromGrams: 0, minorUnits: freightMinorUnits }] : [];
  const made = await aBuy(app, storehouse, {
    foods: foods.map(({ foodCode = WHEAT }) => foodCode),
    massUnit,
    quote: { offers: foods.map(offerOf), freightSteps },
  });
  for (const { foodCode = WHEAT, pledges } of foods)
    for (const { by, ...pledge } of pledges) await aPledge(by, made, { foodCode, massUnit, ...pledge });
  bodyOf(await storehouse.coordinator.post(`${made.path}/fixing`, {}), 201);
  bodyOf(await storehouse.coordinator.post(`${made.path}/order-consents`, { duty: 'coordinator' }), 201);
  bodyOf(await treasurer.post(`${made.path}/order-consents`, { duty: 'treasurer' }), 201);
  const { lines } = bodyOf(await storehouse.coordinator.get(`${made.path}/landing`));
  const read = (code: string) =>
    lines.find((line: { buyLineId: string }) => line.buyLineId === made.lines[code]);
  const codes = foods.map(({ foodCode = WHEAT }) => foodCode);
  const offers = Object.fromEntries(codes.map((code) => [code, read(code).bagOfferId]));
  const goods = Object.fromEntries(
    foods.map((food) => [
      food.foodCode ?? WHEAT,
      read(food.foodCode ?? WHEAT).orderedBags * (food.bagPriceMinorUnits ?? 3600),
    ]),
  );
  const buy = { ...made, treasurer, offers, goods, massUnit, bags: [] };
  const bags = await receivePlain(app, storehouse, buy, foods);
  if (hasInvoice) await billPlain(buy, { freightMinorUnits });
  if (isLanded) bodyOf(await storehouse.coordinator.post(`${buy.path}/landing`));
  return { ...buy, bags };
}

/** A lorry with the bags named; the next part of the delivery when one came before. */
export async function receivePlain(
  app: TestApp,
  storehouse: TestStorehouse,
  buy: TestPlainBuy,
  foods: readonly Pick<PlainFood, 'foodCode' | 'bagSize' | 'bags'>[],
): Promise<TestBag[]> {
  const { coordinator: caller } = storehouse;
  const delivery = await aDelivery(app, buy as never, { caller });
  const counts = foods.map(({ foodCode = WHEAT, bags }) => ({
    bagOfferId: buy.offers[foodCode] ?? '',
    countedBags: bags.length,
  }));
  await countDelivery(storehouse, delivery, counts);
  const bodies = foods.flatMap(({ foodCode = WHEAT, bagSize = 50, bags }) =>
    bags.map(({ netGrams = gramsOfPhysicalUnit(bagSize, buy.massUnit), isUnweighed, ...bag }) => ({
      bagOfferId: buy.offers[foodCode],
      ...(isUnweighed || bag.isExemptFromWeighing
        ? {}
        : { grossGrams: netGrams + TARE_GRAMS, tareGrams: TARE_GRAMS }),
      ...bag,
    })),
  );
  if (bodies.length === 0) return [];
  const path = `${storehouse.path}/deliveries/${delivery.id}/bags`;
  return bodyOf(await caller.post(path, { bags: bodies }), 201).bags;
}

/** The supplier bills all that was ordered, and the freight. */
export async function billPlain(
  buy: TestPlainBuy,
  { freightMinorUnits = 0 }: { freightMinorUnits?: number } = {},
): Promise<string> {
  const goods = Object.entries(buy.goods).map(([code, minorUnits]) => ({
    kind: 'goods',
    buyLineId: buy.lines[code],
    minorUnits,
  }));
  const freight = freightMinorUnits > 0 ? [{ kind: 'freight', minorUnits: freightMinorUnits }] : [];
  const invoice = {
    supplierId: buy.supplierId,
    number: `P-${++invoiceNumbers}`,
    onDay: '2026-09-01',
    lines: [...goods, ...freight],
  };
  return bodyOf(await buy.treasurer.post(`${buy.path}/invoices`, invoice), 201).id;
}

/** Splits every food of a plain buy by one rule. */
export async function splitPlain(storehouse: TestStorehouse, buy: TestPlainBuy, rule?: string) {
  for (const lineId of Object.values(buy.lines))
    bodyOf(
      await storehouse.coordinator.post(`${buy.path}/lines/${lineId}/splits`, rule ? { rule } : {}),
      201,
    );
}
