import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { giveBankLines } from '../support/bank.ts';
import { bodyOf } from '../support/buy.ts';
import { aFixedBuy, GRAIN_DEPOSITS, type TestGrainBuy } from '../support/fixed-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

// The buy of the job map (4.3) is fixed and asks Ashdown for a deposit of 72.00; nobody has paid yet.
let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestGrainBuy;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  buy = await aFixedBuy(app, storehouse);
});
afterAll(() => app.close());

const post = (id: string, wish: unknown) =>
  buy.treasurer.post(`${storehouse.path}/bank/lines/${id}/posting`, wish);
const aLine = async (words: string, amount: string) =>
  (await giveBankLines(buy.treasurer, storehouse.path, [['2026-08-31', words, amount]]))[words];

test('a line of the amount that was asked for is taken for the deposit, and a second one is questioned', async () => {
  const { householdId } = buy.households.Ashdown;
  expect(GRAIN_DEPOSITS.Ashdown).toBe(7200);
  const first = await aLine('ASHDOWN FOR GRAIN', '72.00');
  expect(first.suggestion.guess).toMatchObject({ as: 'deposit', buyId: buy.buyId, partyId: householdId });
  const wish = { as: 'deposit', householdId, buyId: buy.buyId };
  const { entryId } = bodyOf(await post(first.id, wish), 201);
  const second = await aLine('ASHDOWN ONCE MORE', '72.01');
  expect((await post(second.id, wish)).body).toMatchObject({
    ...{ code: 'second-receipt', because: 'deposit-already-paid', fields: [{ field: 'answer' }] },
  });
  const { deposits } = bodyOf(await buy.treasurer.get(`${buy.path}/deposits`));
  const held = deposits.find(
    (row: { householdId: string }) => row.householdId === householdId,
  ).heldMinorUnits;
  expect(held).toBe(7200);
  const payment = await aLine('ASHDOWN AGAIN', '72.00');
  const asked = await post(payment.id, { as: 'payment', householdId });
  expect(asked.body).toMatchObject({ because: 'deposit-already-paid', entryId, mayBeThis: false });
  expect(asked.body.detail).toMatch(/as the deposit on Buy \d+ already/);
  const answer = 'The rest of last year.';
  bodyOf(await post(payment.id, { as: 'payment', householdId, answer }), 201);
});
