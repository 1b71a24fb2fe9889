import { lineOf, money, type StoryBuy, supplierOf } from '../buy.ts';
import { type Cast, idIn } from '../cast.ts';
import { type BuyFood, CARRIER, FOODS, QUOTES, type StoryQuote } from '../grain.ts';

export const BUY_NAME = 'Autumn grain';

type Line = { id: string; version: number; food: { foodCode: string } };
export type BuyPage = { id: string; lines: Line[] };
type Comparison = {
  lines: { at: string; buyLineId: string; cheapestQuoteId: string | null; quotes: unknown[] }[];
  basket: { totalMinorUnits: number } | null;
};

/** Cora plans the buy, gathers three quotes, compares them landed, and opens it for pledges. */
export async function gatherQuotes(cast: Cast): Promise<StoryBuy> {
  const { teller, coordinator } = cast;
  teller.goTo('2026-09-07');
  const buy = await planBuy(cast);
  const quoteIds = new Map<StoryQuote, string>();
  for (const quote of QUOTES) quoteIds.set(quote, await enterQuote(cast, buy, quote));
  const { lines, basket } = await coordinator.get<Comparison>(`${buy.path}/comparison?grams=${A_LINE_GRAMS}`);
  teller.say(
    `Three quotes compared on ${lines.length} rows; the cheapest basket lands at ${money(basket?.totalMinorUnits ?? 0)}.`,
  );
  for (const [quote, quoteId] of quoteIds)
    for (const food of quote.chosenFor) await chooseQuote(cast, buy, { food, quoteId });
  teller.goTo('2026-09-14');
  await coordinator.post(`${buy.path}/stage`, { to: 'gathering' });
  teller.say(`${BUY_NAME} is open for pledges until 16 October.`);
  return buy;
}

/** Nobody has pledged yet, so quotes are compared at 200 lb of each food. */
const A_LINE_GRAMS = 90_720;

async function planBuy({ coordinator, foodIds }: Cast): Promise<StoryBuy> {
  const supplierIds = new Map<string, string>();
  for (const name of [...QUOTES.map((quote) => quote.supplier), CARRIER])
    supplierIds.set(name, (await coordinator.post<{ id: string }>('/suppliers', { name })).id);
  const page = await coordinator.post<BuyPage>('/buys', {
    name: BUY_NAME,
    gatheringClosesAt: '2026-10-17T04:00:00Z', // 16 October, 23:00 in Chicago
    orderOn: '2026-10-21',
    landingOn: '2026-10-28',
    landingPlace: 'the grange hall on Alder Row, side door, no dock',
    lines: FOODS.map((food) => ({ foodId: idIn(foodIds, food), massUnit: 'lb', stepUnits: 5 })),
  });
  return { buyId: page.id, path: `/buys/${page.id}`, lineIds: linesOf(page), supplierIds };
}

export const linesOf = (page: BuyPage): ReadonlyMap<string, string> =>
  new Map(page.lines.map((line) => [line.food.foodCode, line.id]));

export async function enterQuote({ coordinator }: Cast, buy: StoryBuy, quote: StoryQuote): Promise<string> {
  const { id } = await coordinator.post<{ id: string }>(`${buy.path}/quotes`, {
    ...quote.terms,
    supplierId: supplierOf(buy, quote.supplier),
    offers: quote.offers.map(({ food, bagPounds, breaks, breakKind = 'all-units' }) => ({
      buyLineId: lineOf(buy, food),
      bagSize: bagPounds,
      breakKind,
      breaks: breaks.map(([fromBags, bagPriceMinorUnits]) => ({ fromBags, bagPriceMinorUnits })),
    })),
  });
  return id;
}

export async function chooseQuote(
  { coordinator }: Cast,
  buy: StoryBuy,
  { food, quoteId }: { food: BuyFood; quoteId: string },
): Promise<void> {
  const lineId = lineOf(buy, food);
  const { lines } = await coordinator.get<BuyPage>(buy.path);
  const version = lines.find((line) => line.id === lineId)?.version;
  await coordinator.put(`${buy.path}/lines/${lineId}/quote`, { quoteId, version });
}
