import { gramsOfPhysicalUnit } from '@sheafbook/units';
import type { Answer, Caller, TestApp } from './app.ts';
import type { TestStorehouse } from './storehouse.ts';

/** A buy as its builder leaves it: open for pledges. `path` leads every address inside it; `lines` by food code. */
export type TestBuy = {
  buyId: string;
  path: string;
  lines: Record<string, string>;
  /** The default quote, chosen for every line; empty when the buy was asked for without one. */
  quoteId: string;
  supplierId: string;
  version: number;
};

export type BuyWish = {
  name?: string;
  /** Food codes of the lines, in their order. */
  foods?: readonly string[];
  massUnit?: 'lb' | 'kg';
  stepUnits?: number;
  gatheringClosesAt?: string;
  orderOn?: string;
  /** What is quoted for every line by one supplier; `null` leaves the buy without quotes, in planning. */
  quote?: QuoteWish | null;
  /** Stays in planning with its quote chosen when false. */
  isOpen?: boolean;
};

export type OfferWish = {
  foodCode?: string;
  bagSize?: number;
  bagPriceMinorUnits?: number;
  breaks?: readonly { fromBags: number; bagPriceMinorUnits: number }[];
  breakKind?: 'all-units' | 'incremental';
  mostBags?: number;
};

export type QuoteWish = {
  supplierId?: string;
  reference?: string;
  validUntil?: string;
  /** Bags of whole line units with the price of one, by number of bags. One size at one price by default. */
  offers?: readonly OfferWish[];
  freightSteps?: readonly { fromGrams: number; minorUnits: number }[];
  freightFreeFromMinorUnits?: number;
  minimumGoodsMinorUnits?: number;
  minimumGrams?: number;
  cropYear?: number;
};

export type PledgeWish = {
  foodCode?: string;
  /** Pounds (or kilograms, with `massUnit`); least and most are the wanted when they are left out. */
  wanted: number;
  least?: number;
  most?: number;
  massUnit?: 'lb' | 'kg';
  wholeBags?: boolean;
  ceilingMinorUnits?: number;
  ceilingPerGrams?: number;
  substitute?: string;
};

let names = 0;

export function bodyOf(answer: Answer, ...statuses: readonly number[]) {
  const isFine = statuses.length > 0 ? statuses.includes(answer.status) : answer.status < 300;
  if (!isFine) throw new Error(`${answer.status} ${JSON.stringify(answer.body)}`);
  return answer.body;
}

/** A supplier's id. The name must differ from that of others in the storehouse. */
export async function aSupplier(storehouse: TestStorehouse, name = `Mill ${++names}`): Promise<string> {
  return bodyOf(await storehouse.coordinator.post(`${storehouse.path}/suppliers`, { name }), 201).id;
}

/** The id of each food of the storehouse by its code. */
export async function foodIdsOf(storehouse: TestStorehouse): Promise<Record<string, string>> {
  const { foods } = bodyOf(await storehouse.coordinator.get(`${storehouse.path}/foods?limit=200`));
  return Object.fromEntries(foods.map((food: { id: string; foodCode: string }) => [food.foodCode, food.id]));
}

/**
 * A buy of hard wheat in 50 lb bags at 36.00 without freight, quoted, chosen and open for pledges until 20 September
 * 2026, a few weeks after the clock of `openTestApp`.
 */
export async function aBuy(_app: TestApp, storehouse: TestStorehouse, wish: BuyWish = {}): Promise<TestBuy> {
  const { foods = ['wheat-hard-red-winter'], massUnit = 'lb', stepUnits = 5, quote = {} } = wish;
  const foodIds = await foodIdsOf(storehouse);
  const made = bodyOf(
    await storehouse.coordinator.post(`${storehouse.path}/buys`, {
      name: wish.name ?? `Buy ${++names}`,
      gatheringClosesAt: wish.gatheringClosesAt ?? '2026-09-20T23:00:00Z',
      orderOn: wish.orderOn ?? '2026-09-24',
      lines: foods.map((code) => ({ foodId: foodIds[code], massUnit, stepUnits })),
    }),
    201,
  );
  const lines = Object.fromEntries(
    made.lines.map((line: { id: string; food: { foodCode: string } }) => [line.food.foodCode, line.id]),
  );
  const buy = { buyId: made.id, path: `${storehouse.path}/buys/${made.id}`, lines };
  if (quote === null) return { ...buy, quoteId: '', supplierId: '', version: made.version };
  const supplierId = quote.supplierId ?? (await aSupplier(storehouse));
  const quoteId = await aQuote(storehouse, buy, { ...quote, supplierId });
  const version = wish.isOpen === false ? made.version : await openForPledges(storehouse, buy);
  return { ...buy, quoteId, supplierId, version };
}

/** A quote's id. It offers every line of the buy, or those that `offers` name, and is chosen for them. */
export async function aQuote(
  storehouse: TestStorehouse,
  buy: Pick<TestBuy, 'path' | 'lines'>,
  wish: QuoteWish = {},
): Promise<string> {
  const { offers: wished, ...terms } = wish;
  const offers: readonly OfferWish[] = wished ?? Object.keys(buy.lines).map((foodCode) => ({ foodCode }));
  const [onlyCode = ''] = Object.keys(buy.lines);
  const quote = bodyOf(
    await storehouse.coordinator.post(`${buy.path}/quotes`, {
      validUntil: '2026-10-31',
      ...terms,
      supplierId: wish.supplierId ?? (await aSupplier(storehouse)),
      offers: offers.map(({ foodCode = onlyCode, bagSize = 50, bagPriceMinorUnits = 3600, ...offer }) => ({
        buyLineId: buy.lines[foodCode],
        bagSize,
        breaks: [{ fromBags: 1, bagPriceMinorUnits }],
        ...offer,
      })),
    }),
    201,
  );
  for (const lineId of new Set(quote.offers.map((offer: { buyLineId: string }) => offer.buyLineId)))
    await chooseQuote(storehouse, buy, { lineId: String(lineId), quoteId: quote.id });
  return quote.id;
}

/** Chooses a quote for a line at the line's present version. */
export async function chooseQuote(
  storehouse: TestStorehouse,
  buy: Pick<TestBuy, 'path'>,
  { lineId, quoteId }: { lineId: string; quoteId: string | null },
) {
  const { lines } = bodyOf(await storehouse.coordinator.get(buy.path));
  const { version } = lines.find((line: { id: string }) => line.id === lineId);
  return bodyOf(await storehouse.coordinator.put(`${buy.path}/lines/${lineId}/quote`, { quoteId, version }));
}

/** Moves a planned buy to gathering; gives its version after that. */
export async function openForPledges(storehouse: TestStorehouse, buy: Pick<TestBuy, 'path'>) {
  const moved = bodyOf(await storehouse.coordinator.post(`${buy.path}/stage`, { to: 'gathering' }));
  return Number(moved.version);
}

/** The body of a pledge in grams of physical units, such as a helper or a test sends. */
export function pledgeBody(buy: Pick<TestBuy, 'lines'>, wish: PledgeWish) {
  const { wanted, least = wanted, most = wanted, massUnit = 'lb' } = wish;
  const grams = (count: number) => gramsOfPhysicalUnit(count, massUnit);
  const code = wish.foodCode ?? Object.keys(buy.lines)[0] ?? '';
  const { ceilingMinorUnits, ceilingPerGrams = grams(1), substitute } = wish;
  return {
    buyLineId: buy.lines[code],
    leastGrams: grams(least),
    wantedGrams: grams(wanted),
    mostGrams: grams(most),
    wholeBags: wish.wholeBags ?? false,
    ...(ceilingMinorUnits === undefined ? {} : { ceilingMinorUnits, ceilingPerGrams }),
    ...(substitute === undefined ? {} : { substituteLineId: buy.lines[substitute] }),
    asTyped: `${wanted} ${massUnit}`,
  };
}

/** A household's pledge, on the buy's first line unless a food is named; gives it as presented. */
export async function aPledge(caller: Caller, buy: Pick<TestBuy, 'path' | 'lines'>, wish: PledgeWish) {
  return bodyOf(await caller.post(`${buy.path}/pledges`, pledgeBody(buy, wish)), 201);
}
