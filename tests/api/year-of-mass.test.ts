import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Caller } from '../support/app.ts';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { stockOf } from '../support/kitchen.ts';
import { offersOf } from '../support/offer.ts';
import { aSharedBuy, type TestSharedBuy } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
beforeAll(async () => {
  app = await openTestApp(); // 1 September 2026
  storehouse = await aStorehouse(app);
  buy = await aSharedBuy(app, storehouse);
  const { Dell, Corran } = buy.households;
  const stock = await stockOf(storehouse, Dell);
  const [can, second, third] = await stock.bringIn({ count: 3 });
  if (!can || !second || !third) throw new Error('three were brought in');
  bodyOf(await stock.take(can), 201);
  const { lotId } = (await stock.shown(can)).container ?? (await stock.shown(can));
  bodyOf(await stock.eat(lotId, 900), 201);
  bodyOf(await stock.eat(lotId, 150, 'discarded'), 201);
  const taken = bodyOf(await stock.take(second), 201);
  bodyOf(await stock.undo(taken.entryId));
  const offers = offersOf(app, storehouse);
  const closesAt = new Date(app.clock.now.getTime() + 20 * 86_400_000).toISOString();
  const { id } = bodyOf(await offers.offer(Dell.caller, [third.id], { closesAt }), 201);
  app.clock.now = new Date(app.clock.now.getTime() + 19 * 86_400_000); // it is everybody’s by now
  bodyOf(await offers.claim(Corran.caller, id, [third.id]), 201);
});
afterAll(() => app.close());

const PARTS = ['landed', 'from-others', 'changed', 'eaten', 'given', 'lost', 'to-others'] as const;
const at = (rest: string) => `${storehouse.path}/year-of-mass${rest}`;
const thisYear = () => app.clock.now.toISOString().slice(0, 4);
const year = async (caller: Caller, of: string, wanted = thisYear()) =>
  bodyOf(await caller.get(at(`?of=${of}&year=${wanted}`)));
type Year = Record<`${string}Grams`, number>;
/** What owners have in stock, from the running totals of their accounts and not from any movement. */
const stockOfOwners = async (ownerIds: readonly string[]) => {
  const [row] = await app.admin<{ grams: string }[]>`
    select coalesce(sum(inflow - outflow), 0) as grams from book.account where kind = 'mass'
      and owner_id = any(${[...ownerIds]}::uuid[]) and vessel_kind in ('bag', 'container', 'kitchen')`;
  return Number(row?.grams);
};
const came = ({ openingGrams = 0, landedGrams = 0, fromOthersGrams = 0, changedGrams = 0 }: Year) =>
  openingGrams + landedGrams + fromOthersGrams + changedGrams;
const went = ({ eatenGrams = 0, givenGrams = 0, lostGrams = 0, toOthersGrams = 0, closingGrams = 0 }: Year) =>
  eatenGrams + givenGrams + lostGrams + toOthersGrams + closingGrams;

test('a household’s year adds up to the gram, and ends with what it has by the totals of its accounts', async () => {
  const { Dell } = buy.households;
  const mass = await year(Dell.caller, 'household');
  expect(mass).toMatchObject({
    ...{ openingGrams: 0, landedGrams: 7_200, eatenGrams: 900, givenGrams: 0, toOthersGrams: 2_400 },
    ...{ lostGrams: 150, lost: [{ by: 'discarded', grams: 150 }] },
  });
  expect(mass.fromOthersGrams).toBeGreaterThan(0); // its share of the buy
  expect(went(mass)).toBe(came(mass));
  expect(mass.closingGrams).toBe(await stockOfOwners([Dell.householdId]));
  const before = await year(Dell.caller, 'household', String(Number(thisYear()) - 1));
  expect(before).toMatchObject({ openingGrams: 0, closingGrams: 0 });
  const after = await year(Dell.caller, 'household', String(Number(thisYear()) + 1));
  expect(after).toMatchObject({ openingGrams: mass.closingGrams, closingGrams: mass.closingGrams });
});

test('so does the store’s, whose lorries brought what households took over', async () => {
  const owners = await app.admin<{ id: string }[]>`
    select owner_id as id from book.owner where storehouse_id = ${storehouse.storehouseId} and kind in ('common', 'unassigned')`;
  const mass = await year(storehouse.coordinator, 'store');
  expect(mass.landedGrams).toBeGreaterThan(0);
  expect(mass.toOthersGrams).toBeGreaterThan(0);
  expect(went(mass)).toBe(came(mass));
  expect(mass.closingGrams).toBe(await stockOfOwners(owners.map(({ id }) => id)));
});

test('each number opens its movements, which add up to it', async () => {
  const sides: [Caller, string][] = [
    [buy.households.Dell.caller, 'household'],
    [storehouse.coordinator, 'store'],
  ];
  for (const [caller, of] of sides) {
    const mass = await year(caller, of);
    for (const part of PARTS) {
      const { movements } = bodyOf(await caller.get(at(`/movements?of=${of}&part=${part}`)));
      const sum = movements.reduce((total: number, { grams }: { grams: number }) => total + grams, 0);
      const name = part.replace(/-(.)/, (_, letter: string) => letter.toUpperCase());
      expect([of, part, sum]).toEqual([of, part, mass[`${name}Grams`]]);
    }
  }
});

test('nobody reads another household’s year, and the store’s is for whoever keeps or counts it', async () => {
  const { Dell, Corran } = buy.households;
  expect((await year(Corran.caller, 'household')).eatenGrams).toBe(0);
  expect(await refusalOf(app, () => Dell.caller.get(at('?of=store')))).toEqual(refused(403, 'duty-missing'));
  const path = at('/movements?of=store&part=landed');
  expect(await refusalOf(app, () => Dell.caller.get(path))).toEqual(refused(403, 'duty-missing'));
  const { movements } = bodyOf(await storehouse.coordinator.get(at('/movements?of=store&part=to-others')));
  expect(JSON.stringify(movements)).not.toMatch(/Dell|Corran|Birchall/);
});
