import type { StoryBuy } from '../buy.ts';
import { type Cast, idIn } from '../cast.ts';
import { NEXT_FOODS, NEXT_PLEDGES, NEXT_QUOTES } from '../next-grain.ts';
import { makePledge } from './pledging.ts';
import { type BuyPage, chooseQuote, enterQuote, linesOf } from './quoting.ts';

const NEXT_BUY_NAME = 'Winter grain';

/**
 * The next buy, which the story leaves open: it gathers pledges until long after the last page, so that whoever looks
 * can pledge in it and run it.
 */
export async function openNextBuy(cast: Cast, { supplierIds }: StoryBuy): Promise<void> {
  const { teller, coordinator, foodIds, of } = cast;
  teller.goTo('2026-11-19');
  const page = await coordinator.post<BuyPage>('/buys', {
    name: NEXT_BUY_NAME,
    gatheringClosesAt: '2027-01-09T05:00:00Z', // 8 January, 23:00 in Chicago
    orderOn: '2027-01-13',
    landingOn: '2027-01-20',
    landingPlace: 'the grange hall on Alder Row, side door, no dock',
    lines: NEXT_FOODS.map((food) => ({ foodId: idIn(foodIds, food), massUnit: 'lb', stepUnits: 5 })),
  });
  const buy: StoryBuy = { buyId: page.id, path: `/buys/${page.id}`, lineIds: linesOf(page), supplierIds };
  for (const quote of NEXT_QUOTES) {
    const quoteId = await enterQuote(cast, buy, quote);
    for (const food of quote.chosenFor) await chooseQuote(cast, buy, { food, quoteId });
  }
  await coordinator.post(`${buy.path}/stage`, { to: 'gathering' });
  teller.goTo('2026-11-20');
  for (const pledge of NEXT_PLEDGES) await makePledge(of(pledge.household).caller, buy, pledge);
  const households = new Set(NEXT_PLEDGES.map(({ household }) => household)).size;
  const foods = NEXT_FOODS.filter((food) => NEXT_PLEDGES.some((pledge) => pledge.food === food));
  teller.say(
    `${NEXT_BUY_NAME} is open until 8 January: ${households} households have pledged for ${foods.length} foods.`,
  );
}
