import { openTestApp, type TestApp } from './app.ts';
import { bodyOf } from './buy.ts';
import type { TestHousehold } from './household.ts';
import { aPackingLead } from './landed-buy.ts';
import { aSharedBuy, type TestSharedBuy } from './shared-buy.ts';
import { type Shelves, shelvesOf, type TestPiece, wheatOf } from './shelf.ts';
import { aStorehouse, type TestStorehouse } from './storehouse.ts';

export type WishBody = {
  foodId: string;
  containerKindId: string;
  treatment: string;
  containers: number;
  gramsEach: number;
};

/** Households with wheat in bags and somebody who leads packing: what a packing day starts from. */
export type TestHall = {
  buy: TestSharedBuy;
  shelves: Shelves;
  lead: Awaited<ReturnType<typeof aPackingLead>>;
  wheatId: string;
  wheat: Record<'Ashdown' | 'Birchall' | 'Corran' | 'Dell', TestPiece>;
};

export async function aHall(app: TestApp, storehouse: TestStorehouse): Promise<TestHall> {
  const buy = await aSharedBuy(app, storehouse);
  const { Ashdown, Birchall, Corran, Dell } = buy.households;
  const shelves = await shelvesOf(app, storehouse);
  const lead = await aPackingLead(app, storehouse, Corran);
  const piece = (household: TestHousehold) => wheatOf(storehouse, buy, household);
  const wheat = {
    ...{ Ashdown: await piece(Ashdown), Birchall: await piece(Birchall) },
    ...{ Corran: await piece(Corran), Dell: await piece(Dell) },
  };
  const { bags } = bodyOf(await Dell.caller.get(`${storehouse.path}/own-bags`));
  const own = bags.find((bag: { bagId: string }) => bag.bagId === wheat.Dell.bagId);
  return { buy, shelves, lead, wheat, wheatId: own.food.id };
}

/** An app with one storehouse that has a hall to pack in: what most files about packing begin with. */
export async function openHall(): Promise<{ app: TestApp; storehouse: TestStorehouse; hall: TestHall }> {
  const app = await openTestApp();
  const storehouse = await aStorehouse(app);
  return { app, storehouse, hall: await aHall(app, storehouse) };
}

let days = 0;

/** A session of six hours on a day in December; gives its address. */
export async function aPackingSession(
  storehouse: TestStorehouse,
  hall: Pick<TestHall, 'lead'>,
  wish: Record<string, unknown> = {},
): Promise<string> {
  const facts = { name: `Canning day ${++days}`, place: 'the hall', ...HOURS, ...wish };
  const { id } = bodyOf(await hall.lead.caller.post(`${storehouse.path}/packing-sessions`, facts), 201);
  return `${storehouse.path}/packing-sessions/${id}`;
}
export const HOURS = { startsAt: '2026-12-05T17:00:00Z', endsAt: '2026-12-05T23:00:00Z' };

/** So many No. 10 cans of wheat at 2,600 g, unless a test says otherwise. */
export const cansOf = (hall: TestHall, wish: Partial<WishBody> = {}): WishBody => ({
  foodId: hall.wheatId,
  containerKindId: hall.shelves.kinds['can-no-10'] ?? '',
  treatment: 'oxygen-absorber',
  containers: 4,
  gramsEach: 2500,
  ...wish,
});

type Owner = keyof TestHall['wheat'];

/** A household's wheat comes to the line; gives how many grams of it. */
export async function bringWheat(hall: TestHall, day: string, name: Owner): Promise<number> {
  const { householdId } = hall.buy.households[name];
  const { bagId } = hall.wheat[name];
  const { bags } = bodyOf(await hall.lead.caller.post(`${day}/bags`, { bagId, householdId }));
  const own = bags.find((bag: { householdId: string }) => bag.householdId === householdId);
  return own.broughtGrams;
}

type PourFacts = {
  line: number;
  targetGrams: number;
  pouredAt: string;
  containerKindId: string | undefined;
  treatment: string;
  absorberMillilitres: number;
};

/** Somebody measured how moist the bag with a household's wheat is. Units: tenths of a per cent. */
export async function measureWheat(
  hall: TestHall,
  storehouse: TestStorehouse,
  name: Owner,
  tenths: number | null,
) {
  const path = `${storehouse.path}/bags/${hall.wheat[name].bagId}`;
  const { version, condition, decision, note, isExemptFromWeighing } = bodyOf(
    await hall.lead.caller.get(path),
  );
  const said = { version, condition, decision, note, isExemptFromWeighing, moistureTenthsPercent: tenths };
  bodyOf(await hall.lead.caller.put(path, said));
}

/** No. 10 cans of a household's wheat at the target of 2,000 g, unless a test says otherwise. */
export const aPourBody = (
  hall: TestHall,
  { name, ...wish }: { name: Owner; grams: number[] } & Partial<PourFacts>,
) => ({
  ...{ line: 1, bagId: hall.wheat[name].bagId, householdId: hall.buy.households[name].householdId },
  ...{ containerKindId: hall.shelves.kinds['can-no-10'], treatment: 'oxygen-absorber', targetGrams: 2000 },
  ...wish,
});
