import { createHash } from 'node:crypto';
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
  bookGrams: number;
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

test('a seed draws the same traces for everybody, by a rule that anyone can carry out again', async () => {
  const seed = '2026, Quill and Ashdown';
  const drawn = bodyOf(await reviewer.caller.get(at(`/traces?seed=${encodeURIComponent(seed)}`)));
  const again = bodyOf(await storehouse.coordinator.get(at(`/traces?seed=${encodeURIComponent(seed)}`)));
  expect(again).toEqual(drawn);
  const codes = (
    await app.admin<{ code: string }[]>`select bag_code as code from book.bag
    where decision <> 'refused'`
  ).map(({ code }) => code);
  const byHand = codes
    .map((code) => [createHash('sha256').update(`${seed}\n${code}`).digest('hex'), code] as const)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .slice(0, 10)
    .map(([, code]) => code);
  expect(drawn.traces.map(({ bagCode }: { bagCode: string }) => bagCode)).toEqual(byHand);
  expect(drawn.candidates).toBe(codes.length);
  const other = bodyOf(await reviewer.caller.get(at('/traces?seed=another')));
  expect(other.traces.map(({ bagCode }: { bagCode: string }) => bagCode)).not.toEqual(byHand);
});

test('every trace goes from its supplier to whoever has it, and every gram adds up', async () => {
  const { traces } = bodyOf(await reviewer.caller.get(at('/traces?seed=grams')));
  expect(traces.length).toBe(10);
  for (const { addsUp, inGrams, steps, bagCode } of traces) {
    expect({ bagCode, addsUp }).toEqual({ bagCode, addsUp: true });
    const came = steps.filter(({ place }: { place: string }) => place === 'supplier');
    expect(came.reduce((sum: number, { grams }: { grams: number }) => sum + grams, 0)).toBeGreaterThan(0);
    const [row] = await app.admin<
      { grams: string }[]
    >`select net_grams as grams from book.bag where bag_code = ${bagCode}`;
    expect(inGrams).toBeGreaterThanOrEqual(Number(row?.grams));
  }
  expect((await buy.households.Dell.caller.get(at('/traces?seed=x'))).body.code).toBe('duty-missing');
  expect((await reviewer.caller.get(at('/traces?seed='))).body.fields[0].field).toBe('seed');
});
