import { dayInZone } from '@sheafbook/units';
import type { Caller, TestApp } from './app.ts';
import { type BuyWish, bodyOf } from './buy.ts';
import { anOrderedBuy, type GrainHouseholds, type TestGrainBuy } from './fixed-buy.ts';
import { aPersonOf, grantDuty, type TestHousehold } from './household.ts';
import type { TestStorehouse } from './storehouse.ts';

export type GrainFood = 'wheat' | 'oats' | 'beans';

/** A numbered bag as it is presented. */
export type TestBag = {
  id: string;
  bagCode: string;
  bagNo: number;
  lotId: string;
  declaredGrams: number;
  netGrams: number;
  version: number;
};

/** One bag as it comes off the lorry: dry, with a woven bag's tare and its declared net, unless said otherwise. */
export type BagWish = {
  netGrams?: number;
  /** Left unweighed, at its declared net. */
  isUnweighed?: boolean;
  supplierMark?: string;
  harvestYear?: number;
  condition?: 'dry' | 'torn' | 'wet' | 'infested' | 'odour' | 'wrong';
  moistureTenthsPercent?: number;
  decision?: 'accepted' | 'accepted-with-note' | 'refused';
  note?: string;
  isExemptFromWeighing?: boolean;
};

export type LandingWish = BuyWish & {
  households?: GrainHouseholds;
  arrivedOn?: string;
  /** The bags that came of each food; by default those of the job map. */
  bags?: Partial<Record<GrainFood, readonly BagWish[]>>;
  /** Counted and numbered, but still ordered, when false. */
  isLanded?: boolean;
  /** The claims of 3.60 for the torn bag and 21.40 for the missing one; none when false. */
  hasClaims?: boolean;
  /** The invoice of 523.50; none when false. */
  hasInvoice?: boolean;
};

export type TestDelivery = { deliveryId: string; bags: Record<GrainFood, TestBag[]> };

/** The grain buy after its lorry. `offers` are its bag sizes, one a food. */
export type TestLandedBuy = TestGrainBuy &
  TestDelivery & {
    offers: Record<GrainFood, string>;
    claims: { torn: string; short: string } | null;
    invoiceId: string | null;
  };

const TARE_GRAMS = 250;
const GRAIN_BAG_GRAMS: Record<GrainFood, number> = { wheat: 22_680, oats: 22_680, beans: 11_340 };
const GRAIN_FOODS: readonly GrainFood[] = ['wheat', 'oats', 'beans'];

/** Job map 4.3: six bags of wheat, the last torn with 45 lb left in it; three of oats; four of the five of beans. */
export const GRAIN_BAGS: Record<GrainFood, readonly BagWish[]> = {
  wheat: [
    {},
    {},
    {},
    {},
    {},
    { netGrams: 20_412, condition: 'torn', decision: 'accepted-with-note', note: 'Torn.' },
  ],
  oats: [{}, {}, {}],
  beans: [{}, {}, {}, {}],
};

let invoiceNumbers = 0;

/** The bag size that a buy has of each grain, by its only quote. */
export async function offersOf(
  storehouse: TestStorehouse,
  buy: TestGrainBuy,
): Promise<Record<GrainFood, string>> {
  const { lines } = bodyOf(await storehouse.coordinator.get(`${buy.path}/landing`));
  const offerOf = (buyLineId: string): string =>
    lines.find((line: { buyLineId: string }) => line.buyLineId === buyLineId).bagOfferId;
  return { wheat: offerOf(buy.wheat), oats: offerOf(buy.oats), beans: offerOf(buy.beans) };
}

/** The bodies of bags as a client sends them. */
export function bagBodies(
  offers: Record<GrainFood, string>,
  bags: Partial<Record<GrainFood, readonly BagWish[]>>,
) {
  return GRAIN_FOODS.flatMap((food) =>
    (bags[food] ?? []).map(({ netGrams = GRAIN_BAG_GRAMS[food], isUnweighed, ...bag }) => ({
      bagOfferId: offers[food],
      ...(isUnweighed || bag.isExemptFromWeighing
        ? {}
        : { grossGrams: netGrams + TARE_GRAMS, tareGrams: TARE_GRAMS }),
      ...bag,
    })),
  );
}

/** A lorry that comes: a delivery without counts. */
export async function aDelivery(
  app: TestApp,
  buy: TestGrainBuy,
  {
    caller = buy.households.Ashdown.caller,
    arrivedOn = dayInZone(app.clock.now.getTime(), 'America/Chicago'),
  } = {},
): Promise<{ id: string; version: number; partNo: number }> {
  const facts = {
    supplierId: buy.supplierId,
    carrier: 'Valley Freight',
    arrivedOn,
    countedBy: 'Ada and Ben',
  };
  return bodyOf(await caller.post(`${buy.path}/deliveries`, facts), 201);
}

/** Counts what a delivery brought; gives its version after that. */
export async function countDelivery(
  storehouse: TestStorehouse,
  delivery: { id: string; version: number },
  counts: readonly { bagOfferId: string; countedBags: number }[],
): Promise<number> {
  const path = `${storehouse.path}/deliveries/${delivery.id}/counts`;
  return bodyOf(await storehouse.coordinator.put(path, { version: delivery.version, counts })).version;
}

/** Receives a part of a delivery: the lorry, its counts, and its bags with their numbers. */
export async function receiveBags(
  app: TestApp,
  storehouse: TestStorehouse,
  part: {
    buy: TestGrainBuy;
    offers: Record<GrainFood, string>;
    bags: Partial<Record<GrainFood, readonly BagWish[]>>;
    arrivedOn?: string | undefined;
  },
): Promise<TestDelivery> {
  const { buy, offers, bags, arrivedOn } = part;
  const delivery = await aDelivery(app, buy, arrivedOn === undefined ? {} : { arrivedOn });
  const foods = GRAIN_FOODS.filter((food) => bags[food] !== undefined);
  const counts = foods.map((food) => ({ bagOfferId: offers[food], countedBags: bags[food]?.length ?? 0 }));
  await countDelivery(storehouse, delivery, counts);
  const bodies = bagBodies(offers, bags);
  const numbered =
    bodies.length === 0
      ? { bags: [] }
      : bodyOf(
          await storehouse.coordinator.post(`${storehouse.path}/deliveries/${delivery.id}/bags`, {
            bags: bodies,
          }),
          201,
        );
  const of = (food: GrainFood): TestBag[] =>
    numbered.bags.filter((bag: { bagOfferId: string }) => bag.bagOfferId === offers[food]);
  return { deliveryId: delivery.id, bags: { wheat: of('wheat'), oats: of('oats'), beans: of('beans') } };
}

/** The invoice of the grain buy: goods of 435.50 and freight of 88.00 (job map 4.3). */
export function grainInvoice(buy: TestGrainBuy) {
  return {
    supplierId: buy.supplierId,
    number: `G-${++invoiceNumbers}`,
    onDay: '2026-09-01',
    lines: [
      { kind: 'goods', buyLineId: buy.wheat, minorUnits: 21_600 },
      { kind: 'goods', buyLineId: buy.oats, minorUnits: 11_250 },
      { kind: 'goods', buyLineId: buy.beans, minorUnits: 10_700 },
      { kind: 'freight', minorUnits: 8_800 },
    ],
  };
}

/** The claims of the job map's whole buy: the torn bag's lost tenth, and the bag of beans that never came. */
export async function claimGrain(buy: TestGrainBuy): Promise<{ torn: string; short: string }> {
  const { supplierId } = buy;
  const claim = async (wish: Record<string, unknown>): Promise<string> =>
    bodyOf(await buy.treasurer.post(`${buy.path}/claims`, { supplierId, ...wish }), 201).id;
  return {
    torn: await claim({ buyLineId: buy.wheat, kind: 'damage', minorUnits: 360, because: 'Torn: 5 lb lost.' }),
    short: await claim({ buyLineId: buy.beans, kind: 'short', minorUnits: 2140, because: 'One bag short.' }),
  };
}

/**
 * The job map's whole buy (its section 4.3) at the stage landed: 247,212 g in 13 numbered bags, claims of 25.00, and the
 * invoice of 523.50. Birchall is the treasurer; nobody is packing lead, see `aPackingLead`.
 */
export async function aLandedBuy(
  app: TestApp,
  storehouse: TestStorehouse,
  wish: LandingWish = {},
): Promise<TestLandedBuy> {
  const {
    arrivedOn,
    bags = GRAIN_BAGS,
    isLanded = true,
    hasClaims = true,
    hasInvoice = true,
    ...order
  } = wish;
  const buy = await anOrderedBuy(app, storehouse, order);
  const offers = await offersOf(storehouse, buy);
  const delivery = await receiveBags(app, storehouse, { buy, offers, bags, arrivedOn });
  const claims = hasClaims ? await claimGrain(buy) : null;
  const invoiceId = hasInvoice
    ? bodyOf(await buy.treasurer.post(`${buy.path}/invoices`, grainInvoice(buy)), 201).id
    : null;
  if (isLanded) bodyOf(await storehouse.coordinator.post(`${buy.path}/landing`));
  return { ...buy, ...delivery, offers, claims, invoiceId };
}

/** A further person of a household, who is packing lead and nothing else. */
export async function aPackingLead(
  app: TestApp,
  storehouse: TestStorehouse,
  household: TestHousehold,
  personName = 'Pat Corran',
): Promise<{ personId: string; caller: Caller }> {
  const person = await aPersonOf(app, storehouse, household, personName);
  await grantDuty(storehouse, person.personId, 'packing_lead');
  return person;
}
