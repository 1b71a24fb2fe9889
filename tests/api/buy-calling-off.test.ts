import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { booksOf } from '../support/books-text.ts';
import { aBuy, bodyOf } from '../support/buy.ts';
import {
  aFixedBuy,
  anOrderedBuy,
  type GrainHouseholds,
  openGrain,
  payDeposits,
  type TestGrainBuy,
} from '../support/fixed-buy.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
beforeAll(async () => {
  ({ app, storehouse, households } = await openGrain());
});
afterAll(() => app.close());

const callOff = (buy: { path: string }, body: unknown = { reason: 'the mill has no wheat' }) =>
  storehouse.coordinator.post(`${buy.path}/calling-off`, body);
const fieldsOf = (answer: { body: { fields: { field: string }[] } }) =>
  answer.body.fields.map(({ field }) => field);

/** Balances as debit less credit, straight from the accounts: a household above zero owes, a held deposit is below. */
async function accountsOf(buy: { buyId: string }) {
  const rows = await app.admin<{ kind: string; balance: string; closed: boolean }[]>`
    select kind, sum(inflow - outflow) as balance, bool_and(closed) as closed from book.account
    where cause_id = ${buy.buyId} group by kind order by kind`;
  return Object.fromEntries(
    rows.map(({ kind, balance, closed }) => [kind, { balance: Number(balance), closed }]),
  );
}
async function balanceOf(kind: string, ownerId: string | null = null): Promise<number> {
  const [row] = await app.admin<{ balance: string }[]>`select coalesce(sum(inflow - outflow), 0) as balance
    from book.account where kind = ${kind} and owner_id is not distinct from ${ownerId}`;
  return Number(row?.balance);
}
async function householdBalances(): Promise<Record<string, number>> {
  const entries = Object.entries(households).map(
    async ([name, { householdId }]) => [name, await balanceOf('household', householdId)] as const,
  );
  return Object.fromEntries(await Promise.all(entries));
}
const changeOf = (before: Record<string, number>, after: Record<string, number>) =>
  Object.fromEntries(Object.entries(after).map(([name, balance]) => [name, balance - (before[name] ?? 0)]));

test('a buy that nobody paid for is called off with its reason', async () => {
  for (const isOpen of [false, true]) {
    const buy = await aBuy(app, storehouse, { isOpen });
    expect(bodyOf(await callOff(buy))).toMatchObject({
      stage: 'called-off',
      householdsRefunded: 0,
      ordersCancelled: 0,
    });
    const { moves } = bodyOf(await storehouse.coordinator.get(`${buy.path}/stage-moves`));
    expect(moves.at(-1)).toMatchObject({ to: 'called-off', reason: 'the mill has no wheat' });
    expect(bodyOf(await storehouse.coordinator.get(buy.path)).next).toBeNull();
  }
});

// Job map 4.3: deposits of 72.00, 63.00, 53.00 and 23.00.
test('calling a fixed buy off gives every deposit back onto its household’s balance', async () => {
  const buy = await aFixedBuy(app, storehouse, { households });
  await payDeposits(buy);
  const before = await householdBalances();
  const answer = bodyOf(await callOff(buy));
  expect(answer).toMatchObject({ stage: 'called-off', householdsRefunded: 4 });
  expect(JSON.stringify(answer)).not.toMatch(/7200|6300|5300|2300/); // whose deposit was how much is not for all
  const credits = { Ashdown: -7200, Birchall: -6300, Corran: -5300, Dell: -2300 };
  expect(changeOf(before, await householdBalances())).toEqual(credits);
  expect((await accountsOf(buy)).buy_deposit).toEqual({ balance: 0, closed: true });
});

test('each household’s refund is an entry of its own', async () => {
  const buy = await aFixedBuy(app, storehouse, { households });
  await payDeposits(buy, { Corran: 5300, Dell: 2300 });
  bodyOf(await callOff(buy));
  const entries = await app.admin<{ note: string; households: string }[]>`
    select e.note, count(distinct a.owner_id) filter (where a.kind = 'household') as households
    from book.entry e join book.movement m using (storehouse_id, entry_id)
    join book.account a on a.storehouse_id = m.storehouse_id and a.account_id in (m.source_id, m.destination_id)
    where e.buy_id = ${buy.buyId} and e.what = 'deposit-refunded' group by e.entry_id, e.note`;
  expect(entries).toEqual([
    { note: 'called off: the mill has no wheat', households: '1' },
    { note: 'called off: the mill has no wheat', households: '1' },
  ]);
});

test('an ordered buy is called off once its supplier’s word is written down; the store fund bears what is billed', async () => {
  const buy = await anOrderedBuy(app, storehouse, { households });
  const before = await booksOf(app);
  const silent = await callOff(buy);
  expect([silent.status, silent.body.code, fieldsOf(silent)]).toEqual([
    409,
    'buy-guard-unmet',
    ['cancellationNote'],
  ]);
  expect(await booksOf(app)).toBe(before);
  const balances = await householdBalances();
  const fundBefore = await balanceOf('store_fund');
  const answer = bodyOf(
    await callOff(buy, {
      reason: 'the mill has no wheat',
      cancellationNote: 'agreed by telephone, 45.00 for the pallet',
      cancellationCosts: [{ supplierId: buy.supplierId, minorUnits: 4500 }],
    }),
  );
  expect(answer).toMatchObject({ ordersCancelled: 1, cancellationMinorUnits: 4500, householdsRefunded: 4 });
  expect(await accountsOf(buy)).toEqual({
    buy_clearing: { balance: 0, closed: true },
    buy_deposit: { balance: 0, closed: true },
  });
  expect(await balanceOf('supplier', buy.supplierId)).toBe(-4500); // we owe the mill
  expect((await balanceOf('store_fund')) - fundBefore).toBe(4500); // and the fund has borne it
  const credits = { Ashdown: -7200, Birchall: -6300, Corran: -5300, Dell: -2300 };
  expect(changeOf(balances, await householdBalances())).toEqual(credits);
  const [order] = await app.admin<{ cancellation_note: string; cancelled_at: Date | null }[]>`
    select cancellation_note, cancelled_at from book.supplier_order where buy_id = ${buy.buyId}`;
  expect(order?.cancellation_note).toBe('agreed by telephone, 45.00 for the pallet');
  expect(order?.cancelled_at).not.toBeNull();
});

test('what a withdrawal left behind for the harm it did comes back too when the whole buy is called off', async () => {
  const buy = await aFixedBuy(app, storehouse, { households });
  await payDeposits(buy);
  const before = await householdBalances();
  bodyOf(await buy.households.Dell.caller.post(`${buy.path}/withdrawals`, { reason: 'moving away' }));
  const kept = -((await accountsOf(buy)).buy_clearing?.balance ?? 0);
  expect(kept).toBe(2300); // all of Dell's deposit: the harm to the others is more than that
  bodyOf(await callOff(buy));
  const credits = { Ashdown: -7200, Birchall: -6300, Corran: -5300, Dell: -2300 };
  expect(changeOf(before, await householdBalances())).toEqual(credits);
  const { buy_clearing: clearing, buy_deposit: deposits } = await accountsOf(buy);
  expect([clearing?.balance ?? 0, deposits?.balance]).toEqual([0, 0]);
});

test('a retry of calling off refunds once', async () => {
  const buy = await aFixedBuy(app, storehouse, { households });
  await payDeposits(buy, { Dell: 2300 });
  const headers = { 'Idempotency-Key': 'call-off-once' };
  const path = `${buy.path}/calling-off`;
  const tries = await Promise.all(
    Array.from({ length: 4 }, () => storehouse.coordinator.post(path, { reason: 'too dear' }, headers)),
  );
  const [first, ...rest] = tries.map(({ status, body }) => ({ status, body }));
  expect(first).toMatchObject({ status: 200, body: { householdsRefunded: 1 } });
  for (const answer of rest) expect(answer).toEqual(first);
  const entries =
    await app.admin`select 1 from book.entry where buy_id = ${buy.buyId} and what = 'deposit-refunded'`;
  expect(entries).toHaveLength(1);
  const again = await callOff(buy);
  expect([again.status, again.body.code, again.body.stage]).toEqual([409, 'buy-stage-wrong', 'called-off']);
});

test('calling off races a deposit: whatever comes in first, nothing is left behind', async () => {
  for (let round = 0; round < 4; round += 1) {
    const buy: TestGrainBuy = await aFixedBuy(app, storehouse, { households });
    const before = await balanceOf('household', households.Dell.householdId);
    const deposit = { householdId: households.Dell.householdId, minorUnits: 2300, till: 'bank' };
    const [paid] = await Promise.all([buy.treasurer.post(`${buy.path}/deposits`, deposit), callOff(buy)]);
    const change = (await balanceOf('household', households.Dell.householdId)) - before;
    expect([paid.status, change]).toEqual(paid.status === 201 ? [201, -2300] : [409, 0]);
    expect((await accountsOf(buy)).buy_deposit?.balance ?? 0).toBe(0);
  }
});

test.for([
  { field: 'reason', body: {}, because: 'a reason is missing' },
  { field: 'reason', body: { reason: '  ' }, because: 'a reason says something' },
  { field: 'refund', body: { reason: 'x', refund: 'bank' }, because: 'there is no such field' },
  { field: 'cancellationCosts.0.minorUnits', body: { minorUnits: 0 }, because: 'a cost is something' },
  { field: 'cancellationCosts.0.minorUnits', body: { minorUnits: -1 }, because: 'a cost is not negative' },
])('calling off is refused at $field: $because', async ({ field, body }) => {
  const buy = await aBuy(app, storehouse);
  const before = await booksOf(app);
  const wish =
    'minorUnits' in body
      ? { reason: 'x', cancellationCosts: [{ supplierId: buy.supplierId, ...body }] }
      : body;
  const answer = await callOff(buy, wish);
  expect([answer.status, fieldsOf(answer)]).toEqual([400, [field]]);
  expect(await booksOf(app)).toBe(before);
});

test('nothing is billed for an order that was never placed, and only the coordinator calls off', async () => {
  const buy = await aBuy(app, storehouse);
  const before = await booksOf(app);
  const billed = await callOff(buy, {
    reason: 'x',
    cancellationCosts: [{ supplierId: buy.supplierId, minorUnits: 100 }],
  });
  expect([billed.status, fieldsOf(billed)]).toEqual([404, ['cancellationCosts.0.supplierId']]);
  const member = await households.Dell.caller.post(`${buy.path}/calling-off`, { reason: 'x' });
  expect([member.status, member.body.code]).toEqual([403, 'duty-missing']);
  const keyless = await storehouse.coordinator.post(
    `${buy.path}/calling-off`,
    { reason: 'x' },
    { 'Idempotency-Key': '' },
  );
  expect([keyless.status, keyless.body.code]).toEqual([400, 'idempotency-key-missing']);
  expect(await booksOf(app)).toBe(before);
});
