import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Caller, openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aPantryWish, commonCans, type GivenCan } from '../support/giving.ts';
import { stockOf, type TestStock } from '../support/kitchen.ts';
import { aPackingLead } from '../support/landed-buy.ts';
import { offersOf } from '../support/offer.ts';
import { aSharedBuy, type TestSharedBuy } from '../support/shared-buy.ts';
import { type Shelves, shelvesOf, type TestCan, type TestPiece, wheatOf } from '../support/shelf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
let shelves: Shelves;
let stock: TestStock;
let lead: Caller;
let bag: TestPiece;
let common: GivenCan;
let pantryId: string;
let scopes: Record<'lot' | 'mark' | 'food' | 'place', object>;
let placeId: string;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  buy = await aSharedBuy(app, storehouse);
  shelves = await shelvesOf(app, storehouse);
  const { Corran, Dell } = buy.households;
  stock = await stockOf(storehouse, Dell);
  lead = (await aPackingLead(app, storehouse, Corran)).caller;
  bag = await wheatOf(storehouse, buy, Dell);
  await app.admin`update book.lot l set supplier_mark = 'K-77' from book.bag b
    where b.lot_id = l.lot_id and b.bag_id = ${bag.bagId}`;
  const [row] = await app.admin`select b.lot_id, l.supplier_id, l.food_id from book.bag b
    join book.lot l using (storehouse_id, lot_id) where b.bag_id = ${bag.bagId}`;
  const place = {
    of: 'store',
    name: 'The damp corner',
    kind: 'room',
    isLit: false,
    isDamp: true,
    isRodentProof: false,
  };
  placeId = bodyOf(await storehouse.coordinator.post(at('/places'), place), 201).id;
  scopes = {
    place: { scope: 'place', placeId },
    lot: { scope: 'lot', lotId: row?.lot_id },
    mark: { scope: 'mark', supplierId: row?.supplier_id, mark: 'K-77' },
    food: { scope: 'food', foodId: row?.food_id, fromOn: '2026-01-01', toOn: '2026-12-31' },
  };
  const old = { food: 'beans-pinto', grams: 2_200, count: 1, stored: '2020-01' };
  [common] = (await commonCans(storehouse, [old])) as [GivenCan];
  const late = { mostDaysPastBest: 3650, leastLifeDays: 0 };
  const wish = aPantryWish('Mill Lane', late);
  pantryId = bodyOf(await storehouse.coordinator.post(at('/pantries'), wish), 201).id;
});
afterAll(() => app.close());

const at = (path: string) => `${storehouse.path}${path}`;
const dell = () => buy.households.Dell.caller;
const offers = () => offersOf(app, storehouse);
const codeOf = ({ status, body }: Awaited<ReturnType<Caller['get']>>) => (status < 300 ? 'done' : body.code);

type State = 'shut' | 'begun' | 'offered';
type Can = TestCan & { state: State; left: number; offerId: string };
const story = fc.record({
  states: fc.array(fc.constantFrom<State>('shut', 'begun', 'offered'), { minLength: 1, maxLength: 4 }),
  scope: fc.constantFrom('containers', 'bag', 'lot', 'mark', 'food', 'place'),
  chosen: fc.uniqueArray(fc.nat({ max: 3 }), { minLength: 1, maxLength: 3 }),
  hasCommon: fc.boolean(),
});

async function aCanIn(state: State): Promise<Can> {
  const can = await shelves.aCan(dell(), bag, 100);
  if (state === 'begun') bodyOf(await stock.take(can, 40), 201);
  const offerId = state === 'offered' ? bodyOf(await offers().offer(dell(), [can.id]), 201).id : '';
  return { ...can, state, left: state === 'begun' ? 60 : 100, offerId };
}

async function begin(scope: string, containerIds: readonly string[]): Promise<string> {
  const reason = 'A notice of the supplier.';
  if (scope === 'bag') return bodyOf(await lead.post(at(`/bags/${bag.bagId}/holds`), { reason }), 201).id;
  const of = scopes[scope as keyof typeof scopes] ?? { scope: 'containers', containerIds };
  return bodyOf(await lead.post(at('/holds'), { of, reason }), 201).id;
}
async function release(id: string): Promise<void> {
  bodyOf(await lead.post(at(`/holds/${id}/release-request`), { finding: 'The test came back clean.' }));
  bodyOf(await storehouse.coordinator.post(at(`/holds/${id}/release`)));
}

/** What the ways out of a can answer: eaten, given, taken to the kitchen, offered, claimed by each of the others. */
async function tryAll({ id, offerId }: Can): Promise<string[]> {
  const uses = ['eaten', 'given'].map((to) => dell().post(at(`/containers/${id}/uses`), { grams: 1, to }));
  const answers = [
    ...(await Promise.all(uses)),
    await stock.take({ id }, 1),
    await offers().offer(dell(), [id]),
  ];
  if (offerId !== '')
    for (const { caller } of [buy.households.Ashdown, buy.households.Birchall, buy.households.Corran])
      answers.push(await offers().claim(caller, offerId, [id]));
  return answers.map(codeOf);
}

async function seen() {
  const { queue, held } = bodyOf(await dell().get(at('/rotation')));
  const { onHold } = bodyOf(await dell().get(at('/coverage')));
  const codesOf = (items: { container: { code: string } | null }[]) =>
    items.flatMap(({ container }) => container?.code ?? []);
  return {
    queue: codesOf(queue),
    held: codesOf(held),
    onHoldGrams: onHold.reduce((sum: number, { grams }: { grams: number }) => sum + grams, 0),
  };
}
const inBag = () => shelves.gramsIn(bag.bagId, buy.households.Dell.householdId);
const inKitchen = async () => {
  const [lot] = (await stock.kitchen()).lots;
  return lot as { lotId: string; grams: number; holdId: string | null } | undefined;
};
async function onTrip(): Promise<number> {
  const trips = [{ pantryId, onDay: '2026-09-08', capacityGrams: 50_000 }];
  return bodyOf(await storehouse.coordinator.post(at('/gift-matchings'), { trips }), 201).givenGrams;
}

test('whatever a hold reaches, no way out and no reckoning has it, and after the release all of them do', async () => {
  await fc.assert(
    fc.asyncProperty(story, async ({ states, scope, chosen, hasCommon }) => {
      const cans: Can[] = [];
      for (const state of states) cans.push(await aCanIn(state));
      // Chosen cans are named or stand in the place; every other scope has the bag, and whatever came of it.
      const isAll = !['containers', 'place'].includes(scope);
      const reached = cans.filter((_, place) => isAll || chosen.includes(place));
      const withCommon = !isAll && (hasCommon || reached.length === 0);
      if (scope === 'place') {
        await setInto(placeId, dell(), reached);
        if (withCommon) await setInto(placeId, storehouse.coordinator, [common]);
      }
      const id = await begin(scope, [...reached.map((can) => can.id), ...(withCommon ? [common.id] : [])]);

      const kitchen = await inKitchen();
      const isKitchenHeld =
        kitchen !== undefined && (isAll || reached.some(({ state }) => state === 'begun'));
      const { queue, held, onHoldGrams } = await seen();
      for (const can of reached) {
        const answers = await tryAll(can);
        expect(answers).not.toContain('done');
        if (can.state !== 'offered') expect(answers.slice(0, 3)).toEqual(['on-hold', 'on-hold', 'on-hold']);
        expect([queue.includes(can.code), held.includes(can.code)]).toEqual([false, true]);
      }
      const heldGrams = reached.reduce((sum, { left }) => sum + left, 0);
      // Cans of earlier stories were poured out of the same bag, and are in the reach of whatever has the bag.
      const before = isAll ? await leftOfBefore(cans) : 0;
      const expected = heldGrams + before + (isAll ? await inBag() : 0) + (isKitchenHeld ? kitchen.grams : 0);
      expect(onHoldGrams).toBe(expected);
      expect((await inKitchen())?.holdId ?? null).toBe(isKitchenHeld ? id : null);
      if (kitchen) expect(codeOf(await stock.eat(kitchen.lotId, 1))).toBe(isKitchenHeld ? 'on-hold' : 'done');
      const poured = await shelves.pour(dell(), bag, { gramsEach: 10 });
      expect(codeOf(poured)).toBe(isAll ? 'bag-on-hold' : 'done');
      if (withCommon) expect(await onTrip()).toBe(0);
      for (const can of cans.filter((one) => !reached.includes(one) && one.state === 'shut'))
        expect(codeOf(await dell().post(at(`/containers/${can.id}/uses`), { grams: 1, to: 'eaten' }))).toBe(
          'done',
        );

      if (scope === 'place') {
        // What is carried out of it stays on hold.
        await setInto(null, dell(), reached);
        await setInto(null, storehouse.coordinator, [common]);
        for (const can of reached) expect(await tryAll(can)).not.toContain('done');
      }

      await release(id);
      const after = await seen();
      expect([after.held, after.onHoldGrams]).toEqual([[], 0]);
      for (const can of reached) {
        expect(after.queue).toContain(can.code);
        if (can.state === 'offered') expect(await tryAll(can)).toContain('done');
        else expect(codeOf(await stock.take(can, 1))).toBe('done');
      }
      const left = await inKitchen();
      if (left) expect(codeOf(await stock.eat(left.lotId, 1))).toBe('done');
      expect(codeOf(await shelves.pour(dell(), bag, { gramsEach: 10 }))).toBe('done');
      if (withCommon) expect(await onTrip()).toBe(common.grams);
    }),
    { numRuns: 5, examples: EXAMPLES, endOnFailure: true },
  );
});

async function setInto(place: string | null, caller: Caller, cans: readonly { id: string }[]): Promise<void> {
  if (cans.length === 0) return;
  const containerIds = cans.map((can) => can.id);
  bodyOf(await caller.post(at('/container-moves'), { containerIds, placeId: place }), 201);
}

/** Grams of Dell's in all containers of the bag but those of the running story. */
async function leftOfBefore(cans: readonly Can[]): Promise<number> {
  const [row] = await app.admin<{ grams: string }[]>`select coalesce(sum(a.inflow - a.outflow), 0) as grams
    from book.account a join book.container c on c.container_id = a.vessel_id join book.bag b on b.lot_id = c.lot_id
    where b.bag_id = ${bag.bagId} and a.owner_id = ${buy.households.Dell.householdId}
      and c.container_id <> all(${cans.map(({ id }) => id)}::uuid[])`;
  return Number(row?.grams);
}

/** What every run of the test has in it: a bag with cans in each state, and a chosen can that was begun beside the store's. */
const EXAMPLES = [
  [{ states: ['shut', 'begun', 'offered'] as State[], scope: 'bag', chosen: [0], hasCommon: false }],
  [{ states: ['begun', 'shut'] as State[], scope: 'containers', chosen: [0], hasCommon: true }],
  [{ states: ['begun', 'offered', 'shut'] as State[], scope: 'place', chosen: [0, 1], hasCommon: true }],
] as [{ states: State[]; scope: 'bag' | 'containers' | 'place'; chosen: number[]; hasCommon: boolean }][];
