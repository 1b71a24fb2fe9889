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

test('a landed cost of all foods is what was billed for them, less what was credited', async () => {
  const { foods } = await savings();
  const [billed] = await app.admin`
    select (select sum(l.minor_units) from book.invoice_line l join book.invoice i using (storehouse_id, invoice_id)
      where i.voided_at is null)::int - (select coalesce(sum(credited_minor_units), 0) from book.claim)::int as cents`;
  expect(foods.reduce((sum: number, row: Saved) => sum + row.landedMinorUnits, 0)).toBe(billed?.cents);
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
