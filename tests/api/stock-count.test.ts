import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { fingerprintOf } from '../support/fingerprint.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { aSharedBuy, creditClaims, type TestSharedBuy } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

// Dell never fetches its food, so the group's rule makes it common stock: something to count.
let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
let reviewer: TestHousehold;
const at = (path: string) => `${storehouse.path}${path}`;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  reviewer = await aHousehold(app, storehouse, 'Quill', { duties: ['reviewer'] });
  buy = await aSharedBuy(app, storehouse);
  await creditClaims(storehouse, buy);
  app.clock.now = new Date('2026-11-01T15:00:00Z');
  const never = `${buy.path}/uncollected/${buy.households.Dell.householdId}`;
  bodyOf(await storehouse.coordinator.post(never, {}), 201);
});
afterAll(() => app.close());

type Stock = {
  accountId: string;
  code: string;
  foodEn: string;
  bookGrams: number;
  valueMinorUnits: number;
  differenceGrams: number | null;
  differenceMinorUnits: number | null;
  isBooked: boolean;
};
const readStock = async (): Promise<Stock[]> => bodyOf(await reviewer.caller.get(at('/common-stock'))).stock;
const balanceOf = async (chart: string): Promise<number> => {
  const { rows } = bodyOf(await reviewer.caller.get(at('/trial-balance')));
  const row = rows.find(({ number }: { number: string }) => number === chart);
  return row.debitMinorUnits - row.creditMinorUnits;
};

test('common stock is listed by code with what the book says, and a count that meets it posts nothing', async () => {
  const [first] = await readStock();
  expect(first?.bookGrams).toBeGreaterThan(0);
  const before = await app.admin`select count(*) from book.entry`;
  const wish = { accountId: first?.accountId, countedGrams: first?.bookGrams };
  const count = bodyOf(await reviewer.caller.post(at('/stock-counts'), wish), 201);
  expect(count).toMatchObject({ differenceGrams: 0, entryId: null });
  expect(await app.admin`select count(*) from book.entry`).toEqual(before);
  const booking = await buy.treasurer.post(at(`/stock-counts/${count.id}/booking`), { reason: 'none' });
  expect(booking.body.code).toBe('nothing-to-post');
});

test('what a count misses is booked at cost, once, and book, value and audit agree after it', async () => {
  const [first] = await readStock();
  const countedGrams = (first?.bookGrams ?? 0) - 1000;
  const count = bodyOf(
    await reviewer.caller.post(at('/stock-counts'), { accountId: first?.accountId, countedGrams }),
    201,
  );
  const shown = (await readStock()).find(({ accountId }) => accountId === first?.accountId);
  expect(shown).toMatchObject({ differenceGrams: -1000, isBooked: false });
  const worth = shown?.differenceMinorUnits ?? 0;
  expect(worth).toBeLessThan(0);
  const [stockBefore, lossesBefore] = [await balanceOf('1400'), await balanceOf('5000')];
  const path = at(`/stock-counts/${count.id}/booking`);
  const answers = await Promise.all([
    buy.treasurer.post(path, { reason: 'mice' }),
    storehouse.coordinator.post(path, { reason: 'mice' }),
  ]);
  expect(answers.map(({ status }) => status).sort()).toEqual([201, 409]);
  expect(await balanceOf('1400')).toBe(stockBefore + worth);
  expect(await balanceOf('5000')).toBe(lossesBefore - worth);
  const after = (await readStock()).find(({ accountId }) => accountId === first?.accountId);
  expect(after).toMatchObject({ bookGrams: countedGrams, isBooked: true });
  expect(bodyOf(await reviewer.caller.get(at('/audit'))).holds).toBe(true);
});

test('a count that the book has moved on from is not booked, and whoever may not count or book is refused', async () => {
  const [first] = await readStock();
  const wish = { accountId: first?.accountId, countedGrams: (first?.bookGrams ?? 0) + 5 };
  const old = bodyOf(await reviewer.caller.post(at('/stock-counts'), wish), 201);
  const newer = bodyOf(await reviewer.caller.post(at('/stock-counts'), wish), 201);
  bodyOf(await buy.treasurer.post(at(`/stock-counts/${newer.id}/booking`), { reason: 'found' }), 201);
  const before = await fingerprintOf(app);
  const stale = await buy.treasurer.post(at(`/stock-counts/${old.id}/booking`), { reason: 'found' });
  expect(stale.body).toMatchObject({ code: 'stale-version', fields: [{ field: 'countedGrams' }] });
  expect((await buy.treasurer.post(at('/stock-counts'), wish)).body.code).toBe('duty-missing');
  expect((await reviewer.caller.post(at(`/stock-counts/${old.id}/booking`), { reason: 'x' })).body.code).toBe(
    'duty-missing',
  );
  expect((await reviewer.caller.post(at('/stock-counts'), { ...wish, accountId: buy.buyId })).status).toBe(
    404,
  );
  expect(await fingerprintOf(app)).toEqual(before);
});

test('stock that is found, also beyond what the book knew, is booked at its lot’s unit landed cost', async () => {
  const stock = await readStock();
  const [first] = stock;
  const accountId = first?.accountId ?? '';
  const [lot] = await app.admin<
    { id: string }[]
  >`select unit_id as id from book.account where account_id = ${accountId}`;
  // Reckoned apart from the code under test: what 1400 has of the lot, over every gram of it that is common.
  const valueAndGrams = async (): Promise<[number, number]> => {
    const [row] = await app.admin<{ value: string; grams: string }[]>`select
      (select sum(inflow - outflow) from book.account where kind = 'common_stock' and cause_id = ${lot?.id ?? ''}) as value,
      (select sum(a.inflow - a.outflow) from book.account a join book.owner o on o.owner_id = a.owner_id
        where o.kind = 'common' and a.vessel_kind in ('bag', 'container') and a.unit_id = ${lot?.id ?? ''}) as grams`;
    return [Number(row?.value), Number(row?.grams)];
  };
  const book = async (countedGrams: number) => {
    const count = bodyOf(await reviewer.caller.post(at('/stock-counts'), { accountId, countedGrams }), 201);
    const path = at(`/stock-counts/${count.id}/booking`);
    bodyOf(await storehouse.coordinator.post(path, { reason: 'counted anew' }), 201);
  };
  const [value, grams] = await valueAndGrams();
  const cost = value / grams;
  // More than twice as much as all of the lot that the book had.
  const found = 2 * grams + 777;
  await book((first?.bookGrams ?? 0) + found);
  const [after] = await valueAndGrams();
  expect(after - value).toBe(Math.round(cost * found));
  await book(first?.bookGrams ?? 0);
  const [back] = await valueAndGrams();
  expect(Math.abs(back - value)).toBeLessThanOrEqual(1);
  // All of it gone, then found again: it comes back at what it came in for, not at nothing.
  const vessels = (await readStock()).filter(({ foodEn }) => foodEn === first?.foodEn);
  for (const vessel of vessels) {
    const gone = { accountId: vessel.accountId, countedGrams: 0 };
    const count = bodyOf(await reviewer.caller.post(at('/stock-counts'), gone), 201);
    if (vessel.bookGrams > 0)
      bodyOf(await buy.treasurer.post(at(`/stock-counts/${count.id}/booking`), { reason: 'gone' }), 201);
  }
  expect(await valueAndGrams()).toEqual([0, 0]);
  await book(grams);
  const [again] = await valueAndGrams();
  expect(Math.abs(again - value)).toBeLessThanOrEqual(Math.ceil(value * 0.01));
  expect(bodyOf(await reviewer.caller.get(at('/audit'))).holds).toBe(true);
});

test('account 1400 is the grams of every lot at its unit landed cost, each rounded once (job map 3.2, question 10)', async () => {
  const { stock } = bodyOf(await reviewer.caller.get(at('/common-stock')));
  const lots = await app.admin<{ value: string; grams: string; accounts: string[] }[]>`
    select c.balance as value, s.grams, s.accounts from
      (select cause_id, sum(inflow - outflow) as balance from book.account where kind = 'common_stock' group by 1) c
    join (select a.unit_id, sum(a.inflow - a.outflow) as grams, array_agg(a.account_id::text) as accounts
      from book.account a join book.owner o on o.owner_id = a.owner_id and o.kind = 'common'
      where a.vessel_kind in ('bag', 'container') group by 1) s
      on s.unit_id = c.cause_id`;
  expect(lots.length).toBeGreaterThan(1);
  for (const { value, grams, accounts } of lots) {
    const rows = stock.filter(({ accountId }: Stock) => accounts.includes(accountId));
    for (const { bookGrams, valueMinorUnits } of rows) {
      const exact = Number(grams) === 0 ? 0 : (bookGrams * Number(value)) / Number(grams);
      expect(Math.abs(valueMinorUnits - exact)).toBeLessThan(1);
    }
  }
  const valued = stock.reduce((sum: number, { valueMinorUnits }: Stock) => sum + valueMinorUnits, 0);
  expect(valued).toBe(await balanceOf('1400'));
});
