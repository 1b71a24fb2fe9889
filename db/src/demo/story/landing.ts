import { lineOf, money, type StoryBuy, supplierOf } from '../buy.ts';
import type { Cast } from '../cast.ts';
import { BEANS, type BuyFood, CARRIER, LENTILS, OATS, RICE, type SupplierName, WHEAT } from '../grain.ts';

type StoryBag = { id: string; bagNo: number; bagCode: string; condition: string; buyLineId: string };

type Sheet = {
  lines: { buyLineId: string; bagOfferId: string }[];
  proposedClaims: { supplierId: string; buyLineId: string; kind: string; minorUnits: number }[];
};
type BagWish = { supplierMark: string; netGrams: number } & Record<string, unknown>;
type FoodBags = { food: BuyFood; bags: readonly BagWish[] };
export type Arrival = { supplier: SupplierName; arrivedOn: string; foods: readonly FoodBags[] };

const TARE_GRAMS = 250; // a woven bag
const LARGE_BAG_GRAMS = 22_680;
export const SMALL_BAG_GRAMS = 11_340;
const TORN_BAG_GRAMS = 20_412; // 5 lb are on the floor of the lorry

const same = (count: number, bag: BagWish): BagWish[] => Array.from({ length: count }, () => bag);

/** Nineteen of the twenty bags of wheat, in two lots: one torn, one damp. */
const WHEAT_BAGS: readonly BagWish[] = [
  ...same(11, { supplierMark: 'MH-26-118', harvestYear: 2026, netGrams: LARGE_BAG_GRAMS }),
  ...same(6, { supplierMark: 'MH-26-121', harvestYear: 2026, netGrams: LARGE_BAG_GRAMS }),
  {
    supplierMark: 'MH-26-121',
    netGrams: TORN_BAG_GRAMS,
    condition: 'torn',
    decision: 'accepted-with-note',
    note: 'Torn on the side, taped up, weighed.',
  },
  {
    supplierMark: 'MH-26-121',
    netGrams: LARGE_BAG_GRAMS,
    condition: 'wet',
    decision: 'accepted-with-note',
    note: 'Damp at the bottom seam.',
    moistureTenthsPercent: 138,
  },
];

const THORNFORD: readonly FoodBags[] = [
  {
    food: RICE,
    bags: [
      ...same(6, { supplierMark: 'T-R7', netGrams: LARGE_BAG_GRAMS }),
      {
        supplierMark: 'T-R7',
        netGrams: LARGE_BAG_GRAMS,
        condition: 'wet',
        decision: 'accepted-with-note',
        note: 'Wet through under the tarpaulin.',
      },
    ],
  },
  { food: OATS, bags: same(3, { supplierMark: 'T-O2', netGrams: LARGE_BAG_GRAMS }) },
  { food: BEANS, bags: same(5, { supplierMark: 'T-B4', netGrams: SMALL_BAG_GRAMS }) },
  { food: LENTILS, bags: same(3, { supplierMark: 'T-L1', netGrams: SMALL_BAG_GRAMS }) },
];

/** Two lorries come, a bag short each; what can be claimed is claimed within the window, and the bills come in. */
export async function landBuy(cast: Cast, buy: StoryBuy): Promise<void> {
  const { teller, coordinator, packingLead } = cast;
  teller.goTo('2026-10-28');
  const wheat = await receive(cast, buy, {
    supplier: 'Marl Hill Mill',
    arrivedOn: '2026-10-28',
    foods: [{ food: WHEAT, bags: WHEAT_BAGS }],
  });
  teller.say('Marl Hill sends 19 of 20 bags of wheat: one torn, one damp, which is on hold at once.');
  teller.goTo('2026-10-29');
  const thornford = {
    supplier: 'Thornford Seed & Pulse',
    arrivedOn: '2026-10-29',
    foods: THORNFORD,
  } as const;
  const others = await receive(cast, buy, thornford);
  teller.say('Thornford sends the rest but for a bag of beans; a bag of rice is wet through.');
  await claimWhatLacks(cast, buy);
  await coordinator.post(`${buy.path}/landing`);
  teller.goTo('2026-10-30');
  const rice = others.filter((bag) => bag.buyLineId === lineOf(buy, RICE));
  await packingLead.post(`/bags/${bagThatIs(rice, 'wet').id}/discard`, {
    finding: 'Sour and clumped. Nothing to save.',
  });
  const jar = { grams: 250, to: 'sampled', because: 'a jar for the sprouting test' };
  await packingLead.post(`/bags/${bagThatIs(wheat, 'dry').id}/loss`, jar);
  const spill = { grams: 400, to: 'spilled', because: 'the stitching ripped on the scale' };
  await packingLead.post(`/bags/${bagThatIs(rice, 'dry').id}/loss`, spill);
  teller.say('The wet rice is thrown away, a jar of wheat is sampled, some rice is spilt.');
  await enterBills(cast, buy);
}

/** Receives one lorry: its counts, then its bags, numbered and weighed. */
export async function receive(
  { coordinator, packingLead }: Cast,
  buy: StoryBuy,
  { supplier, arrivedOn, foods }: Arrival,
): Promise<StoryBag[]> {
  const { lines } = await coordinator.get<Sheet>(`${buy.path}/landing`);
  const offerOf = (food: BuyFood) => lines.find((line) => line.buyLineId === lineOf(buy, food))?.bagOfferId;
  const delivery = await coordinator.post<{ id: string; version: number }>(`${buy.path}/deliveries`, {
    supplierId: supplierOf(buy, supplier),
    carrier: supplier === 'Marl Hill Mill' ? 'the mill’s own lorry' : CARRIER,
    arrivedOn,
    countedBy: 'Cora Corran and Joan Jessop',
  });
  const path = `/deliveries/${delivery.id}`;
  const counts = foods.map(({ food, bags }) => ({ bagOfferId: offerOf(food), countedBags: bags.length }));
  await coordinator.put(`${path}/counts`, { version: delivery.version, counts });
  const bags = foods.flatMap(({ food, bags: wishes }) =>
    wishes.map(({ netGrams, ...bag }) => ({
      ...bag,
      bagOfferId: offerOf(food),
      grossGrams: netGrams + TARE_GRAMS,
      tareGrams: TARE_GRAMS,
    })),
  );
  return (await packingLead.post<{ bags: StoryBag[] }>(`${path}/bags`, { bags })).bags;
}

/** A bag of the condition that may be needed; the story's own data hold one. */
function bagThatIs(bags: readonly StoryBag[], condition: string): StoryBag {
  const found = bags.find((bag) => bag.condition === condition);
  if (!found) throw new Error(`no bag of the story came in ${condition}`);
  return found;
}

const BECAUSE: Readonly<Record<string, string>> = {
  short: 'Counted twice at the lorry, by two people.',
  damage: 'Photographed at the lorry, and written on its papers.',
};

/** Claims whatever the landing sheet proposes. */
async function claimWhatLacks({ teller, treasurer }: Cast, buy: StoryBuy): Promise<void> {
  const { proposedClaims } = await treasurer.get<Sheet>(`${buy.path}/landing`);
  for (const { supplierId, buyLineId, kind, minorUnits } of proposedClaims)
    await treasurer.post(`${buy.path}/claims`, {
      ...{ supplierId, buyLineId, kind, minorUnits },
      because: BECAUSE[kind] ?? 'Written on the landing sheet.',
    });
  const total = proposedClaims.reduce((sum, claim) => sum + claim.minorUnits, 0);
  teller.say(`Ned claims ${money(total)} for what came short, torn and wet.`);
}

type Order = {
  supplier: { id: string; name: string };
  freightMinorUnits: number;
  lines: { lineId: string; goodsMinorUnits: number }[];
};

/** Both suppliers bill as ordered; the carrier bills for its tail-lift. */
async function enterBills({ teller, treasurer }: Cast, buy: StoryBuy): Promise<void> {
  const { orders } = await treasurer.get<{ orders: Order[] }>(`${buy.path}/orders`);
  const onDay = '2026-10-30';
  for (const { supplier, freightMinorUnits, lines } of orders) {
    const goods = lines.map((line) => ({
      kind: 'goods',
      buyLineId: line.lineId,
      minorUnits: line.goodsMinorUnits,
    }));
    const freight = { kind: 'freight', minorUnits: freightMinorUnits };
    const number = `${supplier.name.slice(0, 1)}-20417`;
    await treasurer.post(`${buy.path}/invoices`, {
      ...{ supplierId: supplier.id, number, onDay },
      lines: [...goods, freight],
    });
  }
  await treasurer.post(`${buy.path}/invoices`, {
    ...{ supplierId: supplierOf(buy, CARRIER), number: 'VF 88', onDay },
    lines: [{ kind: 'other', minorUnits: 1_200 }],
  });
  teller.say('Three bills are in: the mill’s, Thornford’s, and the tail-lift.');
}
