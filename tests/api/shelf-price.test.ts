import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf, foodIdsOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { printed } from '../support/pdf.ts';
import { aSharedBuy, type TestSharedBuy } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  buy = await aSharedBuy(app, storehouse, { name: 'Autumn grain' });
  app.clock.now = new Date('2026-11-30T15:00:00Z');
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;
const savings = async () => bodyOf(await storehouse.coordinator.get(at('/savings')));
type Saved = {
  food: { id: string; nameEn: string };
  grams: number;
  landedMinorUnits: number;
  shelfMinorUnits: number | null;
  savedMinorUnits: number | null;
};
const review = async (language: string) =>
  (await printed(storehouse.coordinator, at(`/year-review/paper?language=${language}`))).text;

test('without a shelf price nobody knows what was saved, and the page and the paper say so', async () => {
  const found = await savings();
  expect(found).toMatchObject({ savedMinorUnits: null, pricedGrams: 0 });
  expect(found.grams).toBeGreaterThan(0);
  for (const { shelfMinorUnits, landedMinorUnits } of found.foods as Saved[]) {
    expect(shelfMinorUnits).toBeNull();
    expect(landedMinorUnits).toBeGreaterThan(0);
  }
  expect(await review('en')).toContain('Saved against shelf price no shelf price was noted');
});

test('a coordinator notes a price, and what that food saved stands on the page and in the review of the year', async () => {
  const [bought] = (await savings()).foods as Saved[];
  if (!bought) throw new Error('a buy was shared out');
  const wish = { foodId: bought.food.id, seenOn: '2026-11-02', minorUnits: 500, milligrams: 1_000_000 };
  const noted = bodyOf(
    await storehouse.coordinator.post(at('/shelf-prices'), { ...wish, seenWhere: 'a shop in town' }),
    201,
  );
  expect(noted).toMatchObject({
    minorUnits: 500,
    milligrams: 1_000_000,
    seenOn: '2026-11-02',
    seenWhere: 'a shop in town',
  });
  // At 5.00 a kilogram the shelf asks half a minor unit for each gram, a half going up.
  const shelf = Math.round(bought.grams / 2);
  const found = await savings();
  expect(found.foods[0]).toEqual({
    ...bought,
    ...{ shelfMinorUnits: shelf, savedMinorUnits: shelf - bought.landedMinorUnits },
  });
  expect(found).toMatchObject({
    ...{ savedMinorUnits: shelf - bought.landedMinorUnits, pricedGrams: bought.grams },
  });
  const { prices } = bodyOf(await buy.treasurer.get(at('/shelf-prices')));
  expect(prices).toEqual([{ ...noted, notedBy: 'Ada Ashdown' }]);
  const money = ((shelf - bought.landedMinorUnits) / 100).toFixed(2);
  expect((await review('en')).replaceAll(',', '')).toContain(`Saved against shelf price ${money} on`);
  expect(await review('es')).toContain('Ahorro frente al precio de tienda');

  const left = bodyOf(await storehouse.coordinator.delete(at(`/shelf-prices/${noted.id}`)));
  expect(left.prices).toEqual([]);
  expect((await savings()).savedMinorUnits).toBeNull();
  const again = () => storehouse.coordinator.delete(at(`/shelf-prices/${noted.id}`));
  expect(await refusalOf(app, again)).toEqual(refused(404, 'thing-not-found'));
});

/** What the ledger itself moved onto households and common stock for buys, credits taken off. Units: minor units. */
async function chargedByTheBook(): Promise<number> {
  const [row] = await app.admin`
    select sum(case when d.kind in ('household', 'common_stock') then m.amount else -m.amount end)::int as cents
    from book.movement m join book.entry e using (storehouse_id, entry_id)
    join book.account s on s.storehouse_id = m.storehouse_id and s.account_id = m.source_id
    join book.account d on d.storehouse_id = m.storehouse_id and d.account_id = m.destination_id
    where e.what in ('shared-out', 'recharged', 'late-credit', 'late-bill')
      and (s.kind in ('household', 'common_stock')) <> (d.kind in ('household', 'common_stock'))`;
  return Number(row?.cents);
}
const paidFoodByFood = async () => {
  const rows: Saved[] = (await savings()).foods;
  return {
    sum: rows.reduce((sum, row) => sum + row.landedMinorUnits, 0),
    of: Object.fromEntries(rows.map((row) => [row.food.nameEn, row.landedMinorUnits])),
  };
};

test('what was paid food by food is what the book charged, also after claims were answered and money came back', async () => {
  const before = await paidFoodByFood();
  expect(before.sum).toBe(await chargedByTheBook());
  expect(before.sum).toBeGreaterThan(0);
  // The mill grants one claim and refuses most of the other, so the buy costs 20.00 more than was charged at first.
  const credit = (claim: string | undefined, minorUnits: number) =>
    buy.treasurer.post(at(`/claims/${claim}/credit`), { minorUnits });
  bodyOf(await credit(buy.claims?.torn, 360), 201);
  bodyOf(await credit(buy.claims?.short, 140), 201);
  bodyOf(await buy.treasurer.post(`${buy.path}/recharging`), 201);
  const recharged = await paidFoodByFood();
  expect(recharged.sum).toBe(before.sum + 2_000);
  expect(recharged.sum).toBe(await chargedByTheBook());
  // Then it sends 4.00 in goodwill for the wheat, and the carrier bills 1.50 more.
  const late = async (costLine: string, minorUnits: number) => {
    const line = buy.charges.lines.find((known: { costLine: string }) => known.costLine.startsWith(costLine));
    const wish = { chargeLineId: line.id, minorUnits, till: 'bank', reason: 'It came later.' };
    bodyOf(await buy.treasurer.post(`${buy.path}/late-credits`, wish), 201);
  };
  await late(`goods:${buy.wheat}`, 400);
  const credited = await paidFoodByFood();
  const fallen = Object.entries(recharged.of).map(([food, cents]) => cents - (credited.of[food] ?? 0));
  expect(fallen.toSorted((a, b) => a - b)).toEqual([0, 0, 400]);
  await late('freight', -150);
  const billed = await paidFoodByFood();
  expect(billed.sum).toBe(before.sum + 2_000 - 400 + 150);
  expect(billed.sum).toBe(await chargedByTheBook());
});

test('what came back after the sharing out stands among the credits of the year on its paper, and a late bill among the bills', async () => {
  const [sums] = await app.admin`
    select (select sum(l.minor_units) from book.invoice_line l where l.kind = 'goods')::int as goods,
      (select sum(l.minor_units) from book.invoice_line l where l.kind = 'freight')::int as freight`;
  const money = (cents: number) => (cents / 100).toFixed(2);
  const line = (await review('en')).replaceAll(',', '').split('Autumn grain')[1]?.slice(0, 120);
  expect(line).toContain(`${money(Number(sums?.goods))} ${money(Number(sums?.freight) + 150)} 0.00 9.00`);
});

test.for([
  { because: 'of a day to come', change: { seenOn: '2026-12-24' }, field: 'seenOn' },
  { because: 'for nothing', change: { milligrams: 0 }, field: 'milligrams' },
  { because: 'of nothing', change: { minorUnits: 0 }, field: 'minorUnits' },
  { because: 'seen at too long a place', change: { seenWhere: 'x'.repeat(61) }, field: 'seenWhere' },
])('a price $because is refused and nothing is noted', async ({ change, field }) => {
  const foodId = (await foodIdsOf(storehouse))['oats-rolled'];
  const wish = { foodId, seenOn: '2026-11-02', minorUnits: 500, milligrams: 1_000_000, ...change };
  const post = () => storehouse.coordinator.post(at('/shelf-prices'), wish);
  expect(await refusalOf(app, post)).toEqual(refused(400, 'invalid-input', field));
});

test('a price of no food of ours is refused, and a member neither notes nor reads them', async () => {
  const wish = { foodId: buy.buyId, seenOn: '2026-11-02', minorUnits: 500, milligrams: 1_000_000 };
  const post = () => storehouse.coordinator.post(at('/shelf-prices'), wish);
  expect(await refusalOf(app, post)).toEqual(refused(404, 'thing-not-found'));
  const { caller } = buy.households.Dell;
  for (const call of [
    () => caller.post(at('/shelf-prices'), wish),
    () => caller.get(at('/shelf-prices')),
    () => caller.get(at('/savings')),
  ])
    expect(await refusalOf(app, call)).toEqual(refused(403, 'duty-missing'));
});
