import { lineOf, money, type StoryBuy } from '../buy.ts';
import type { Cast } from '../cast.ts';
import { BEANS, type BuyFood, FOODS, LENTILS, OATS, RICE, WHEAT } from '../grain.ts';

/** The rule that the group chose for each food, having seen all six side by side. */
const RULES: Readonly<Record<BuyFood, string>> = {
  [WHEAT]: 'rotation-of-loss',
  [RICE]: 'equal-losses',
  [OATS]: 'proportional',
  [BEANS]: 'need-first',
  [LENTILS]: 'equal-awards',
};

type Comparison = { availableGrams: number; rules: { rule: string; ratioRange: unknown }[] };
type Charges = { chargedMinorUnits: number; clearingMinorUnits: number; commonStockMinorUnits: number };

/** Each food is split by its rule, and every cost is charged to the cent. */
export async function shareOut(cast: Cast, buy: StoryBuy): Promise<void> {
  const { teller, coordinator } = cast;
  teller.goTo('2026-10-31');
  for (const food of FOODS) await splitFood(cast, buy, food);
  const charges = await coordinator.post<Charges>(`${buy.path}/sharing-out`);
  teller.say(
    `Shared out: ${money(charges.chargedMinorUnits)} charged, of it ${money(charges.commonStockMinorUnits)} ` +
      `to common stock; clearing stands at ${money(charges.clearingMinorUnits)}.`,
  );
  await pickUp(cast, buy, { from: '2026-11-01T15:00:00Z', to: '2026-11-01T19:00:00Z' });
}

/** Splits what there is of a food. A later round keeps the first one's rule, so none is named then. */
export async function splitFood(
  { teller, coordinator }: Cast,
  buy: StoryBuy,
  food: BuyFood,
  rule: string | null = RULES[food],
): Promise<void> {
  const path = `${buy.path}/lines/${lineOf(buy, food)}`;
  const { rules, availableGrams } = await coordinator.get<Comparison>(`${path}/split-comparison`);
  await coordinator.post(`${path}/splits`, rule === null ? {} : { rule });
  const chosen = rule === null ? 'its first rule' : `${rule}, one of ${rules.length}`;
  teller.say(`${availableGrams} g of ${food} are split by ${chosen}.`);
}

type PickUps = { waiting: { householdId: string }[] };

/** Whoever has food waiting comes for it and signs. */
export async function pickUp(
  { teller, coordinator, neighbours }: Cast,
  buy: StoryBuy,
  window: { from: string; to: string },
): Promise<void> {
  teller.goTo(window.from.slice(0, 10));
  const { waiting } = await coordinator.get<PickUps>(`${buy.path}/pick-ups`);
  const waitsFor = new Set(waiting.map((piece) => piece.householdId));
  for (const { personName, caller } of neighbours.filter((one) => waitsFor.has(one.householdId))) {
    const hours = { startsAt: window.from, endsAt: window.to };
    const { id } = await caller.post<{ id: string }>(`${buy.path}/pick-ups`, hours);
    await coordinator.post(`/pick-ups/${id}/collection`, { signedBy: personName });
  }
  teller.say(`${waitsFor.size} households fetch their food and sign for it.`);
}
