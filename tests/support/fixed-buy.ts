import { gramsOfPhysicalUnit } from '@sheafbook/units';
import { type Answer, type Caller, openTestApp, type TestApp } from './app.ts';
import { booksOf } from './books-text.ts';
import { aBuy, aPledge, type BuyWish, bodyOf, type PledgeWish, type TestBuy } from './buy.ts';
import { aHousehold, type TestHousehold } from './household.ts';
import { aStorehouse, type TestStorehouse } from './storehouse.ts';

export type GrainHouseholds = Record<'Ashdown' | 'Birchall' | 'Corran' | 'Dell', TestHousehold>;

/** The buy of "Autumn grain" with its four households; Ashdown coordinates, Birchall keeps the money. */
export type TestGrainBuy = TestBuy & {
  households: GrainHouseholds;
  treasurer: Caller;
  wheat: string;
  oats: string;
  beans: string;
};

const WHEAT = 'wheat-hard-red-winter';
const OATS = 'oats-rolled';
const BEANS = 'beans-black';

/** Pounds wanted, and the most where it is more: Corran has room for Dell's wheat, Birchall for its oats. */
const GRAIN_PLEDGES: Record<keyof GrainHouseholds, readonly PledgeWish[]> = {
  Ashdown: [
    { foodCode: WHEAT, wanted: 120 },
    { foodCode: OATS, wanted: 30 },
    { foodCode: BEANS, wanted: 50 },
  ],
  Birchall: [
    { foodCode: WHEAT, wanted: 100 },
    { foodCode: OATS, wanted: 40, most: 50 },
    { foodCode: BEANS, wanted: 35 },
  ],
  Corran: [
    { foodCode: WHEAT, wanted: 50, most: 80 },
    { foodCode: OATS, wanted: 70 },
    { foodCode: BEANS, wanted: 25 },
  ],
  Dell: [
    { foodCode: WHEAT, wanted: 30 },
    { foodCode: OATS, wanted: 10 },
    { foodCode: BEANS, wanted: 15 },
  ],
};

/** An app with one storehouse and the four households in it: what most files about a buy begin with. */
export async function openGrain() {
  const app = await openTestApp();
  const storehouse = await aStorehouse(app);
  return { app, storehouse, households: await grainHouseholds(app, storehouse) };
}

/** The four households of the job map in their seats; Ashdown is the first run's own. */
export async function grainHouseholds(app: TestApp, storehouse: TestStorehouse): Promise<GrainHouseholds> {
  const [first] = await app.admin<{ household_id: string; person_id: string }[]>`
    select h.household_id, p.person_id from book.household h join book.person p using (storehouse_id, household_id)
    where h.storehouse_id = ${storehouse.storehouseId} and h.seat = 1`;
  if (!first) throw new Error('a storehouse is founded with its first household');
  const { coordinator: caller } = storehouse;
  const Ashdown = { householdId: first.household_id, personId: first.person_id, caller };
  const Birchall = await aHousehold(app, storehouse, 'Birchall', { duties: ['treasurer'] });
  const Corran = await aHousehold(app, storehouse, 'Corran');
  const Dell = await aHousehold(app, storehouse, 'Dell');
  return { Ashdown, Birchall, Corran, Dell };
}

/** New rules in force, the present ones with some changed. */
export async function changeRules(storehouse: TestStorehouse, changed: Record<string, unknown>) {
  const { rules } = bodyOf(await storehouse.coordinator.get(storehouse.path));
  const { decidedAt: _, ...inForce } = rules;
  return bodyOf(
    await storehouse.coordinator.post(`${storehouse.path}/rules`, { ...inForce, ...changed }),
    201,
  );
}

/**
 * The job map's whole buy (its section 4.3) with every pledge in and nothing fixed yet: wheat 50 lb at 36.00, oats 50 lb
 * at 37.50, black beans 25 lb at 21.40, freight 88.00 flat in a blend of a half, common stock up to 25 lb. Pass
 * `households` to open a second buy in the same storehouse.
 */
export async function aGrainBuy(
  app: TestApp,
  storehouse: TestStorehouse,
  wish: BuyWish & { households?: GrainHouseholds } = {},
): Promise<TestGrainBuy> {
  const households = wish.households ?? (await grainHouseholds(app, storehouse));
  await changeRules(storehouse, {
    freightBasis: 'blend',
    blendNumerator: 1,
    blendDenominator: 2,
    commonCapGrams: gramsOfPhysicalUnit(25, 'lb'),
  });
  const { households: _, ...buyWish } = wish;
  const buy = await aBuy(app, storehouse, {
    foods: [WHEAT, OATS, BEANS],
    quote: {
      offers: [
        { foodCode: WHEAT, bagSize: 50, bagPriceMinorUnits: 3600 },
        { foodCode: OATS, bagSize: 50, bagPriceMinorUnits: 3750 },
        { foodCode: BEANS, bagSize: 25, bagPriceMinorUnits: 2140 },
      ],
      freightSteps: [{ fromGrams: 0, minorUnits: 8800 }],
    },
    ...buyWish,
  });
  for (const [name, pledges] of Object.entries(GRAIN_PLEDGES)) {
    const household = households[name as keyof GrainHouseholds];
    for (const pledge of pledges) await aPledge(household.caller, buy, pledge);
  }
  const [wheat = '', oats = '', beans = ''] = [WHEAT, OATS, BEANS].map((code) => buy.lines[code]);
  return { ...buy, households, treasurer: households.Birchall.caller, wheat, oats, beans };
}

/** The same buy fixed: 6, 3 and 5 bags, deposits of 72.00, 63.00, 53.00 and 23.00 asked. */
export async function aFixedBuy(
  app: TestApp,
  storehouse: TestStorehouse,
  wish: BuyWish & { households?: GrainHouseholds } = {},
): Promise<TestGrainBuy> {
  const buy = await aGrainBuy(app, storehouse, wish);
  bodyOf(await storehouse.coordinator.post(`${buy.path}/fixing`, {}), 201);
  return buy;
}

/** What each household of the grain buy is asked as deposit, in minor units (job map 4.3). */
export const GRAIN_DEPOSITS = { Ashdown: 7200, Birchall: 6300, Corran: 5300, Dell: 2300 } as const;

/** Takes in every deposit of the grain buy by bank, as the treasurer does. */
export async function payDeposits(
  buy: TestGrainBuy,
  amounts: Partial<Record<keyof GrainHouseholds, number>> = GRAIN_DEPOSITS,
): Promise<void> {
  for (const [name, minorUnits] of Object.entries(amounts)) {
    const { householdId } = buy.households[name as keyof GrainHouseholds];
    const deposit = { householdId, minorUnits, till: 'bank' };
    bodyOf(await buy.treasurer.post(`${buy.path}/deposits`, deposit), 201);
  }
}

/** The estimate and the deposit asked of each household of the grain buy, as it sees them itself. */
export async function asksOf(buy: Pick<TestBuy, 'path'>, households: GrainHouseholds) {
  const asks = [];
  for (const [name, { caller }] of Object.entries(households)) {
    const { estimateMinorUnits, askedMinorUnits } = bodyOf(await caller.get(`${buy.path}/deposits/own`));
    asks.push([name, estimateMinorUnits, askedMinorUnits]);
  }
  return asks;
}

/** The same buy ordered: every deposit in, and the coordinator and the treasurer agreed. */
export async function anOrderedBuy(
  app: TestApp,
  storehouse: TestStorehouse,
  wish: BuyWish & { households?: GrainHouseholds } = {},
): Promise<TestGrainBuy> {
  const buy = await aFixedBuy(app, storehouse, wish);
  await payDeposits(buy);
  bodyOf(await storehouse.coordinator.post(`${buy.path}/order-consents`, { duty: 'coordinator' }), 201);
  bodyOf(await buy.treasurer.post(`${buy.path}/order-consents`, { duty: 'treasurer' }), 201);
  return buy;
}

/** The books, and with them everything that fixing, ordering and withdrawing write: equal texts, equal books. */
export async function fixedBooksOf(app: TestApp): Promise<string> {
  const [row] = await app.admin<{ fixed: string }[]>`select jsonb_build_object(
    'fills', (select jsonb_agg(to_jsonb(t) order by t.fill_id) from book.fill t),
    'inputs', (select jsonb_agg(to_jsonb(t) order by t.fill_id) from book.fill_inputs t),
    'bags', (select jsonb_agg(to_jsonb(t) order by t.bag_offer_id) from book.fixed_bags t),
    'allotments', (select jsonb_agg(to_jsonb(t) order by t.buy_line_id, t.owner_id) from book.allotment t),
    'asks', (select jsonb_agg(to_jsonb(t) order by t.buy_id, t.household_id) from book.deposit_ask t),
    'consents', (select jsonb_agg(to_jsonb(t) order by t.buy_id, t.duty) from book.order_consent t),
    'order_lines', (select jsonb_agg(to_jsonb(t) order by t.supplier_order_id, t.bag_offer_id) from book.order_line t),
    'withdrawals', (select jsonb_agg(to_jsonb(t) order by t.withdrawal_id) from book.withdrawal t))::text as fixed`;
  return `${await booksOf(app)}${row?.fixed ?? ''}`;
}

/** How a call was refused, by which fields, and whether everything is as it was before. */
export async function fixedRefusalOf(app: TestApp, call: () => Promise<Answer>) {
  const before = await fixedBooksOf(app);
  const { status, body } = await call();
  const fields = (body.fields ?? []).map((problem: { field: string }) => problem.field);
  const missing = (body.missing ?? []).map((one: { code: string }) => one.code);
  return { status, code: body.code, fields, missing, isUnchanged: (await fixedBooksOf(app)) === before };
}
